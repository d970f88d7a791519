using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Views;

/// <summary>The girth at which a seam ends on a station is that of the plank's own corner there, as it is drawn.</summary>
public sealed class SeamEndsOnStationsTests
{
    [Fact]
    public void OnATopside() =>
        AreAtTheirCorners(
            WholeBottomTests
                .Planned(
                    JobReader.Read(WallSided.Job, "job.toml", WallSided.Offsets, "offsets.csv").Job!
                )
                .Others[0]
        );

    [Fact]
    public void OnABottom() => AreAtTheirCorners(DemoPlans.Of("tender"));

    private static void AreAtTheirCorners(BottomPlan plan)
    {
        int met = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            foreach (
                ExpandedStation station in new[] { expanded.Stations[0], expanded.Stations[^1] }
            )
            {
                foreach (
                    (Plank plank, IReadOnlyList<Vec2> outline) in expanded.Planks.Select(p =>
                        (p.Plank, (IReadOnlyList<Vec2>)p.Outline)
                    )
                )
                {
                    double[] there =
                    [
                        .. outline
                            .Where(v => Math.Abs(v.X - station.Lower.X) < 0.01)
                            .Select(v => v.Y),
                    ];
                    if (
                        there.Length > 0
                        && expanded.GirthWhere(plank.OnHull.AfterEdge, station) is { } girth
                    )
                    {
                        Assert.InRange(there.Min(y => Math.Abs(y - girth)), 0, 0.05);
                        met++;
                    }
                }
            }
        }

        Assert.True(met >= 3, $"{met} seams");
    }
}
