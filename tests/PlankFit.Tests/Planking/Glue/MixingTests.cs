using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Amounts and mixes by hand, to their digits, and against the volumes that the formulas stand for.</summary>
public sealed class MixingTests
{
    [Theory]
    [InlineData(0.805, 0.5, 1.01693, 1e-5)]
    [InlineData(0.805, 0.45, 1.17248, 1e-5)]
    // Dry glass and resin at 1.0, 1.2 and 1.5 times its mass.
    [InlineData(0.805, 1 / 2.2, 1.157, 5e-4)]
    [InlineData(0.805, 1 / 2.5, 1.367, 5e-4)]
    public void ThicknessIsMassOverDensity(double w, double content, double mm, double within) =>
        Assert.Equal(mm, GlassInResin.ThicknessMm(w, content, 2.54, 1.15), within);

    [Fact]
    public void ResinAndFibreVolumeOfACloth()
    {
        Assert.Equal(0.805, GlassInResin.ResinKgPerM2(0.805, 0.5), 1e-12);
        Assert.Equal(0.98389, GlassInResin.ResinKgPerM2(0.805, 0.45), 1e-5);
        Assert.Equal(0.31165, GlassInResin.FibreVolume(0.5, 2.54, 1.15), 1e-5);
        Assert.Equal(
            1.04114,
            GlassInResin.ResinKgPerM2(0.5764, 0.5) + GlassInResin.ResinKgPerM2(0.2289, 0.33),
            1e-5
        );
        Assert.Equal(
            1.22238,
            GlassInResin.ThicknessMm(0.5764, 0.5, 2.54, 1.15)
                + GlassInResin.ThicknessMm(0.2289, 0.33, 2.54, 1.15),
            1e-5
        );
    }

    /// <summary>A scantling standard's thickness, (w/3.072)(2.56/c - 1.36), is this one at 2.56 and 1.20 (the standard's form from memory).</summary>
    [Fact]
    public void TheStandardsThicknessIsTheSame()
    {
        for (double content = 0.25; content < 0.7; content += 0.05)
        {
            Assert.Equal(
                0.6 / 3.072 * ((2.56 / content) - 1.36),
                GlassInResin.ThicknessMm(0.6, content, 2.56, 1.20),
                1e-12
            );
        }
    }

    [Theory]
    [InlineData(10, 90, 21.460184)]
    [InlineData(10, 60, 68.485326)]
    [InlineData(10, 120, 5.375149)]
    [InlineData(12, 110, 12.865291)]
    public void AFilletsArea(double radius, double degrees, double mm2) =>
        Assert.Equal(mm2, new FilletSection(radius, degrees).AreaMm2, 5e-7);

    [Fact]
    public void ASquareFilletsLegAndThroat()
    {
        var fillet = new FilletSection(10, 90);
        Assert.Equal(10, fillet.LegMm, 1e-12);
        Assert.Equal(4.142136, fillet.ThroatMm, 5e-7);
    }

    /// <summary>The area between the faces and the hollow, by small strips along one face.</summary>
    [Theory]
    [InlineData(8, 50)]
    [InlineData(25, 140)]
    public void AFilletsAreaByStrips(double r, double degrees)
    {
        var fillet = new FilletSection(r, degrees);
        double a = degrees * Math.PI / 180;
        const int Strips = 400000;
        // Along the bisector: how wide the corner is, less how wide the circle is.
        double far = r / Math.Sin(a / 2),
            end = fillet.LegMm * Math.Cos(a / 2),
            area = 0;
        for (int i = 0; i < Strips; i++)
        {
            double x = (i + 0.5) * end / Strips,
                below = far - x,
                circle = below < r ? Math.Sqrt((r * r) - (below * below)) : 0;
            area += 2 * ((x * Math.Tan(a / 2)) - circle) * end / Strips;
        }

        Assert.Equal(area, fillet.AreaMm2, 1e-4 * area);
    }

    [Fact]
    public void RangesAddUpTwoWays()
    {
        const double Area = 14.746;
        double Resin(double content) => GlassInResin.ResinKgPerM2(0.8053 * 1.05, content) * Area;
        Estimate cloth = new(Resin(0.55), Resin(0.5), Resin(0.4)),
            glue = Area * 1.15 * 1.15 * new Estimate(0.2, 0.3, 0.5),
            priming = Area * new Estimate(0.15, 0.25, 0.35);
        Near(new(10.202, 12.469, 18.703), cloth);
        Near(new(3.900, 5.850, 9.751), glue);
        Near(new(16.314, 22.006, 33.615), Estimate.Bounds([cloth, glue, priming]));
        Near(new(18.671, 22.006, 29.506), Estimate.Likely([cloth, glue, priming]));
        Assert.Equal(3.687, priming.Usual, 5e-4);
    }

    [Fact]
    public void ByVolumeAndByMassAreDifferentNumbers()
    {
        var two = new MixRatio(2, 1.15, 0.97);
        Assert.Equal(42.1739, two.HardenerTo100, 5e-5);
        Assert.Equal(1.0900, two.KgPerLitre, 5e-5);
        Assert.Equal(0.186, two.TooMuchIfWeighed, 5e-4);
        Assert.Equal(17.2414, new MixRatio(5, 1.16, 1.00).HardenerTo100, 5e-5);
        Assert.Equal(
            5,
            MixRatio
                .ByMass(new MixRatio(5, 1.16, 1).ResinPerHardenerByMass, 1.16, 1)
                .ResinPerHardener,
            1e-12
        );
        MixParts parts = two.Parts(0.4);
        Assert.Equal(0.4, parts.Kg, 1e-12);
        Assert.Equal(2, parts.ResinLitres / parts.HardenerLitres, 1e-12);
        Assert.Equal(0.4 / two.KgPerLitre, parts.Litres, 1e-12);
    }

    [Fact]
    public void MarksOnACup()
    {
        var tapered = new Cup(35, 0.1);
        Assert.Equal(45.7330, tapered.HeightMm(0.2), 5e-5);
        Assert.Equal(65.0958, tapered.HeightMm(0.3), 5e-5);
        var straight = new Cup(40, 0);
        Assert.Equal(39.7887, straight.HeightMm(0.2), 5e-5);
        Assert.Equal(59.6831, straight.HeightMm(0.3), 5e-5);
        // A slope of nearly nothing is nearly straight, without loss of digits.
        Assert.Equal(straight.HeightMm(0.3), new Cup(40, 1e-13).HeightMm(0.3), 1e-9);
        Assert.Equal(0.27, tapered.Litres(tapered.HeightMm(0.27)), 1e-12);
        Assert.Equal(0.27, new Cup(60, -0.1).Litres(new Cup(60, -0.1).HeightMm(0.27)), 1e-12);
    }

    private static void Near(Estimate wanted, Estimate found)
    {
        Assert.Equal(wanted.Least, found.Least, 1e-3);
        Assert.Equal(wanted.Usual, found.Usual, 1e-3);
        Assert.Equal(wanted.Most, found.Most, 1e-3);
    }
}
