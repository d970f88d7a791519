using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>The spacing along a timber across the seams of its planks: on a plane bottom with planks at 45° by hand, on the launch by the laws of whole timbers.</summary>
public sealed class RunSpacingTests
{
    private const string Name = "stringer";

    /// <summary>
    /// 30 mm off either side of a seam at 45° is 2 · 30 √2 = 84.85 mm along the stringer (84.91 with the 0.02 mm by which rules are widened). 50 mm wide with a
    /// margin of 8 it has room for fastenings 16.15 mm beside its middle, and one moved so is as much nearer: 68.8 mm, within the 75 asked.
    /// </summary>
    [Fact]
    public void AFasteningIsMovedBesideTheMiddleWhereThatKeepsTheSpacing()
    {
        BottomPlan plan = Planned(8);
        Assert.Empty(FasteningLaws.Broken(plan));
        double[] across = [.. Seams(plan, 1).Select(s => s.Mm)];
        Assert.True(across.Length > 15);
        Assert.All(across, mm => Assert.InRange(mm, 60, 75.05));
        (PlankId From, PlankId To, double Mm)[] pairs = [.. Seams(plan, 1)];
        Assert.DoesNotContain(
            plan.Fastenings!.Gaps,
            g => pairs.Any(s => s.From == g.From && s.To == g.To)
        );
    }

    /// <summary>With a margin of 20 mm there is 4.75 mm of room beside the middle: 84.91 less twice as much is 75.4, too much still, so nothing is moved, and what is true is said.</summary>
    [Fact]
    public void WhereTheSpacingCannotBeKeptTheTrueGapIsTold()
    {
        BottomPlan plan = Planned(20);
        Assert.Empty(FasteningLaws.Broken(plan));
        (PlankId From, PlankId To, double Mm)[] across = [.. Seams(plan, 1)];
        Assert.All(across, s => Assert.Equal(84.91, s.Mm, 0.1));
        TimberGap[] told =
        [
            .. plan.Fastenings!.Gaps.Where(g => g.Layer == 1 && g.Side == Side.Starboard),
        ];
        foreach ((PlankId from, PlankId to, double mm) in across)
        {
            TimberGap gap = told.Single(g => g.From == from && g.To == to);
            Assert.Equal(mm, gap.GapMm, 0.01);
            Assert.Contains("seam", gap.Hindered.By.ToString(), StringComparison.Ordinal);
            Assert.Equal(30, gap.Hindered.AsksMm, 0.05);
            Assert.InRange(gap.Hindered.HasMm, 15, 30);
        }

        double widest = RunLaws.Widest(plan, 1, Side.Starboard, Name);
        Assert.Contains(
            plan.Findings,
            f =>
                f.Where == "layer inner"
                && f.Message.Contains(
                    $"along {Name} fastenings are further apart than the 75 mm of the rule",
                    StringComparison.Ordinal
                )
                && f.Message.Contains(
                    $"at most {LengthText.ForPaper(widest, LengthUnit.Millimetre)}",
                    StringComparison.Ordinal
                )
        );
    }

    /// <summary>A gap kept quiet, one told too small, one told of another place, and a fastening taken out beside a seam: each is seen.</summary>
    [Fact]
    public void TheLawsSeeAGapThatIsNotTold()
    {
        BottomPlan plan = Planned(20);
        ImmutableArray<TimberGap> gaps = plan.Fastenings!.Gaps;
        List<string> With(ImmutableArray<TimberGap> told) =>
            [.. RunLaws.Broken(plan with { Fastenings = plan.Fastenings with { Gaps = told } })];
        Assert.Empty(With(gaps));
        Assert.Contains(With(gaps.RemoveAt(3)), b => b.Contains("is not told"));
        Assert.Contains(
            With(gaps.SetItem(3, gaps[3] with { GapMm = gaps[3].GapMm - 5 })),
            b => b.Contains("is not there")
        );
        Assert.Contains(
            With(gaps.SetItem(3, gaps[3] with { From = gaps[3].To })),
            b => b.Contains("is not there")
        );
        BottomPlan good = Planned(8);
        PlankFastenings made = good.Fastenings!.On(Named.Plank("S1-20"))!;
        PlankFastenings without = made with
        {
            Points = [.. made.Points.OrderBy(p => p.At.Y).Skip(1)],
        };
        Assert.Contains(
            RunLaws.Broken(
                good with
                {
                    Fastenings = good.Fastenings with
                    {
                        ByPlank = good.Fastenings.ByPlank.SetItem(Named.Plank("S1-20"), without),
                    },
                }
            ),
            b => b.Contains("S1-20 is free at")
        );
    }

    /// <summary>On the launch no timber has a gap that could be closed, and the widest there is is told with its planks.</summary>
    [Fact]
    public void TheLaunchKeepsTheSpacingAlongItsTimbers()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        Assert.Empty(RunLaws.Broken(plan));
        // Before timbers were looked at as a whole 182 gaps were wider than the rule asks.
        Assert.True(plan.Fastenings!.Gaps.Length < 10);
        foreach (
            IGrouping<(int, Side, string), TimberGap> timber in plan.Fastenings.Gaps.GroupBy(g =>
                (g.Layer, g.Side, g.Backing)
            )
        )
        {
            (int layer, Side side, string name) = timber.Key;
            Assert.Equal(RunLaws.Widest(plan, layer, side, name), timber.Max(g => g.GapMm), 0.3);
        }
    }

    /// <summary>The gaps across seams between whole planks, along the stringer, from the places alone: on a plane n is across the plank, and along it is n √2 with the seams between.</summary>
    private static IEnumerable<(PlankId From, PlankId To, double Mm)> Seams(
        BottomPlan plan,
        int layer
    )
    {
        Plank[] planks =
        [
            .. plan
                .PlankLayers.Single(l => l.Number == layer)
                .Starboard.Where(p =>
                    p.Kind is PlankKind.Full or PlankKind.Master
                    && p.Ends.Length == 2
                    && p.Ends[0].At == PanelEdge.Lower
                    && p.Ends[1].At == PanelEdge.Upper
                ),
        ];
        foreach ((Plank a, Plank b) in planks.Zip(planks.Skip(1)))
        {
            // In space, along the stringer, which runs along x.
            double[] x = [.. plan.Fastenings!.On(a.Id)!.Points.Select(f => a.Map.Point(f.At).X)],
                y = [.. plan.Fastenings.On(b.Id)!.Points.Select(f => b.Map.Point(f.At).X)];
            yield return (
                a.Id,
                b.Id,
                Math.Min(Math.Abs(y.Min() - x.Max()), Math.Abs(x.Min() - y.Max()))
            );
        }
    }

    private static BottomPlan Planned(double marginMm) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(KeelHalfBreadthMm: 40)).Job with
            {
                Framing =
                [
                    new(Name, FramingKind.Stringer, new FramingLine.FromKeel(300), 50, null, null),
                ],
                Fastenings = new(
                    new()
                    {
                        SpacingMm = 75,
                        EdgeMm = 30,
                        MarginMm = marginMm,
                        PullDown = new(true, null, null, null, null, null, null, null),
                    },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    45,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );
}
