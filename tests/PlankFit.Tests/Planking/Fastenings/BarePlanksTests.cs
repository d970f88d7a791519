using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// A frame across one end of a bottom that is the same all along, and nothing else to fasten to: most planks have no timber under them, and a builder is told which
/// before they are sawn.
/// </summary>
public sealed class BarePlanksTests
{
    private static BottomPlan Planned(FasteningKind kind, params FramingSpec[] timber) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(LengthMm: 4200, MasterMm: 2200)).Job with
            {
                Framing = [.. timber],
                Fastenings = new(
                    new() { Kind = kind, SpacingMm = 60 },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    null,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );

    private static FramingSpec Stringer(double fromKeelMm) =>
        new("stringer", FramingKind.Stringer, new FramingLine.FromKeel(fromKeelMm), 45, null, null);

    [Fact]
    public void PlanksThatNothingHoldsAreToldBeforeSawing()
    {
        BottomPlan plan = Planned(FasteningKind.LeftIn, Stringer(700));
        ImmutableArray<PlankId> bare =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.Where(p =>
                    plan.Fastenings!.On(p.Id)!.Points.All(f => f.Use == FasteningUse.Vent)
                )
                .Select(p => p.Id),
        ];
        // Corner pieces at either end of the keel do not reach out to the stringer.
        Assert.NotEmpty(bare);
        Assert.True(bare.Length < plan.PlankLayers.First().Starboard.Length);
        Finding told = Assert.Single(
            plan.Findings,
            f =>
                f.Where == "layer inner"
                && f.Message.StartsWith("no fastening holds ", StringComparison.Ordinal)
        );
        Assert.Equal(Rank.SawAfter, told.Rank);
        Assert.StartsWith(
            $"no fastening holds {PlankRuns.Of(bare)}; to port likewise:",
            told.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhereNothingIsFastenedNobodyIsTold() =>
        Assert.DoesNotContain(
            Planned(FasteningKind.None, Stringer(700)).Findings,
            f => f.Message.StartsWith("no fastening holds ", StringComparison.Ordinal)
        );

    [Fact]
    public void RunsAreNamedByTheirEnds()
    {
        PlankId P(int n, Side side = Side.Starboard) => new(side, PlankId.Bottom, 1, n);
        Assert.Equal(
            "S1-03, S1-08 to 10, P1-04",
            PlankRuns.Of([P(9), P(8), P(3), P(4, Side.Port), P(10)])
        );
    }
}
