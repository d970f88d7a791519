using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>What is told of gaps, what is counted, and what the second skin misses, on a short plane bottom with planks at 45°, by hand.</summary>
public sealed partial class FasteningFindingTests
{
    private const double Root2 = 1.4142135623730951;

    private static readonly FramingSpec Stringer = new(
        "stringer",
        FramingKind.Stringer,
        new FramingLine.FromKeel(300),
        50,
        null,
        null
    );

    private static readonly PullDownWish NoPullDown = new(
        true,
        null,
        null,
        null,
        null,
        null,
        null,
        null
    );

    private static readonly Lazy<BottomPlan> Tight = new(() => Planned(Wish(75), Stringer));

    /// <summary>No fastening may be beside the middle (a margin of 20 of 25 leaves 5), nor within 30 mm of a seam: 60 √2 = 84.85 mm across each where 75 is asked.</summary>
    private static FasteningSettings Wish(double spacingMm) =>
        new()
        {
            SpacingMm = spacingMm,
            EdgeMm = 30,
            MarginMm = 20,
            PullDown = NoPullDown,
        };

    /// <summary>
    /// Places that would do lie within the spacing of both fastenings: of 84.91 mm the middle 65.09, half of it on either plank. The outermost of 24 looked at on
    /// each is half a step inside it, 10.59 mm from a fastening that is 30.02 mm off the seam: 30.02 − 10.59/√2 = 22.53 mm are left.
    /// </summary>
    [Fact]
    public void TheBestPlaceInAGapIsTold()
    {
        double gap = 2 * 30.02 * Root2,
            room = (2 * 75) - gap,
            has = 30.02 - ((gap - 75 + (room / 96)) / Root2);
        TimberGap[] told = [.. Whole(Tight.Value)];
        Assert.True(told.Length > 5, $"{told.Length}");
        Assert.All(
            told,
            g =>
            {
                Assert.Equal(gap, g.GapMm, 0.1);
                Assert.Equal(has, g.Hindered.HasMm, 0.1);
                Assert.Equal(30.02, g.Hindered.AsksMm, 1e-9);
            }
        );
    }

    /// <summary>A gap of 84.91 mm is a note where 75 mm is asked, and a warning where 40 is: more than twice the spacing. A stringer alike on both sides is told once.</summary>
    [Theory]
    [InlineData(75, Severity.Note)]
    [InlineData(40, Severity.Warning)]
    public void AGapOfMoreThanTwiceTheSpacingIsAWarning(double spacingMm, Severity severity)
    {
        BottomPlan plan = spacingMm == 75 ? Tight.Value : Planned(Wish(spacingMm), Stringer);
        Finding[] said = [.. Along(plan, "inner")];
        TimberGap[] gaps =
        [
            .. plan.Fastenings!.Gaps.Where(g => g.Layer == 1 && g.Side == Side.Starboard),
        ];
        Finding one = Assert.Single(said);
        Assert.Equal(severity, one.Severity);
        Assert.Contains(
            $" in {gaps.Length} places: at most",
            one.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(severity == Severity.Warning ? Rank.SawAfter : Rank.Know, one.Rank);
        Assert.EndsWith("; to port likewise", one.Message, StringComparison.Ordinal);
        // Eight are named after the widest.
        Assert.Equal(
            9,
            gaps.Count(g =>
                one.Message.Contains($"from {g.From} to {g.To}", StringComparison.Ordinal)
            )
        );
        Assert.Contains(" and others; to port", one.Message, StringComparison.Ordinal);
    }

    /// <summary>With a stringer on one side only, its gaps are told of that side.</summary>
    [Theory]
    [InlineData(Side.Starboard)]
    [InlineData(Side.Port)]
    public void GapsOfOneSideAreToldOfThatSide(Side side)
    {
        BottomPlan plan = Planned(Wish(75), Stringer with { Only = side });
        Assert.All(plan.Fastenings!.Gaps, g => Assert.Equal(side, g.Side));
        Finding one = Assert.Single(Along(plan, "inner"));
        Assert.DoesNotContain("likewise", one.Message, StringComparison.Ordinal);
        Assert.Contains(side == Side.Port ? "P1-" : "S1-", one.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A timber of 25 mm has no room for a margin of 13: 150 √2 = 212.1 mm from seam to seam are without a fastening. That is more than twice a spacing of 75, and
    /// less than twice one of 150.
    /// </summary>
    [Theory]
    [InlineData(75, Severity.Warning)]
    [InlineData(150, Severity.Note)]
    public void ATimberWithoutAFasteningIsAWarningWhereItIsLong(double spacingMm, Severity severity)
    {
        BottomPlan plan = Planned(
            new()
            {
                SpacingMm = spacingMm,
                MarginMm = 13,
                PullDown = NoPullDown,
            },
            Stringer with
            {
                WidthMm = 25,
            }
        );
        Assert.All(
            plan.Fastenings!.ByPlank.Values.SelectMany(p => p.Short),
            g => Assert.InRange(g.GapMm, 0, (150 * Root2) + 0.1)
        );
        Finding[] none =
        [
            .. plan.Findings.Where(f =>
                f.Message.StartsWith("no fastening on stringer", StringComparison.Ordinal)
            ),
        ];
        Assert.Equal(2, none.Length);
        Assert.All(none, f => Assert.Equal(severity, f.Severity));
        // Of more than six planks all are named, in runs, and the reason of one is given.
        foreach ((Finding f, PlankLayerPlan layer) in none.Zip(plan.PlankLayers))
        {
            PlankId[] bare =
            [
                .. layer
                    .Starboard.Where(p => plan.Fastenings.ByPlank[p.Id].Short.Any())
                    .Select(p => p.Id),
            ];
            Assert.True(bare.Length > 6);
            Assert.Contains(
                $" fits the rule in {PlankRuns.Words(bare)}, as in {bare[0]} (",
                f.Message,
                StringComparison.Ordinal
            );
            Assert.Single(f.Message, c => c == '(');
        }
    }

    /// <summary>
    /// A stringer scarfed out for 70 mm, less than the spacing: it is one run, and the gap from fastening to fastening is told whole. No fastening may be within
    /// 8.02 mm of a timber's end, nor within 18.02 of a seam: 25.48 along the stringer. Where the break leaves more than 25 mm of room (the least between two) up
    /// to the plank's seam on both sides, the outermost are as near to it as they may be: 70 + 2 · 8.02 = 86.04. Where it leaves less there is room for one, which
    /// stands in the middle of it, and the gap is half that room wider.
    /// </summary>
    [Theory]
    [InlineData(1900, 0)]
    [InlineData(1930, 2.91)]
    [InlineData(1880, 9.65)]
    public void AShortBreakInATimberIsPartOfTheGap(double from, double wider)
    {
        const double breakMm = 70,
            end = 8.02,
            seam = 18.02 * Root2;
        double to = from + breakMm;
        BottomPlan plan = Planned(
            new() { SpacingMm = 75, PullDown = NoPullDown },
            [Stringer with { ToMm = from }, Stringer with { FromMm = to }]
        );
        PlankLayerPlan layer = plan.PlankLayers.First();

        // By hand: the master's line runs aft at 45° and crosses under the middle of the table's keel and chine; the stringer's middle is 300 mm from the keel on the
        // inner face, 18 mm in.
        var prism = new Prism(LengthMm: 4200, MasterMm: 2200, KeelHalfBreadthMm: 40);
        double middle = (prism.KeelMm(0) + prism.ChineMm) / 2,
            master = prism.MasterMm + layer.MasterShiftMm - (middle - (prism.KeelMm(-18) + 300)),
            after = 75 * Root2,
            pitch = 150 * Root2;
        while (master + after < to)
        {
            after += pitch;
        }

        while (master + after - pitch > to)
        {
            after -= pitch;
        }

        (double low, double high) = (master + after - pitch + seam, master + after - seam);
        (double _, double before) = Outermost(low, from - end);
        (double next, double _) = Outermost(to + end, high);
        Assert.Equal(breakMm + (2 * end) + wider, next - before, 0.1);

        double[] x =
        [
            .. layer.Starboard.SelectMany(p =>
                plan.Fastenings!.On(p.Id)!.Points.Select(f => p.Map.Point(f.At).X)
            ),
        ];
        Assert.Equal(before, x.Where(v => v < from).Max(), 0.1);
        Assert.Equal(next, x.Where(v => v > to).Min(), 0.1);
        TimberGap told = Assert.Single(
            plan.Fastenings!.Gaps,
            g => g.Layer == 1 && g.Side == Side.Starboard && Math.Abs(g.GapMm - next + before) < 0.1
        );
        Assert.Equal(told.From, told.To);

        // Two that are to be a third of the spacing apart, or one in the middle.
        static (double, double) Outermost(double low, double high) =>
            high - low < 25 ? ((low + high) / 2, (low + high) / 2) : (low, high);
    }

    /// <summary>
    /// 65 mm off both seams leave 20 √2 = 28.3 mm along the stringer, too little for two that are to be 80 mm apart: one, in the middle of the plank, and 150 √2 =
    /// 212.1 mm from those beside it, as the spacing of 240 allows.
    /// </summary>
    [Fact]
    public void WhereThereIsRoomForOneItIsInTheMiddle()
    {
        BottomPlan plan = Planned(
            new()
            {
                SpacingMm = 240,
                EdgeMm = 65,
                PullDown = NoPullDown,
            },
            Stringer
        );
        ImmutableArray<Fastening>[] whole =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.Where(p => Runs(plan, p.Id))
                .Select(p => plan.Fastenings!.On(p.Id)!.Points),
        ];
        Assert.True(whole.Length > 10, $"{whole.Length}");
        Assert.All(whole, points => Assert.Equal(0, Assert.Single(points).At.Y, 0.05));
    }

    /// <summary>
    /// What is left in has its name in the totals, what pulls down between the timbers has none; a tenth is bought to spare. By the nail rule 9 mm of planking
    /// want 21.7 of bite, 30.7 in all, 35 by steps of 5; 18 mm want 30.7, 48.7 in all, 50. A staple through a strap of 1 and a skin of 9 wants 6 of the 9 below, 16 in
    /// all; 20 would come through, so it is 15.
    /// </summary>
    [Fact]
    public void TotalsNameWhatGoesIntoTheTimber()
    {
        BottomPlan plan = Planned(
            new()
            {
                Kind = FasteningKind.LeftIn,
                Name = "bronze nail",
                SpacingMm = 75,
            },
            Stringer
        );
        ImmutableArray<FasteningTotal> totals = plan.Fastenings!.Totals;
        Assert.Contains(totals, t => t.Use == FasteningUse.PullDown);
        Assert.All(
            totals,
            t =>
            {
                Assert.Equal(t.Use == FasteningUse.Backing ? "bronze nail" : null, t.Name);
                Assert.Equal((int)Math.Ceiling((1.1 * t.Count) - 1e-9), t.WithSpare);
                Assert.Equal(
                    t.Use == FasteningUse.PullDown ? 15
                        : t.Layer == 1 ? 35
                        : 50,
                    t.LengthMm
                );
            }
        );
        Assert.Equal(
            [
                (1, FasteningUse.Backing, 9),
                (2, FasteningUse.Backing, 18),
                (2, FasteningUse.PullDown, 9.0),
            ],
            plan.Fastenings.Layers.SelectMany(l =>
                l.Lengths.Select(c => (l.Layer, c.Use, c.PassedMm))
            )
        );
    }

    private static IEnumerable<Finding> Along(BottomPlan plan, string layer) =>
        plan.Findings.Where(f =>
            f.Where == $"layer {layer}"
            && f.Message.StartsWith("along stringer fastenings", StringComparison.Ordinal)
        );

    /// <summary>The gaps of the inner layer to starboard between planks that run from keel to chine.</summary>
    private static IEnumerable<TimberGap> Whole(BottomPlan plan) =>
        plan.Fastenings!.Gaps.Where(g =>
            g.Layer == 1 && g.Side == Side.Starboard && Runs(plan, g.From) && Runs(plan, g.To)
        );

    /// <summary>Whether it runs from keel to chine.</summary>
    private static bool Runs(BottomPlan plan, PlankId? id) =>
        id is { } known
        && plan.Find(known) is { Kind: PlankKind.Full or PlankKind.Master } plank
        && plank.Ends.Select(e => e.At).SequenceEqual([PanelEdge.Lower, PanelEdge.Upper]);

    private static BottomPlan Planned(
        FasteningSettings wish,
        FramingSpec behind,
        JointSpec? joints = null
    ) => Planned(wish, [behind], joints);

    private static BottomPlan Planned(
        FasteningSettings wish,
        ImmutableArray<FramingSpec> behind,
        JointSpec? joints = null
    ) =>
        WholeBottomTests.Planned(
            PrismaticPlan
                .Build(new Prism(LengthMm: 4200, MasterMm: 2200, KeelHalfBreadthMm: 40))
                .Job with
            {
                Framing = behind,
                Joints = joints,
                Fastenings = new(
                    wish,
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    45,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );
}
