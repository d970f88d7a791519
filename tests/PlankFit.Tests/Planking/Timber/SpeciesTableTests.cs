using PlankFit.Planking.Wood;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>The woods' figures against the units in which they are published, against each other, and their marks.</summary>
public sealed class SpeciesTableTests
{
    private const double MPaOfPsi = 0.00689476;

    /// <summary>As published, in psi and million psi (USDA Forest Products Laboratory, Wood Handbook): second hand by way of the sources named in the table, save what is said beside it to be from memory.</summary>
    [Theory]
    [InlineData("douglas-fir", 0.48, 12400, 1.95)]
    [InlineData("white-oak", 0.68, 15200, 1.78)] // gravity from memory
    [InlineData("western-redcedar", 0.32, 7500, 1.11)] // gravity from memory
    [InlineData("sitka-spruce", 0.40, 10200, 1.57)] // strength from memory
    [InlineData("alaska-yellow-cedar", 0.44, 11100, 1.42)] // strength from memory
    [InlineData("eastern-white-pine", 0.35, 8600, 1.24)] // gravity and strength from memory
    [InlineData("mahogany", 0.45, 11500, 1.50)] // from memory
    [InlineData("okoume", 0.33, 7400, 1.14)] // from memory, weakly
    public void AsPublishedInPsi(string name, double gravity, double psi, double millionPsi)
    {
        Species wood = Find(name);
        Assert.Equal(gravity, wood.Gravity!.Value, 1e-9);
        Assert.Equal(psi * MPaOfPsi, wood.Rupture!.Value, 0.008 * psi * MPaOfPsi);
        Assert.Equal(
            millionPsi * 1e6 * MPaOfPsi,
            wood.Modulus!.Value,
            0.006 * millionPsi * 1e6 * MPaOfPsi
        );
    }

    /// <summary>Air-dry weights published beside them, second hand: Douglas-fir 545 kg/m³, 34 lb a cubic foot; western redcedar 369. Boards differ by more than this.</summary>
    [Theory]
    [InlineData("douglas-fir", 545)]
    [InlineData("western-redcedar", 369)]
    public void DensitiesAgreeWithPublishedAirDryWeights(string name, double kg) =>
        Assert.Equal(kg, Find(name).KgPerCubicMetre(12)!.Value, 0.035 * kg);

    /// <summary>
    /// MOE and MOR over specific gravity lie about the regressions over all species, US Army TM 5-852-4 table 2-2 (read): MOE = 2.8 G million psi, MOR = 25700 G^1.25 psi.
    /// A unit mistaken would be out by far more than half.
    /// </summary>
    [Fact]
    public void FiguresLieAboutTheRegressionsOnGravity()
    {
        foreach (Species wood in SpeciesTable.BuiltIn.Where(s => s.BreakingStrain is not null))
        {
            double g = wood.Gravity!.Value;
            Assert.InRange(wood.Modulus!.Value / (2.8e6 * g * MPaOfPsi), 0.6, 1.5);
            Assert.InRange(wood.Rupture!.Value / (25700 * Math.Pow(g, 1.25) * MPaOfPsi), 0.7, 1.5);
            Assert.InRange(wood.BreakingStrain!.Value, 0.006, 0.009);
        }
    }

    /// <summary>
    /// Two published figures for one thing: movement coefficients, and shrinkage to oven-dry spread over 30 % (that rule, and all figures but white oak's movement, eastern white pine's, mahogany's and redcedar's shrinkage, from memory). They agree within 15 %, save western redcedar's
    /// recalled coefficient, which does not follow its shrinkage and is marked weak.
    /// </summary>
    [Fact]
    public void MovementAgreesWithShrinkage()
    {
        foreach (
            Species wood in SpeciesTable.BuiltIn.Where(s =>
                s is { MoveTangential: not null, ShrinkTangential: not null }
            )
        )
        {
            double ratio =
                wood.MoveTangential!.Value / Moisture.FromShrinkage(wood.ShrinkTangential)!.Value;
            if (wood.Name is "western-redcedar" or "mahogany")
            {
                Assert.True(ratio > 1.2);
                continue;
            }

            Assert.InRange(ratio, 0.99, 1.15);
        }

        Assert.Contains(
            "weakly",
            Find("western-redcedar").MoveTangential!.Source,
            StringComparison.Ordinal
        );
    }

    /// <summary>What was not read says so: these figures are recalled; those are quoted or read.</summary>
    [Fact]
    public void MemoryIsMarked()
    {
        Assert.All(
            [
                Find("douglas-fir").ShrinkRadial,
                Find("douglas-fir").MoveTangential,
                Find("sitka-spruce").Rupture,
                Find("sitka-spruce").MoveRadial,
                Find("mahogany").Modulus,
                Find("okoume").Gravity,
                Find("okoume-plywood").Gravity,
                Find("white-oak").Gravity,
                Find("eastern-white-pine").Rupture,
                Find("alaska-yellow-cedar").Rupture,
            ],
            (Sourced? s) =>
            {
                Assert.Equal(SourceTag.Memory, s!.Tag);
                Assert.Contains("recalled", s.Source, StringComparison.Ordinal);
            }
        );
        Assert.Equal(SourceTag.SecondHand, Find("white-oak").MoveTangential!.Tag);
        Assert.Equal(SourceTag.Read, Find("sitka-spruce").Gravity!.Tag);
    }

    [Fact]
    public void NamesAreOneEachAndEveryFigureHasASource()
    {
        Assert.Distinct(SpeciesTable.BuiltIn.Select(s => s.Name));
        foreach (Species s in SpeciesTable.BuiltIn)
        {
            Assert.All(
                new[]
                {
                    s.Gravity,
                    s.Modulus,
                    s.Rupture,
                    s.ShrinkRadial,
                    s.ShrinkTangential,
                    s.MoveRadial,
                    s.MoveTangential,
                }.OfType<Sourced>(),
                f => Assert.True(f.Source.Length > 20 && f.Value > 0)
            );
        }
    }

    private static Species Find(string name) => SpeciesTable.Find(SpeciesTable.BuiltIn, name)!;
}
