using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>
/// The joints and seams of the layer below as they lie under the layer above: brought out along the normal to its mid-thickness surface, where distances are
/// straight through space. Starboard frame.
/// </summary>
internal sealed class LayerBelow
{
    private const int PointsASeam = 8;

    /// <summary>What is further away than this is out of sight, mm.</summary>
    private const double SightMm = 500;

    /// <summary>A joint that crosses the seams at more than this cannot keep clear of them, and is not asked to, degrees.</summary>
    private const double RunsWithDegrees = 30;

    private static readonly double RunsWith = Math.Cos(RunsWithDegrees * Math.PI / 180);

    private readonly ImmutableArray<(JointId Id, Vec3[] Line)> joints;
    private readonly ImmutableArray<(SeamId Id, Vec3[] Line)> seams;

    private LayerBelow(
        ImmutableArray<(JointId Id, Vec3[] Line)> joints,
        ImmutableArray<(SeamId Id, Vec3[] Line)> seams
    )
    {
        (this.joints, this.seams) = (joints, seams);
    }

    /// <param name="pieced">What the layer below is pieced of; null where all its planks are whole.</param>
    public static LayerBelow Of(
        PlankLayerPlan below,
        PlankLayerPlan above,
        Side side,
        JointedLayer? pieced
    )
    {
        double gap = above.NeutralOffsetMm - below.NeutralOffsetMm;
        ImmutableArray<Plank> planks = below.On(side);
        Vec3[] Brought(Plank plank, IEnumerable<Vec2> flat) =>
            [
                .. flat.Select(p =>
                {
                    SurfacePoint under = plank.Map.Under(p);
                    return under.P + (gap * under.Normal);
                }),
            ];
        var byId = planks.ToDictionary(p => p.Id);
        return new(
            [
                .. (pieced?.Planks ?? []).SelectMany(p =>
                    p.Joints.Select(j =>
                        (
                            j.Id,
                            Brought(
                                byId[p.PlankId],
                                [
                                    Mid(j.OuterLine[0], j.InnerLine[0]),
                                    Mid(j.OuterLine[1], j.InnerLine[1]),
                                ]
                            )
                        )
                    )
                ),
            ],
            [
                .. planks
                    .Where(p => p.AfterEdge.Exists)
                    .Select(p =>
                        (
                            new SeamId(p.Id, p.AfterEdge.Neighbour),
                            Brought(p, PlankSchemes.Thinned(p.AfterEdge.Flat, PointsASeam))
                        )
                    ),
            ]
        );
    }

    /// <summary>The joint below that is nearest to a joint's line; null where none is within sight.</summary>
    public (JointId Id, double Mm)? NearestJoint(Vec3 a, Vec3 b) =>
        Nearest(joints, a, b, _ => true);

    /// <summary>The seam below nearest to a joint's line, of those that it runs with; null where none is within sight.</summary>
    public (SeamId Id, double Mm)? NearestSeam(Vec3 a, Vec3 b)
    {
        Vec3 along = (b - a).Unit();
        return Nearest(seams, a, b, run => Math.Abs(run.Unit().Dot(along)) >= RunsWith);
    }

    private static (TId Id, double Mm)? Nearest<TId>(
        ImmutableArray<(TId Id, Vec3[] Line)> lines,
        Vec3 a,
        Vec3 b,
        Func<Vec3, bool> counts
    )
    {
        (TId Id, double Mm)? best = null;
        foreach ((TId id, Vec3[] line) in lines)
        {
            for (int i = 1; i < line.Length; i++)
            {
                if (!counts(line[i] - line[i - 1]))
                {
                    continue;
                }

                double mm = SegmentDistance.Between(a, b, line[i - 1], line[i]);
                if (mm < (best?.Mm ?? SightMm))
                {
                    best = (id, mm);
                }
            }
        }

        return best;
    }

    private static Vec2 Mid(Vec2 a, Vec2 b) => 0.5 * (a + b);
}
