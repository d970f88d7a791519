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

/// <summary>A plane bottom at 20°, planks of 150 by 9 mm at 45°, one stringer 300 mm from the keel: every place worked by hand.</summary>
public sealed class FasteningPrismTests
{
    private static readonly FramingSpec Stringer = new(
        "stringer",
        FramingKind.Stringer,
        new FramingLine.FromKeel(300),
        50,
        null,
        null
    );

    /// <summary>
    /// The stringer crosses a plank at 45°, 150 √2 from seam to seam. 18 mm off both seams leave 114 mm across, 114 √2 = 161.2 mm along it, so that 75 mm asks
    /// for three steps and four fastenings: 57, 19, −19 and −57 mm off the plank's own line. On the mid-thickness surface they are 300 + 4.5 tan 20° =
    /// 301.638 mm from the keel's side: the plumb side falls away by the tangent over the half-thickness between it and the inner face.
    /// </summary>
    [Fact]
    public void FourOnAStringerAcrossAPlank()
    {
        BottomPlan plan = Planned(new() { SpacingMm = 75, EdgeMm = 18 });
        PlankLayerPlan inner = plan.PlankLayers.First();
        Plank[] whole =
        [
            .. inner
                .Starboard.Concat(inner.Port)
                .Where(p =>
                    p.Kind is PlankKind.Full or PlankKind.Master
                    && p.Ends.Length == 2
                    && p.Ends[0].At == PanelEdge.Lower
                    && p.Ends[1].At == PanelEdge.Upper
                ),
        ];
        Assert.True(whole.Length > 30);
        foreach (Plank plank in whole)
        {
            ImmutableArray<Fastening> points = plan.Fastenings!.On(plank.Id)!.Points;
            double[] n = [.. points.Select(f => f.At.Y).Order()];
            Assert.Equal(4, n.Length);
            foreach ((double should, double is_) in new[] { -57.0, -19, 19, 57 }.Zip(n))
            {
                Assert.Equal(should, is_, 0.1);
            }

            // The keel's side on the plank, a straight line carried on past it.
            Vec2 a = plank.Ends[0].NetLine[0],
                along = (plank.Ends[0].NetLine[^1] - a).Unit();
            Assert.All(
                points,
                f =>
                    Assert.Equal(
                        300 + (4.5 * Math.Tan(20 * Math.PI / 180)),
                        Math.Abs(along.Cross(f.At - a)),
                        0.03
                    )
            );
        }
    }

    /// <summary>The second skin misses the first, and no place of the stringer is left for long: both hold by the laws; here, that there is something to miss.</summary>
    [Fact]
    public void TheSecondSkinMissesTheFirst()
    {
        BottomPlan plan = Planned(new() { SpacingMm = 40, MissMm = 15 });
        Assert.Empty(FasteningLaws.Broken(plan));

        // Left out of account, the first skin's fastenings would be hit.
        BottomPlan blind = Planned(new() { SpacingMm = 40, MissMm = 0 });
        BottomPlan strict = blind with
        {
            Fastenings = blind.Fastenings! with { Layers = plan.Fastenings!.Layers },
        };
        Assert.Contains(FasteningLaws.Broken(strict), b => b.Contains("from a fastening below"));
    }

    /// <summary>Where a hand moves one fastening the laws see it: over the edge of the timber, near a seam, and a hole left in the row.</summary>
    [Fact]
    public void TheLawsSeeAMovedFastening()
    {
        BottomPlan plan = Planned(new() { SpacingMm = 75, EdgeMm = 18 });
        PlankId id = Named.Plank("S1-20");
        PlankFastenings made = plan.Fastenings!.On(id)!;
        List<string> With(ImmutableArray<Fastening> points) =>
            FasteningLaws.Broken(
                plan with
                {
                    Fastenings = plan.Fastenings with
                    {
                        ByPlank = plan.Fastenings.ByPlank.SetItem(
                            id,
                            made with
                            {
                                Points = points,
                            }
                        ),
                    },
                }
            );
        Fastening second = made.Points[1];
        Assert.Empty(With(made.Points));
        Assert.Contains(
            With(made.Points.SetItem(1, second with { At = second.At + new Vec2(26, 0) })),
            b => b.Contains("from the edge of stringer") || b.Contains("beside stringer")
        );
        Assert.Contains(
            With(made.Points.SetItem(1, second with { At = new(second.At.X, 70) })),
            b => b.Contains("from a seam")
        );
        Assert.Contains(With(made.Points.RemoveAt(1)), b => b.Contains("free at"));
        Assert.Contains(With(made.Points.RemoveAt(1)), b => b.Contains("in the totals"));
    }

    /// <summary>A place kept open over the stringer takes its fastenings; a timber narrower than twice the margin takes none, and both are told.</summary>
    [Fact]
    public void NothingInAnOpenPlaceNorOnANarrowTimber()
    {
        FramingSpec open = new(
            "shaft",
            FramingKind.Open,
            new FramingLine.FromKeel(300),
            200,
            2500,
            3500
        );
        BottomPlan plan = Planned(new() { SpacingMm = 75 }, Stringer, open);
        Assert.Empty(FasteningLaws.Broken(plan));
        Assert.DoesNotContain(
            plan.PlankLayers.SelectMany(l => l.Starboard)
                .SelectMany(p =>
                    plan.Fastenings!.On(p.Id)!
                        .Points.Where(f => f.Use == FasteningUse.Backing)
                        .Select(f => p.Map.Point(f.At).X)
                ),
            x => x is > 2500 and < 3500
        );
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains("no fastening on stringer") && f.Message.Contains("shaft")
        );

        BottomPlan narrow = Planned(
            new() { SpacingMm = 75, MarginMm = 13 },
            Stringer with
            {
                WidthMm = 25,
            }
        );
        Assert.DoesNotContain(
            narrow.Fastenings!.ByPlank.Values.SelectMany(p => p.Points),
            f => f.Use == FasteningUse.Backing
        );
        Assert.Contains(
            narrow.Findings,
            f => f.Message.Contains("12.5 mm from the edge of stringer, 13 mm asked")
        );
    }

    /// <summary>Vents alone where nothing is fastened, none without a spacing.</summary>
    [Fact]
    public void VacuumHasVents()
    {
        BottomPlan plan = Planned(new() { Kind = FasteningKind.None, VentMm = 200 });
        Assert.Empty(FasteningLaws.Broken(plan));
        Assert.All(plan.Fastenings!.Totals, t => Assert.Equal(FasteningUse.Vent, t.Use));
        Assert.Equal(
            plan.Fastenings.Totals.Sum(t => t.Count),
            plan.Fastenings.Totals.Sum(t => t.HolesToFill)
        );
        Assert.True(plan.Fastenings.Totals.Sum(t => t.Count) > 300);
        Assert.Empty(Planned(new() { Kind = FasteningKind.None }).Fastenings!.Totals);
    }

    private static BottomPlan Planned(FasteningSettings wish, params FramingSpec[] behind) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(KeelHalfBreadthMm: 40)).Job with
            {
                Framing = behind.Length > 0 ? [.. behind] : [Stringer],
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
