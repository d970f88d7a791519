using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Where the angle is held, seams leave the keel at it, measured on the finished outlines in the surface's tangent plane. On the master plank it is its own line
/// that stands at the angle; its two seams run beside that line at the full width, and so stand a little off it on a warped bottom.
/// </summary>
public sealed class HeldAngleTests
{
    [Theory]
    [InlineData("survey-launch", 45)]
    [InlineData("pilot-skiff", 45)]
    [InlineData("tender", 52)]
    public void SeamsLeaveTheKeelAtTheAngleAskedFor(string hull, double angle)
    {
        Job job = LoftTests.Demo(hull);
        job = job with
        {
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is PlankLayerSpec p ? p with { Hold = Hold.Angle, AngleDegrees = angle } : l
                ),
            ],
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        int measured = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Assert.Equal(
                angle,
                layer.Starboard[layer.MasterNumber - 1].KeelAngleDegrees!.Value,
                0.01
            );
            foreach ((Plank a, Plank b) in layer.Starboard.Zip(layer.Starboard.Skip(1)))
            {
                if (KeelDirection(a, b) is not { } keel)
                {
                    continue;
                }

                Vec3 start = a.AfterEdge.Seam[0];
                StationOnHull near = plan.Hull.Stations.MinBy(s =>
                    Math.Abs(s.PositionMm - start.X)
                )!;
                Assert.True(
                    ClosestPoint.TryFind(
                        layer.Surface,
                        start,
                        new(near.U, 1),
                        1e-8,
                        out ClosestPoint.Result foot
                    )
                );
                Vec3 seam = foot.Foot.UnitTangent(a.AfterEdge.Seam[1] - start),
                    along = foot.Foot.UnitTangent(keel);
                double found = Math.Acos(Math.Abs(seam.Dot(along))) * 180 / Math.PI;
                bool ofMaster = a.Kind == PlankKind.Master || b.Kind == PlankKind.Master;
                Assert.True(
                    Math.Abs(found - angle) < (ofMaster ? 0.2 : 0.01),
                    $"{a.Id}: its after seam leaves the keel at {found}°"
                );
                measured++;
            }
        }

        Assert.True(measured > 10, $"{measured} seams measured");
    }

    /// <summary>The keel's tangent where the seam between two planks starts, from the nearest point of its outline either side (second order); null off the keel.</summary>
    private static Vec3? KeelDirection(Plank a, Plank b)
    {
        Vec3 at = a.AfterEdge.Seam[0];
        if (Nearest(a, at) is not { } back || Nearest(b, at) is not { } on)
        {
            return null;
        }

        double h = back.Norm,
            k = on.Norm;
        return (1 / (h + k)) * (((h / k) * on) - ((k / h) * back));
    }

    private static Vec3? Nearest(Plank plank, Vec3 at)
    {
        PlankEnd? keel = plank.Ends.FirstOrDefault(e => e.At == PanelEdge.Lower);
        if (keel is null || keel.Outline.Min(p => p.ChordTo(at)) > 1e-3)
        {
            return null;
        }

        return keel.Outline.Where(p => p.ChordTo(at) > 0.5).MinBy(p => p.ChordTo(at)) - at;
    }
}
