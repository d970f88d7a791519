using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// Rows between the timbers and rows of vents, on a short plane bottom with planks of 150 mm at 45° and nothing behind or below to keep from: how many there are,
/// where they lie across the plank, where they begin and end, and how even they are between.
/// </summary>
public sealed class FasteningRowTests
{
    private const double Width = 150;

    /// <summary>What the finding of free places steps by, and the rules are widened by, mm.</summary>
    private const double Noise = 0.15;

    /// <summary>
    /// From rule to rule there are 150 − 2 edge across. 114 mm by 50 at most are three steps of 38, by 60 two of 57, by 114 one and by 113 two; 35 are one step,
    /// and 17 are less than the 18 that two fastenings are to be apart: one row, in the middle.
    /// </summary>
    [Theory]
    [InlineData(18, 50, 4)]
    [InlineData(18, 60, 3)]
    [InlineData(18, 114, 2)]
    [InlineData(18, 113, 3)]
    [InlineData(57.5, 50, 2)]
    [InlineData(66.5, 50, 1)]
    public void RowsLieEvenlyFromEdgeToEdge(double edgeMm, double acrossMm, int rows)
    {
        BottomPlan plan = Planned(
            Bare with
            {
                EdgeMm = edgeMm,
                PullDown = new(false, null, 75, acrossMm, null, null, null, null),
            }
        );
        Assert.DoesNotContain(plan.PlankLayers.First().Starboard, p => Of(plan, p).Length > 0);
        Plank[] whole = [.. Whole(plan.PlankLayers.Last())];
        Assert.True(whole.Length > 5, $"{whole.Length}");
        Assert.All(whole, p => Across(Of(plan, p), edgeMm, rows));
    }

    /// <summary>Vents are as far apart across as along, the first skin's as well: 114 mm by 60 are two steps, by 200 one.</summary>
    [Theory]
    [InlineData(18, 60, 3)]
    [InlineData(18, 200, 2)]
    [InlineData(70, 60, 1)]
    public void VentsLieEvenlyFromEdgeToEdge(double edgeMm, double ventMm, int rows)
    {
        BottomPlan plan = Planned(
            Bare with
            {
                Kind = FasteningKind.None,
                EdgeMm = edgeMm,
                VentMm = ventMm,
            }
        );
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Plank[] whole = [.. Whole(layer)];
            Assert.True(whole.Length > 5, $"{whole.Length}");
            Assert.All(
                whole,
                p =>
                {
                    Across(Of(plan, p), edgeMm, rows);
                    Along(p, Of(plan, p), edgeMm, 27, ventMm);
                }
            );
        }
    }

    /// <summary>A corner piece too narrow for two rows 18 mm apart has one, halfway between its own outermost points, which lie unevenly about the line that it is drawn by.</summary>
    [Theory]
    [InlineData(32)]
    [InlineData(60)]
    public void ANarrowPieceHasItsRowInTheMiddle(double edgeMm)
    {
        BottomPlan plan = Planned(
            Bare with
            {
                Kind = FasteningKind.None,
                EdgeMm = edgeMm,
                EndMm = 5,
                VentMm = 40,
            }
        );
        int looked = 0;
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard))
        {
            double low = plank.FlatNet.Min(p => p.Y),
                high = plank.FlatNet.Max(p => p.Y);
            Vec2[] places = Of(plan, plank);
            if (high - low < (2 * edgeMm) + 18 && Math.Abs(low + high) > 5 && places.Length > 0)
            {
                Assert.All(places, p => Assert.Equal((low + high) / 2, p.Y, 0.03));
                looked++;
            }
        }

        Assert.True(looked >= 1, $"{looked}");
    }

    /// <summary>A row begins where the end's rule lets it and ends where the other end's does; between, the steps are alike, and as few as the spacing allows.</summary>
    [Theory]
    [InlineData(75, 27)]
    [InlineData(75, 40)]
    [InlineData(110, 27)]
    public void ARowRunsFromEndToEndInEvenSteps(double spacingMm, double endMm)
    {
        BottomPlan plan = Planned(
            Bare with
            {
                EndMm = endMm,
                PullDown = new(false, null, spacingMm, 50, null, null, null, null),
            }
        );
        Plank[] whole = [.. Whole(plan.PlankLayers.Last())];
        Assert.True(whole.Length > 5, $"{whole.Length}");
        Assert.All(whole, p => Along(p, Of(plan, p), 18, endMm, spacingMm));
    }

    /// <summary>
    /// 30 mm off either side of a seam at 45° are 84.9 mm along a stringer, and the two steps within a plank 63.6 mm each. One that is moved beside the middle,
    /// 16 mm at most, to bring the 84.9 within 75 may take no more than 11.4 of that from the step behind it: no step is longer than asked on either side.
    /// </summary>
    [Fact]
    public void AMovedFasteningLeavesNoLongStepBehindIt()
    {
        const double spacing = 75;
        BottomPlan plan = Planned(
            new()
            {
                SpacingMm = spacing,
                EdgeMm = 30,
                MarginMm = 8,
                PullDown = new(true, null, null, null, null, null, null, null),
            },
            new FramingSpec(
                "stringer",
                FramingKind.Stringer,
                new FramingLine.FromKeel(300),
                50,
                null,
                null
            )
        );
        Plank[] whole = [.. Whole(plan.PlankLayers.First()).Where(p => p.Side == Side.Starboard)];

        // The stringer runs along x.
        double[] x = [.. whole.SelectMany(p => Of(plan, p).Select(f => p.Map.Point(f).X)).Order()];
        Assert.True(x.Length > 12, $"{x.Length}");
        Assert.All(x.Zip(x.Skip(1), (a, b) => b - a), s => Assert.InRange(s, 25, spacing + 0.05));
        Assert.DoesNotContain(
            plan.Fastenings!.Gaps,
            g => g.Layer == 1 && whole.Any(p => p.Id == g.From) && whole.Any(p => p.Id == g.To)
        );
    }

    private static FasteningSettings Bare => new() { BelowMm = 0, MissMm = 0 };

    private static void Across(Vec2[] places, double edgeMm, int rows)
    {
        double[] n = [.. places.Select(p => Math.Round(p.Y, 3)).Distinct().Order()];
        Assert.Equal(rows, n.Length);
        double half = rows == 1 ? 0 : (Width / 2) - edgeMm;
        for (int i = 0; i < rows; i++)
        {
            // Half a millimetre inside the rule, which a curved edge would else break.
            double should = rows == 1 ? 0 : -half + (2 * half * i / (rows - 1));
            Assert.Equal(should, n[i], 0.55);
            Assert.InRange(Math.Abs(n[i]), 0, half + 0.01);
        }

        double[] steps = [.. n.Zip(n.Skip(1), (a, b) => b - a)];
        Assert.All(steps, s => Assert.Equal(steps[0], s, 0.002));
    }

    private static void Along(
        Plank plank,
        Vec2[] places,
        double edgeMm,
        double endMm,
        double spacingMm
    )
    {
        double n = (Width / 2) - edgeMm;
        Assert.All(places, p => Assert.InRange(p.Y, -n, n));
        foreach (IGrouping<double, Vec2> row in places.GroupBy(p => Math.Round(p.Y, 3)))
        {
            Vec2[] at = [.. row.OrderBy(p => p.X)];
            PlankEnd[] ends = [.. plank.Ends.OrderBy(e => e.NetLine[0].X)];
            Assert.Equal(endMm, Away(at[0], ends[0]), Noise);
            Assert.Equal(endMm, Away(at[^1], ends[1]), Noise);
            double length = at[^1].X - at[0].X;
            int steps = (int)Math.Ceiling((length / spacingMm) - 1e-6);
            Assert.Equal(steps + 1, at.Length);
            Assert.All(
                at.Zip(at.Skip(1), (a, b) => b.X - a.X),
                s => Assert.Equal(length / steps, s, 1e-6)
            );
        }
    }

    /// <summary>From a straight end, its corners among it.</summary>
    private static double Away(Vec2 at, PlankEnd end)
    {
        Vec2 a = end.NetLine[0],
            along = end.NetLine[^1] - a;
        double part = Math.Clamp((at - a).Dot(along) / along.Dot(along), 0, 1);
        return (at - a - (part * along)).Norm;
    }

    private static Vec2[] Of(BottomPlan plan, Plank plank) =>
        [.. plan.Fastenings!.On(plank.Id)!.Points.Select(f => f.At)];

    /// <summary>Those that run from keel to chine at the stock's width.</summary>
    private static IEnumerable<Plank> Whole(PlankLayerPlan layer) =>
        layer
            .Starboard.Concat(layer.Port)
            .Where(p =>
                p.Kind is PlankKind.Full or PlankKind.Master
                && p.Ends.Select(e => e.At)
                    .Order()
                    .SequenceEqual([PanelEdge.Lower, PanelEdge.Upper])
            );

    private static BottomPlan Planned(FasteningSettings wish, params FramingSpec[] behind) =>
        WholeBottomTests.Planned(
            PrismaticPlan
                .Build(
                    new Prism(
                        LengthMm: 3000,
                        HalfBeamMm: 700,
                        MasterMm: 1500,
                        KeelHalfBreadthMm: 40
                    )
                )
                .Job with
            {
                Framing = [.. behind],
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
