using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>What is cut stands off what is trimmed by the excess all round, but for a fifth of it at the corners: it was nought there where the keel's lap runs out past the stem's line.</summary>
public sealed class ExcessAllRoundTests
{
    private const double Excess = 25;

    [Theory]
    [InlineData("survey-launch", 35, 0, 0)]
    [InlineData("survey-launch", 75, 75, 60)]
    [InlineData("pilot-skiff", 50, 0, 50)]
    public void NowhereLess(string hull, double lap, double chine, double transom)
    {
        Job job = SheathedJobs.Outside(
            SheathedJobs.Bare(DemoPlans.Of(hull).Job),
            s =>
                s with
                {
                    Keel = new ClothAtKeel.PastCentreLine(lap),
                    RoundChineMm = chine,
                    RoundTransomMm = transom,
                    ExcessMm = Excess,
                }
        );
        SheathingPlan plan = BottomPlanner
            .Plan(job, null, TestContext.Current.CancellationToken)
            .Plan!.Sheathing!;
        SheathedSide side = Assert.Single(Assert.Single(plan.Layers).Sides);
        double least = Sides(side.Cut)
            .SelectMany(c =>
                new[] { 0, 0.25, 0.5, 0.75 }.Select(t => c.From + (t * (c.To - c.From)))
            )
            .Min(p => Sides(side.Trim).Min(t => Far(p, t.From, t.To)));
        // An end that is carried on is joined to the next edge straight, which takes up to a fifth off the corner.
        Assert.InRange(least, 0.8 * Excess, Excess + 0.01);
    }

    /// <summary>Of strips of one width along every edge nothing is lost on the way to an outline, and no more is added than four corners.</summary>
    [Fact]
    public void TheOutlineHoldsEveryStrip()
    {
        SheathedSide side = SheathedJobs.Pressed.Sheathing!.Layers[0].Sides[0];
        Assert.All(
            new[] { 0, 1, 25, 75, 150.0 },
            width =>
            {
                ImmutableArray<Vec2> outline = FlatOutline.Of(side.Edges, (_, _) => width);
                List<IReadOnlyList<Vec2>> strips =
                [
                    [.. side.Edges.Edges.SelectMany(e => e.Flat)],
                ];
                foreach (FlatEdge edge in side.Edges.Edges)
                {
                    for (int i = 0; i + 1 < edge.Flat.Length; i++)
                    {
                        Vec2 on = (edge.Flat[i + 1] - edge.Flat[i]).Unit();
                        strips.Add([
                            edge.Flat[i],
                            edge.Flat[i] - (width * on.Left()),
                            edge.Flat[i + 1] - (width * on.Left()),
                            edge.Flat[i + 1],
                        ]);
                    }
                }

                IReadOnlyList<Vec2> all = PlanarShapes.Together(strips, []);
                Assert.True(PlanarShapes.FurthestOutside(outline, all).Mm < 0.05 + (width * 0.01));
                Assert.InRange(
                    FlatPolygon.Area(outline) - FlatPolygon.Area(all),
                    -width - 0.01,
                    (4 * 3 * 3 * width * width) + width
                );
            }
        );
    }

    private static IEnumerable<(Vec2 From, Vec2 To)> Sides(ImmutableArray<Vec2> outline) =>
        outline.Select((p, i) => (p, outline[(i + 1) % outline.Length]));

    private static double Far(Vec2 p, Vec2 a, Vec2 b)
    {
        double part = Math.Clamp((p - a).Dot(b - a) / (b - a).Dot(b - a), 0, 1);
        return p.ChordTo(a + (part * (b - a)));
    }
}
