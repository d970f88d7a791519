using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>The fixture itself is held to numbers worked out by hand.</summary>
public sealed class PrismaticPlanTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build();

    private static IEnumerable<Plank> Planks =>
        Plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port));

    [Fact]
    public void PlanksCoverTheWholeLayer()
    {
        foreach (PlankLayerPlan layer in Plan.PlankLayers)
        {
            // 6 m by 1.0641777724759 m, less the strip that the plumb keel side takes from a surface inside the table's.
            double lost = 6000 * -layer.NeutralOffsetMm * Math.Tan(20 * Math.PI / 180);
            Assert.Equal(6385066.6348555 - lost, layer.AreaMm2, 1e-4);
            Assert.Equal(layer.AreaMm2, layer.Starboard.Sum(p => p.AreaMm2), 1e-5);
            Assert.Equal(layer.AreaMm2, layer.Port.Sum(p => Area(p.FlatNet)), 1e-5);
            Assert.Equal(34, layer.Starboard.Length);
            Assert.Equal(2, layer.Starboard.Count(p => p.Kind == PlankKind.Corner));
            // Nothing narrower than a quarter of a width, so no real planking need shift the master.
            Assert.All(layer.Starboard, p => Assert.True(p.WidestMm >= 150.0 / 4));
            Assert.All(layer.Starboard, p => Assert.True(p.NetLengthMm > 0));
        }
    }

    [Fact]
    public void KeelEndOfAPlankHeadingAft()
    {
        PlankEnd end = Plan.Find("S1-17")!.Ends[0];
        Assert.Equal(PanelEdge.Lower, end.At);
        Assert.Equal(45, end.CutDegrees, 1e-9);
        Assert.Equal(20, end.BevelDegrees);
        // 9 tan 20 = 3.275732 square to the cut, 4.632585 along the plank (exact).
        Assert.Equal(4.632585, end.InnerLine[0].X - end.OuterLine[0].X, 1e-6);
        Assert.Equal(
            3.275732,
            Math.Abs(
                (end.InnerLine[0] - end.OuterLine[0]).Cross(
                    (end.NetLine[1] - end.NetLine[0]).Unit()
                )
            ),
            1e-6
        );
        Assert.Equal(135, Plan.Find("P1-17")!.Ends[0].CutDegrees, 1e-9);
        Assert.Equal(135, Plan.Find("S2-17")!.Ends[0].CutDegrees, 1e-9);
        Assert.Equal(45, Plan.Find("P2-17")!.Ends[0].CutDegrees, 1e-9);
    }

    [Fact]
    public void OutlinesRunCounterClockwiseFromTheInboardVertexWithTheLeastN()
    {
        Assert.All(
            Planks,
            p =>
            {
                Assert.True(Area(p.FlatNet) > 0 && Area(p.FlatCut) > 0);
                double least = p.FlatNet.Min(v => v.Y);
                Assert.Equal(least, p.FlatNet[0].Y, 1e-7);
                Assert.DoesNotContain(p.FlatNet, v => v.Y < least + 1e-7 && v.X < p.FlatNet[0].X);
                for (int i = 0; i < p.FlatNet.Length; i++)
                {
                    int j = (i + 1) % p.FlatNet.Length;
                    Assert.Equal(
                        p.FlatNet[i].ChordTo(p.FlatNet[j]),
                        p.Outline[i].ChordTo(p.Outline[j]),
                        1e-8
                    );
                }
            }
        );
    }

    [Fact]
    public void TheSawnShapeHoldsBothFacesAndStaysInTheStock()
    {
        Assert.All(
            Planks,
            p =>
            {
                IEnumerable<Vec2> points = p.FlatNet.Concat(
                    p.Ends.SelectMany(e => e.OuterLine.Concat(e.InnerLine))
                );
                Assert.All(points, v => Assert.True(Inside(p.FlatCut, v), $"{p.Id} {v}"));
                Assert.True(p.FlatCut.Max(v => v.Y) - p.FlatCut.Min(v => v.Y) <= 150 + 1e-9);
            }
        );
    }

    [Fact]
    public void AFullPlankHasTheLengthOfTheHandComputedOne()
    {
        // 1.5049746386114 m from the middle line to the chine at 45 degrees, less what the plumb keel side takes.
        Plank p = Plan.Find("S1-17")!;
        double less = 13.5 * Math.Tan(20 * Math.PI / 180) * Math.Sqrt(2);
        Assert.Equal(1504.9746386114 - less, p.NetLengthMm, 1e-8);
        // Corner to corner: a width more at 45 degrees, the outer face at the keel, 25 mm square to the chine.
        double more = 150 + (4.632585 / 2) + (25 * Math.Sqrt(2));
        Assert.Equal(1504.9746386114 - less + more, p.CutLengthMm, 1e-6);
    }

    [Fact]
    public void NeighboursShareTheirSeamAndItsTicks()
    {
        foreach (Plank p in Planks.Where(p => p.AfterEdge.Exists))
        {
            Plank next = Plan.Find(p.AfterEdge.Neighbour!.Value)!;
            Assert.Equal(p.Number + 1, next.Number);
            Assert.Equal(p.Side, next.Side);
            for (int i = 0; i < p.AfterEdge.Seam.Length; i++)
            {
                Assert.True(p.AfterEdge.Seam[i].ChordTo(next.ForwardEdge.Seam[i]) < 1e-8);
            }
        }

        // Forward is smaller x, on either side.
        Assert.All(
            Planks.Where(p => p.ForwardEdge.Exists && p.AfterEdge.Exists),
            p =>
                Assert.Equal(
                    p.Side == Side.Starboard,
                    p.AfterEdge.Flat[0].Y > p.ForwardEdge.Flat[0].Y
                )
        );
    }

    [Fact]
    public void DividingTheEdgesChangesOnlyTheNumberOfVertices()
    {
        BottomPlan fine = PrismaticPlan.Build(new(KeelHalfBreadthMm: 30, MaxChordMm: 4.5));
        BottomPlan plain = PrismaticPlan.Build(new(KeelHalfBreadthMm: 30));
        Plank f = fine.Find("P2-09")!,
            c = plain.Find("P2-09")!;
        Assert.True(f.FlatNet.Length > 600);
        Assert.Equal(c.AreaMm2, f.AreaMm2, 1e-9);
        Assert.Equal(Area(c.FlatNet), Area(f.FlatNet), 1e-6);
        Assert.Equal(30, f.Ends[0].Outline[0].Y * -1, 1e-9);
    }

    private static double Area(IReadOnlyList<Vec2> polygon)
    {
        double twice = 0;
        for (int i = 0; i < polygon.Count; i++)
        {
            twice += polygon[i].Cross(polygon[(i + 1) % polygon.Count]);
        }

        return twice / 2;
    }

    private static bool Inside(IReadOnlyList<Vec2> convex, Vec2 v)
    {
        for (int i = 0; i < convex.Count; i++)
        {
            Vec2 edge = (convex[(i + 1) % convex.Count] - convex[i]).Unit();
            if (edge.Cross(v - convex[i]) < -1e-7)
            {
                return false;
            }
        }

        return true;
    }
}
