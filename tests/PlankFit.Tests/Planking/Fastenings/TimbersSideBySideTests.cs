using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>Two stringers so near to each other that a fastening into one takes a place of the other; where it is moved, that place is free again. Jobs by chance found both faults.</summary>
public sealed class TimbersSideBySideTests
{
    /// <summary>The clearance of the second stringer once spoke of fastenings into the first where these had been before they were moved: 27 gaps a side of 96 to 106 mm stayed on the upper skin.</summary>
    [Fact]
    public void WhereAFasteningWasMovedFromIsFreeForTheNextTimber()
    {
        BottomPlan plan = Planned(
            new(KeelHalfBreadthMm: 40),
            new() { SpacingMm = 75, EdgeMm = 30 },
            apartMm: 20,
            (50, 50)
        );
        Assert.Empty(FasteningLaws.Broken(plan));
        Assert.All(
            [Side.Starboard, Side.Port],
            side => Assert.True(Gaps(plan, 2, side, "second").Length <= 2)
        );
    }

    /// <summary>Timbers were once gone along one by one: 83.4 mm stayed at the end of the second, for a place taken by what was moved on the first afterwards.</summary>
    [Fact]
    public void WhereAFasteningIsMovedFromIsFreeForTheTimberBeforeIt()
    {
        BottomPlan plan = Planned(
            new(
                LengthMm: 3000,
                MasterMm: 1500,
                KeelHalfBreadthMm: 40,
                WidthMm: 110,
                AngleDegrees: 45
            ),
            new()
            {
                SpacingMm = 62,
                NearestMm = 30,
                EdgeMm = 26,
            },
            apartMm: 15,
            (50, 45)
        );
        Assert.Empty(FasteningLaws.Broken(plan));
        Assert.DoesNotContain(Gaps(plan, 1, Side.Starboard, "second"), g => g.To is null);
        Assert.True(RunLaws.Widest(plan, 1, Side.Starboard, "second") < 75);
    }

    private static TimberGap[] Gaps(BottomPlan plan, int layer, Side side, string timber) =>
        [
            .. plan.Fastenings!.Gaps.Where(g =>
                g.Layer == layer && g.Side == side && g.Backing == timber
            ),
        ];

    private static BottomPlan Planned(
        Prism prism,
        FasteningSettings wish,
        double apartMm,
        (double First, double Second) widthsMm
    ) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(prism).Job with
            {
                Framing =
                [
                    Stringer("first", 300, widthsMm.First),
                    Stringer("second", 300 + apartMm, widthsMm.Second),
                ],
                Fastenings = new(
                    wish with
                    {
                        MarginMm = 8,
                        PullDown = new(true, null, null, null, null, null, null, null),
                    },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    45,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );

    private static FramingSpec Stringer(string name, double fromKeelMm, double widthMm) =>
        new(name, FramingKind.Stringer, new FramingLine.FromKeel(fromKeelMm), widthMm, null, null);
}
