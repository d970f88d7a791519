using System.Collections.Immutable;
using PlankFit.Export.Patterns;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Patterns in true size: what is sawn is the flat shape, every end line has its name, neighbours' ticks meet.</summary>
public sealed class PatternTests
{
    public static TheoryData<string> Hulls => ["survey-launch", "pilot-skiff", "tender"];

    /// <summary>A prism's outline has only its corners, so nothing is left out and the pattern is the flat shape itself.</summary>
    [Fact]
    public void StraightOutlinesAreCutAsTheyAre()
    {
        BottomPlan plan = PrismaticPlan.Build();
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)))
        {
            ImmutableArray<Vec2> drawn = Only(CuttingPattern.Of(OnPlanks.Of(plan), plank), "cut");
            Assert.Equal(plank.FlatCut.Length, drawn.Length);
            Assert.All(
                drawn.Zip(plank.FlatCut),
                pair => Assert.True(pair.First.ChordTo(pair.Second) < 1e-9, plank.Id.ToString())
            );
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void ThinnedOutlinesStayWithinAThousandth(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard))
        {
            Drawing pattern = CuttingPattern.Of(OnPlanks.Of(plan), plank);
            Near(plank.FlatCut, Only(pattern, "cut"), plank.Id.ToString());
            Near(plank.FlatNet, Only(pattern, "net"), plank.Id.ToString());
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void EveryEndLineIsNamedOnItsOwnLayer(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)))
        {
            Drawing pattern = CuttingPattern.Of(OnPlanks.Of(plan), plank);
            Lettering[] words = [.. pattern.Shapes.OfType<Lettering>()];
            foreach (PlankEnd end in plank.Ends)
            {
                string edge = end.Word;
                bool bevelled =
                    end.OuterLine.Length > 1
                    && end.InnerLine.Length > 1
                    && end.OuterLine[0].ChordTo(end.InnerLine[0]) > 0.25;
                string[] names = bevelled
                    ? [$"{edge}, outer face", $"{edge}, inner face"]
                    : [$"{edge}, net end"];
                Assert.All(
                    names,
                    n => Assert.True(words.Any(w => w.Text == n), $"{plank.Id}: no \"{n}\"")
                );
            }
        }
    }

    /// <summary>A leader ends on the line that its word names: outer face words on the outer line, inner on the inner.</summary>
    [Fact]
    public void LeadersEndOnTheLineThatIsNamed()
    {
        BottomPlan plan = PrismaticPlan.Build();
        Plank plank = plan.Find("S1-10")!;
        PlankEnd keel = plank.Ends.Single(e => e.At == PanelEdge.Lower);
        ImmutableArray<Shape> shapes = CuttingPattern.Of(OnPlanks.Of(plan), plank).Shapes;
        Assert.Equal(0, Off("keel, outer face", keel.OuterLine), 1e-9);
        Assert.Equal(0, Off("keel, inner face", keel.InnerLine), 1e-9);
        // By hand: 9 mm at 20 degrees parts the two by 9 tan 20 = 3.2757 mm square to the cut.
        Assert.Equal(3.275732, Off("keel, outer face", keel.InnerLine), 1e-6);

        double Off(string name, ImmutableArray<Vec2> line)
        {
            int word = shapes.IndexOf(shapes.Single(s => s is Lettering text && text.Text == name));
            Polyline leader = Assert.IsType<Polyline>(shapes[word - 1]);
            return Distance(leader.Points[0], line, false);
        }
    }

    /// <summary>On the prism a tick stands at the same distance from the seam's inboard end on both planks, and points into each.</summary>
    [Fact]
    public void TicksOfNeighboursMeet()
    {
        BottomPlan plan = PrismaticPlan.Build();
        int met = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            for (int i = 1; i < layer.Starboard.Length; i++)
            {
                double[] one = Ticks(layer.Starboard[i - 1], layer.Starboard[i - 1].AfterEdge),
                    other = Ticks(layer.Starboard[i], layer.Starboard[i].ForwardEdge);
                Assert.Equal(one.Length, other.Length);
                Assert.All(one.Zip(other), p => Assert.Equal(p.First, p.Second, 1e-6));
                met += one.Length;
            }
        }

        Assert.True(met > 300, $"only {met} ticks");

        double[] Ticks(Plank plank, PlankEdge edge) =>
            [
                .. CuttingPattern
                    .Of(OnPlanks.Of(plan), plank)
                    .Shapes.OfType<Polyline>()
                    .Where(l => l.Layer == "marks" && l.Points.Length == 2)
                    .Where(l => Distance(l.Points[0], edge.Flat, false) < 1e-6)
                    .Where(l => Math.Abs(l.Points[0].ChordTo(l.Points[1]) - 12) < 1e-6)
                    .Select(l => l.Points[0].ChordTo(edge.Flat[0]))
                    .Order(),
            ];
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void NoPlankOfALayersFileLiesOnAnother(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            (double Low, double High)[] bands =
            [
                .. CuttingPattern
                    .Layer(
                        plan,
                        layer,
                        Side.Port,
                        [.. layer.Port.Select(p => CuttingPattern.Of(OnPlanks.Of(plan), p))]
                    )
                    .Shapes.OfType<Polyline>()
                    .Where(p => p.Layer == "cut")
                    .Select(p => (p.Points.Min(v => v.Y), p.Points.Max(v => v.Y)))
                    .OrderBy(b => b.Item1),
            ];
            Assert.Equal(layer.Port.Length, bands.Length);
            Assert.All(
                bands.Zip(bands.Skip(1)),
                b => Assert.True(b.Second.Low - b.First.High > 10)
            );
        }
    }

    private static ImmutableArray<Vec2> Only(Drawing drawing, string layer) =>
        drawing.Shapes.OfType<Polyline>().Single(p => p.Layer == layer).Points;

    /// <summary>Every vertex of the whole outline lies on the thinned one, and what is kept is kept exactly.</summary>
    private static void Near(ImmutableArray<Vec2> whole, ImmutableArray<Vec2> thinned, string id)
    {
        Assert.All(whole, p => Assert.True(Distance(p, thinned, true) < 0.001, id));
        Assert.Subset(whole.ToHashSet(), thinned.ToHashSet());
    }

    private static double Distance(Vec2 p, ImmutableArray<Vec2> line, bool closed)
    {
        double least = double.PositiveInfinity;
        for (int i = closed ? 0 : 1; i < line.Length; i++)
        {
            Vec2 a = line[(i + line.Length - 1) % line.Length],
                side = line[i] - a;
            double along = side.Norm > 0 ? Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1) : 0;
            least = Math.Min(least, p.ChordTo(a + (along * side)));
        }

        return least;
    }
}
