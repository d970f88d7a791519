using PlankFit.Planking.Bending;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>Verdicts held to published bending radii, to the codes' limits, and to laws that any judge must keep.</summary>
public sealed class BendJudgeTests
{
    /// <summary>Least dry radii of Douglas-fir panels, APA form V345 (read): thickness and radius as published in millimetres, across the face grain and along it.</summary>
    public static TheoryData<double, double, double> Apa =>
        new()
        {
            { 6.4, 610, 1524 },
            { 7.9, 610, 1828 },
            { 9.5, 915, 2438 },
            { 12.7, 1828, 3658 },
            { 15.9, 2438, 4877 },
            { 19.1, 3658, 6096 },
        };

    [Theory]
    [MemberData(nameof(Apa))]
    public void PlywoodAtItsPublishedRadiusIsBentCold(double t, double across, double along)
    {
        foreach ((FaceGrain face, double radius) in Faces(across, along))
        {
            BendJudge judge = Plywood(t, face);

            // The millimetres are published rounded from feet and inches, by up to 0.8 %.
            Assert.Equal(BendWay.Cold, judge.Bent(radius * 1.01, t).Way);
            Assert.Equal("cold", judge.Bent(radius * 1.01, t).Verdict);
            BendLimit tighter = judge.Bent(radius * 0.99, t);
            Assert.NotEqual("cold", tighter.Verdict);
            Assert.NotEqual(BendWay.Refuse, tighter.Way);
            Assert.Equal(BendWay.LaminateThinner, judge.Bent(radius * 0.7, t).Way);
        }
    }

    /// <summary>Exactly at the radius in feet of a panel exact in inches there is no doubt: 1/4 in across 2 ft is R/t 96, along 5 ft 240; 3/4 in 192 and 320.</summary>
    [Theory]
    [InlineData(1.0 / 4, 96, 240)]
    [InlineData(5.0 / 16, 76.8, 230.4)]
    [InlineData(3.0 / 8, 96, 256)]
    [InlineData(1.0 / 2, 144, 288)]
    [InlineData(5.0 / 8, 153.6, 307.2)]
    [InlineData(3.0 / 4, 192, 320)]
    public void TheRatiosOfThePublishedTable(double inches, double across, double along)
    {
        foreach ((FaceGrain face, double ratio) in Faces(across, along))
        {
            double t = inches * 25.4;
            Assert.Equal(ratio, PlywoodRadii.LeastRadiusOverThickness(t, face), 1e-9);
            BendJudge judge = Plywood(t, face);
            Assert.Equal("cold", judge.Bent(ratio * t, t).Verdict);
            Assert.Equal(1, judge.Index(1 / (2 * ratio))!.Value, 1e-9);
        }
    }

    /// <summary>Two skins of 1/4 in where one of 1/2 in is too stiff: 12.7 mm across the grain asks for 1829 mm, 6.35 mm for 610.</summary>
    [Fact]
    public void PlywoodIsLaminatedByTheTableOfItsThinnerPanels()
    {
        BendJudge judge = Plywood(12.7, FaceGrain.Across);
        Assert.Equal(BendWay.LaminateThinner, judge.Bent(800, 12.7).Way);
        Assert.Equal(2, judge.Laminations(800, 0, 12.7));
        Assert.Equal(3, judge.Laminations(500, 0, 12.7));
        // Eight of 1.59 mm go to 152.4 mm by R/t 96; below that none of 1.5 mm or more.
        Assert.Equal(8, judge.Laminations(153, 0, 12.7));
        Assert.Null(judge.Laminations(152, 0, 12.7));
    }

    /// <summary>DIN 1052-1's R/t 200 (second hand), the softwood's 125 and the hardwood's 100 (glued laminated timber; from memory), each met and just missed.</summary>
    [Theory]
    [InlineData(200, "cold")]
    [InlineData(199, "cold, with care")]
    [InlineData(125, "cold, with care")]
    [InlineData(124, "soak or steam to form")]
    [InlineData(100, "soak or steam to form")]
    [InlineData(99, "refuse: laminate thinner")]
    public void TheCodesRowsHoldForSolidWood(double ratio, string verdict)
    {
        Assert.Equal(verdict, Judges.Of(9, Judges.Fir).Bent(ratio * 9, 9).Verdict);
        Assert.Equal(verdict, Judges.Of(9, null).Bent(ratio * 9, 9).Verdict);
    }

    /// <summary>Knots halve the strain: what clear boards take at R/t 200 knotty ones take at 400, and at 200 they are where clear ones are at 100.</summary>
    [Fact]
    public void KnotsHalveIt()
    {
        BendJudge judge = Judges.Of(
            9,
            Judges.Fir,
            TimberSpec.Default with
            {
                Grade = BoardGrade.Knotty,
            }
        );
        Assert.Equal("cold", judge.Bent(400 * 9, 9).Verdict);
        Assert.Equal("cold, with care", judge.Bent(399 * 9, 9).Verdict);
        Assert.Equal("soak or steam to form", judge.Bent(200 * 9, 9).Verdict);
        Assert.Equal("refuse: laminate thinner", judge.Bent(199 * 9, 9).Verdict);
    }

    /// <summary>Fir at 13.4 GPa bent to R/t 150 has 44.7 MPa at its face, 53 % of 85 MPa: over what is trusted cold (39 %), by 4/3.</summary>
    [Fact]
    public void TheIndexIsAPartOfTheBreakingStrain()
    {
        BendJudge judge = Judges.Of(9, Judges.Fir);
        double stress = 13400 / (2 * 150.0);
        Assert.Equal(44.7, stress, 0.05);
        Assert.Equal(stress / 85 / 0.394118, judge.Index(1 / (2 * 150.0))!.Value, 1e-4);
        Assert.Equal(200 / 150.0, judge.Index(1 / (2 * 150.0))!.Value, 1e-9);
    }

    /// <summary>Laying it flat on a curved bottom counts: a bend that is cold by itself is not with as much again in its edges; and no lamination eases that.</summary>
    [Fact]
    public void TheStrainOfLayingFlatCounts()
    {
        BendJudge judge = Judges.Of(9, Judges.Fir);
        Assert.Equal("cold", judge.Row(250, 1 / 500.0).Verdict);
        Assert.Equal("cold, with care", judge.Row(250, (1 / 500.0) + 0.001).Verdict);
        Assert.Equal(3, judge.Laminations(700, 0, 9));
        Assert.Null(judge.Laminations(700, 0.0026, 9));
    }

    /// <summary>However well the wood is known, the verdict is no gentler than that of the radius alone, and a thinner, flatter plank is judged no harder.</summary>
    [Fact]
    public void KnowingTheWoodNeverMakesItGentler()
    {
        BendJudge bare = Judges.Of(9, null);
        foreach (Species wood in SpeciesTable.BuiltIn.Where(s => s.Kind == WoodKind.Solid))
        {
            BendJudge judge = Judges.Of(9, wood.Name);
            for (double ratio = 60; ratio < 500; ratio += 1.7)
            {
                int before = -1;
                foreach (double flat in new[] { 0, 0.0002, 0.001, 0.003 })
                {
                    double strain = (1 / (2 * ratio)) + flat;
                    int row = judge.Rows.IndexOf(judge.Row(ratio, strain));
                    Assert.True(row >= bare.Rows.IndexOf(bare.Row(ratio, strain)));
                    Assert.True(row >= before);
                    before = row;
                }
            }
        }
    }

    [Fact]
    public void ABuildersOwnFirstRowWithoutARadiusJudgesByWordsOnly()
    {
        Job job = Judges.Job(Judges.Fir) with
        {
            Limits = new([new(0, "as it comes", "me")], 0.1, 0.15),
        };
        var judge = BendJudge.Of(job.Planking, job.Layers.OfType<PlankLayerSpec>().First());
        Assert.Null(judge.ColdStrain);
        Assert.Equal("as it comes", judge.Row(10, 0.05).Verdict);
    }

    private static BendJudge Plywood(double t, FaceGrain face) =>
        Judges.Of(t, "douglas-fir-plywood", TimberSpec.Default with { FaceGrain = face });

    private static IEnumerable<(FaceGrain, double)> Faces(double across, double along) =>
        [(FaceGrain.Across, across), (FaceGrain.Along, along)];
}
