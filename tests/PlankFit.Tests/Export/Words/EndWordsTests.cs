using System.Collections.Immutable;
using PlankFit.Export.Cards;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

/// <summary>
/// Worked on paper, with a plank at 60° to the keel so that no two angles agree. Heading aft from the keel, the keel line runs aft from the forward
/// corner; aft is partly along the plank, outboard, so the after corner stands further out by 150 cot 60° = 86.6 mm: the plank is longer on its
/// forward edge at the keel and on its after edge at the chine, whichever the side. Heading forward, the other way about. At the transom a plank that
/// heads aft is met square to the keel: its forward edge reaches it further outboard, by 150 cot 30° = 259.8 mm.
/// </summary>
public sealed class EndWordsTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build(new(AngleDegrees: 60));

    [Theory]
    [InlineData("S1-20", PanelEdge.Lower, Toward.Aft, Toward.Forward, 30, 86.6025)]
    [InlineData("P1-20", PanelEdge.Lower, Toward.Aft, Toward.Forward, 30, 86.6025)]
    [InlineData("S1-20", PanelEdge.Upper, Toward.Aft, Toward.Aft, 30, 86.6025)]
    [InlineData("P1-20", PanelEdge.Upper, Toward.Aft, Toward.Aft, 30, 86.6025)]
    [InlineData("S2-20", PanelEdge.Lower, Toward.Forward, Toward.Aft, 30, 86.6025)]
    [InlineData("P2-20", PanelEdge.Lower, Toward.Forward, Toward.Aft, 30, 86.6025)]
    [InlineData("S2-20", PanelEdge.Upper, Toward.Forward, Toward.Forward, 30, 86.6025)]
    [InlineData("P2-20", PanelEdge.Upper, Toward.Forward, Toward.Forward, 30, 86.6025)]
    public void AcrossAFullPlank(
        string id,
        PanelEdge at,
        Toward leans,
        Toward longer,
        double fromSquare,
        double fall
    )
    {
        EndReading reading = Read(id, at);
        Assert.Equal(leans, reading.Leans);
        Assert.Equal(longer, reading.LongCorner);
        Assert.Equal(fromSquare, reading.DegreesFromSquare, 1e-9);
        Assert.Equal(fall, reading.FallMm, 1e-4);
        Assert.Equal(150, reading.AcrossMm, 1e-9);
        Assert.Equal(at == PanelEdge.Upper, reading.FacesOutboard);
    }

    [Theory]
    [InlineData(Side.Starboard)]
    [InlineData(Side.Port)]
    public void AtTheTransomOfAPlankHeadingAft(Side side)
    {
        Plank plank = FullAcross(1, side, PanelEdge.Transom);
        var reading = EndReading.Of(plank, plank.Ends.Single(e => e.At == PanelEdge.Transom), 9);
        Assert.True(reading.FacesOutboard);
        Assert.Equal(60, reading.DegreesFromSquare, 1e-9);
        Assert.Equal(Toward.Forward, reading.Leans);
        Assert.Equal(Toward.Forward, reading.LongCorner);
        Assert.Equal(259.8076, reading.FallMm, 1e-4);
    }

    [Theory]
    [InlineData(Side.Starboard)]
    [InlineData(Side.Port)]
    public void AtTheStemOfAPlankHeadingAft(Side side)
    {
        // The stem is its inboard end; going outboard along the stem is going towards the plank's forward edge, which so starts later: the after one is longer.
        Plank plank = FullAcross(1, side, PanelEdge.Stem);
        var reading = EndReading.Of(plank, plank.Ends.Single(e => e.At == PanelEdge.Stem), 9);
        Assert.False(reading.FacesOutboard);
        Assert.Equal(Toward.Forward, reading.Leans);
        Assert.Equal(Toward.Aft, reading.LongCorner);
    }

    [Fact]
    public void TheLongCornerIsWhereTheSeamReachesFurthest()
    {
        // The same question asked of the seams alone, which know nothing of angles.
        IEnumerable<Plank> whole = Plan
            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
            .Where(p => p.Ends.Length == 2 && p.ForwardEdge.Exists && p.AfterEdge.Exists);
        Assert.True(whole.Count() > 100);
        foreach (Plank p in whole)
        {
            bool forwardStartsFirst = p.ForwardEdge.Flat[0].X < p.AfterEdge.Flat[0].X,
                forwardEndsLast = p.ForwardEdge.Flat[^1].X > p.AfterEdge.Flat[^1].X;
            Assert.Equal(
                forwardStartsFirst ? Toward.Forward : Toward.Aft,
                EndReading.Of(p, p.Ends[0], 9).LongCorner
            );
            Assert.Equal(
                forwardEndsLast ? Toward.Forward : Toward.Aft,
                EndReading.Of(p, p.Ends[1], 9).LongCorner
            );
        }
    }

    [Fact]
    public void KeelEndInWords()
    {
        // 9 tan 20° = 3.28 mm: 3.5 on a rule of half millimetres.
        Plank plank = Plan.Find("S1-20")!;
        Assert.Equal(
            "keel, fit: 30° from square, leans aft going outboard; fall 86.5 mm across 150 mm, forward corner the longer; "
                + "bevel 20°, outer face longer by 3.5 mm",
            EndWords.Sentence(plank, plank.Ends[0], 9, LengthUnit.Millimetre)
        );
    }

    [Fact]
    public void ChineEndInWordsAndInInches()
    {
        // 86.6025 mm = 3.4095 in = 3 13/32 in (3.40625); 150 mm = 5.9055 in = 5 29/32 in; 25 mm = 31.496/32 in.
        Plank plank = Plan.Find("P2-20")!;
        Assert.Equal(
            "chine, left long by 31/32\": 30° from square, leans forward going outboard; fall 3 13/32\" across 5 29/32\", "
                + "forward corner the longer; no bevel",
            EndWords.Sentence(plank, plank.Ends[^1], 9, LengthUnit.Foot)
        );
    }

    /// <summary>A corner that just touches another edge has no fall to saw by; one that runs far along the plank has, however narrow it is.</summary>
    [Theory]
    [InlineData(0.1, LengthUnit.Millimetre, "under 0.5 mm across: no cut of its own")]
    [InlineData(0.1, LengthUnit.Foot, "under 1/32\" across: no cut of its own")]
    [InlineData(3, LengthUnit.Millimetre, "fall 3 mm across 0 mm, after corner the longer")]
    public void ACornerThatJustTouchesHasNoFall(double fallMm, LengthUnit unit, string told)
    {
        Plank plank = Plan.Find("S1-20")!;
        Vec2 at = plank.Ends[^1].NetLine[0];
        PlankEnd end = plank.Ends[^1] with
        {
            Lines = new(
                [at, at + new Vec2(fallMm, 0.1)],
                plank.Ends[^1].Outline,
                plank.Ends[^1].OuterLine,
                plank.Ends[^1].InnerLine
            ),
        };
        Assert.Equal(told, EndWords.Fall(EndReading.Of(plank, end, 9), unit));
        string listed = EndFigures.Line(plank, end, 9, unit);
        Assert.Equal(fallMm < 1, listed.Contains("no cut of its own", StringComparison.Ordinal));
        Assert.DoesNotContain("fall 0", listed, StringComparison.Ordinal);
    }

    [Fact]
    public void ANegativeBevelMakesTheInnerFaceTheLonger()
    {
        Plank plank = Plan.Find("S1-20")!;
        PlankEnd end = plank.Ends[0] with { Angles = new(plank.Ends[0].CutDegrees, -10, -10, -10) };
        Assert.Equal(
            "bevel 10°, inner face longer by 1.5 mm",
            EndWords.Bevel(plank, end, 9, LengthUnit.Millimetre)
        );
    }

    [Theory]
    [InlineData("S1-20", "17° at the forward corner, 19° at the after")]
    [InlineData("P1-20", "19° at the forward corner, 17° at the after")]
    public void ABevelThatChangesNamesItsCorners(string id, string corners)
    {
        // Least n is the forward edge to starboard and the after edge to port.
        Plank plank = Plan.Find(id)!;
        PlankEnd end = plank.Ends[0] with { Angles = new(plank.Ends[0].CutDegrees, 18, 17, 19) };
        Assert.EndsWith(
            "at mid-cut; " + corners,
            EndWords.Bevel(plank, end, 9, LengthUnit.Millimetre),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ASquareEndHasNeitherLeanNorFall()
    {
        Plank plank = Plan.Find("S1-20")!;
        PlankEnd square = plank.Ends[^1] with
        {
            Angles = plank.Ends[^1].Angles with { CutDegrees = 90.1 },
            Lines = plank.Ends[^1].Lines with { Net = [new(1000, -75), new(999.7, 75)] },
        };
        var reading = EndReading.Of(plank, square, 9);
        Assert.Equal("square", EndWords.FromSquare(plank.Id, reading));
        Assert.Equal("no fall", EndWords.Fall(reading, LengthUnit.Millimetre));
    }

    [Fact]
    public void APlankThatMeetsTwoEdgesAtOneEndReadsEachOverItsOwnWidth()
    {
        Plank plank = Plan.PlankLayers.First().Starboard.First(p => p.Ends.Length == 3);
        ImmutableArray<EndReading> read = [.. plank.Ends.Select(e => EndReading.Of(plank, e, 9))];
        bool twoOutboard = read.Count(r => r.FacesOutboard) == 2;
        Assert.Equal(
            150,
            read.Where(r => r.FacesOutboard == twoOutboard).Sum(r => r.AcrossMm),
            1e-9
        );
    }

    private static EndReading Read(string id, PanelEdge at)
    {
        Plank plank = Plan.Find(id)!;
        return EndReading.Of(plank, plank.Ends.Single(e => e.At == at), 9);
    }

    private static Plank FullAcross(int layer, Side side, PanelEdge at) =>
        Plan
            .PlankLayers.Single(l => l.Number == layer)
            .On(side)
            .First(p => p.Ends.Any(e => e.At == at && Math.Abs(Across(e) - 150) < 1e-6));

    private static double Across(PlankEnd end)
    {
        Vec2 chord = end.NetLine[^1] - end.NetLine[0];
        return chord.Y;
    }
}
