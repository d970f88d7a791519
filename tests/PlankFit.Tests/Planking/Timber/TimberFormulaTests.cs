using PlankFit.Planking.Bending;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Wood;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>Worked cases of bend, twist, edge-set and moisture, each with its own arithmetic or source.</summary>
public sealed class TimberFormulaTests
{
    /// <summary>9 mm at 1.2 m: strain 9/2400 = 0.375 %, R/t 133.3, curvature factor 1 − 2000/133.3² = 0.8875: softwood minimum kept, DIN's not.</summary>
    [Fact]
    public void NineMillimetresAtTwelveHundred()
    {
        Assert.Equal(0.8875, BendJudge.CurvatureFactor(1200.0 / 9), 1e-4);
        BendJudge judge = Judges.Of(9, Judges.Fir);
        Assert.Equal("cold, with care", judge.Row(1200.0 / 9, 0.00375).Verdict);
    }

    /// <summary>τ = 1e-4, w = 150, t = 9, G = 700: T = G w t³ τ/3 = 2551.5 N mm, so 17.01 N at each edge; K = −τ² costs τ² w²/12 = 1.875e-5.</summary>
    [Fact]
    public void ATwistWithoutBend()
    {
        double newtons = Springback.ClampNewtons(700 / Springback.ShearPart, 150, 9, 0, 1e-4, 300);
        Assert.Equal(17.01, newtons, 1e-9);
        Assert.Equal(1.875e-5, FlatStrain.AtEdges(-1e-8, 150), 1e-15);
    }

    /// <summary>2 m sprung 10 mm sideways, 150 wide: curvature 2e-5, strain 1.5e-3.</summary>
    [Fact]
    public void EdgeSet()
    {
        Assert.Equal(2e-5, PlankFit.Planking.Timber.EdgeSet.Curvature(10, 2000), 1e-18);
        Assert.Equal(1.5e-3, PlankFit.Planking.Timber.EdgeSet.StrainOf(10, 150, 2000), 1e-15);
    }

    /// <summary>A circle's arc has that round: 100 m radius, 2 m chord, versine 5.0001 mm.</summary>
    [Fact]
    public void EdgeSetOfAnArcIsItsCurvature()
    {
        const double r = 100e3;
        double f = r - Math.Sqrt((r * r) - 1e6);
        Assert.Equal(1 / r, PlankFit.Planking.Timber.EdgeSet.Curvature(f, 2000), 1e-9);
    }

    /// <summary>A sphere of 3 m, 150 wide: 2.083e-4; and K = 1.2e-7 with 1e-3 to spend: 316 mm.</summary>
    [Fact]
    public void FlatOnASphere()
    {
        Assert.Equal(2.083e-4, FlatStrain.AtEdges(1 / 9e6, 150), 5e-8);
        Assert.Equal(316, FlatStrain.WidestMm(-1.2e-7, 1e-3)!.Value, 0.3);
        Assert.Null(FlatStrain.WidestMm(0, 1e-3));
    }

    /// <summary>
    /// Three clamps 300 mm apart bend a 9 × 150 board of 13.4 GPa to 4 m at the middle one. A beam on two supports with P in the middle has M = P L/4 there,
    /// L = 600: P = 4 M/L, M = E w t³/12/R = 30.5 N m; so 203.5 N.
    /// </summary>
    [Fact]
    public void ThreeClamps() =>
        Assert.Equal(
            4 * (13400 * 150 * 729 / 12.0 / 4000) / 600,
            Springback.ClampNewtons(13400, 150, 9, 1 / 4000.0, 0, 300),
            1e-9
        );

    /// <summary>Worked examples published with the formula (Wood Handbook eq. 13-1, second hand): red oak flat-sawn 0.00369, 4 %: 24 in move 0.354 in, 11.25 in 0.166 in.</summary>
    [Theory]
    [InlineData(24, 0.354)]
    [InlineData(11.25, 0.166)]
    public void RedOakOfFourPercent(double inches, double moves) =>
        Assert.Equal(moves, Moisture.ChangeMm(inches * 25.4, 0.00369, 8, 12) / 25.4, 0.0005);

    /// <summary>127 mm of white oak, flat-sawn (0.00365, second hand), 6 to 14 %, by hand: 127 × 0.00365 × 8 = 3.7084 mm.</summary>
    [Fact]
    public void WhiteOak()
    {
        Species oak = SpeciesTable.Find(SpeciesTable.BuiltIn, "white-oak")!;
        Assert.Equal(3.7084, Moisture.ChangeMm(127, oak.Movement(Grain.Flat)!.Value, 6, 14), 1e-9);
    }

    /// <summary>Moisture at rest, worked out outside this program from the Wood Handbook's constants for Fahrenheit, which are from memory.</summary>
    [Theory]
    [InlineData(40, 6.3, 9.5, 12.4, 16.5, 21.0)]
    [InlineData(60, 6.3, 9.4, 12.1, 16.2, 20.7)]
    [InlineData(70, 6.2, 9.2, 12.0, 16.0, 20.5)]
    [InlineData(80, 6.1, 9.1, 11.8, 15.7, 20.2)]
    [InlineData(100, 5.8, 8.7, 11.2, 15.1, 19.5)]
    public void MoistureAtRest(
        double fahrenheit,
        double at30,
        double at50,
        double at65,
        double at80,
        double at90
    )
    {
        Assert.Equal(at30, Moisture.AtRest(fahrenheit, 0.30), 0.0501);
        Assert.Equal(at50, Moisture.AtRest(fahrenheit, 0.50), 0.0501);
        Assert.Equal(at65, Moisture.AtRest(fahrenheit, 0.65), 0.0501);
        Assert.Equal(at80, Moisture.AtRest(fahrenheit, 0.80), 0.0501);
        Assert.Equal(at90, Moisture.AtRest(fahrenheit, 0.90), 0.0501);
    }

    /// <summary>The Wood Handbook's other set of constants, for Celsius, from memory too and recalled apart from the first, gives the same.</summary>
    [Theory]
    [InlineData(5, 0.3)]
    [InlineData(15, 0.72)]
    [InlineData(21, 0.5)]
    [InlineData(30, 0.9)]
    public void MoistureAtRestByCelsius(double celsius, double h)
    {
        double t = celsius,
            w = 349 + (1.29 * t) + (0.0135 * t * t),
            k = 0.805 + (0.000736 * t) - (0.00000273 * t * t),
            k1 = 6.27 - (0.00938 * t) - (0.000303 * t * t),
            k2 = 1.91 + (0.0407 * t) - (0.000293 * t * t);
        double m =
            1800
            / w
            * (
                (k * h / (1 - (k * h)))
                + (
                    ((k1 * k * h) + (2 * k1 * k2 * k * k * h * h))
                    / (1 + (k1 * k * h) + (k1 * k2 * k * k * h * h))
                )
            );
        Assert.Equal(m, Moisture.AtRest(Moisture.Fahrenheit(celsius), h), 0.05);
    }
}
