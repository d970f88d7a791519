using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Every seam of the demo hulls against a stepper in space that uses positions and normals alone: aimed at the seam's far end, it must run along the seam
/// and be as long.
/// </summary>
public sealed class SeamsBySteppingTests
{
    private const double StepMm = 5;
    private const double AgreeMm = 0.01;

    [Theory]
    [InlineData("survey-launch")]
    [InlineData("pilot-skiff")]
    [InlineData("tender")]
    public void SeamsAreWalkedWithinAHundredthOfAMillimetre(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        var off = new List<string>();
        int walked = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard.Where(p => p.AfterEdge.Exists))
            {
                PlankEdge seam = plank.AfterEdge;
                Uv start = Find(plan, layer.Surface, seam.Seam[0]);
                Vec3 aim = Aimed(layer.Surface, start, seam);
                foreach (int part in new[] { 1, 2, 3, 4 })
                {
                    int i = (seam.Seam.Length - 1) * part / 4;
                    double length = Along(seam.Seam, i);
                    if (length < StepMm)
                    {
                        continue;
                    }

                    Vec3 reached = SpaceStepper.Walk(layer.Surface, start, aim, length, StepMm).P;
                    walked++;
                    if (!(reached.ChordTo(seam.Seam[i]) < AgreeMm))
                    {
                        off.Add(
                            $"{plank.Id}: {reached.ChordTo(seam.Seam[i])} mm off after {length} mm"
                        );
                    }
                }

                double chords = Along(seam.Seam, seam.Seam.Length - 1);
                if (!(Math.Abs(seam.SeamLengthMm - chords) < AgreeMm))
                {
                    off.Add(
                        $"{plank.Id}: seam said to be {seam.SeamLengthMm} mm, its chords sum to {chords}"
                    );
                }
            }
        }

        Assert.Empty(off);
        Assert.True(walked > 100);
    }

    /// <summary>The direction, tangent at the start, whose walk ends abreast of the seam's end.</summary>
    private static Vec3 Aimed(ISurface surface, Uv start, PlankEdge seam)
    {
        SurfacePoint at = surface.At(start.U, start.V);
        Vec3 aim = at.UnitTangent(seam.Seam[^1] - seam.Seam[0]);
        double length = Along(seam.Seam, seam.Seam.Length - 1);
        if (length < StepMm)
        {
            return aim;
        }

        for (int i = 0; i < 6; i++)
        {
            (Vec3 p, Uv uv) = SpaceStepper.Walk(surface, start, aim, length, StepMm);
            Vec3 miss = seam.Seam[^1] - p;
            Vec3 ahead = (p - at.P).Unit();
            double across = miss.Dot(surface.At(uv.U, uv.V).Left(ahead));
            if (Math.Abs(across) < 1e-4)
            {
                break;
            }

            double turn = across / length;
            aim = (Math.Cos(turn) * aim) + (Math.Sin(turn) * at.Left(aim));
        }

        return aim;
    }

    private static Uv Find(BottomPlan plan, ISurface surface, Vec3 p)
    {
        StationOnHull near = plan.Hull.Stations.MinBy(s => Math.Abs(s.PositionMm - p.X))!;
        double u = Math.Max(near.U, plan.Hull.Surface.UFrom + 60);
        Assert.True(
            ClosestPoint.TryFind(
                surface,
                p,
                new(u, plan.Hull.Surface.UpperV(u) / 2),
                1e-9,
                out ClosestPoint.Result foot
            )
        );
        return foot.Uv;
    }

    private static double Along(ImmutableArray<Vec3> points, int last) =>
        Enumerable.Range(0, last).Sum(i => points[i].ChordTo(points[i + 1]));
}
