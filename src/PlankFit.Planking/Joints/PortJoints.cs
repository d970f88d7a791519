using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>Where the port planks are the mirror images of the starboard ones and the same lies behind both, port has starboard's joints, mirrored.</summary>
internal static class PortJoints
{
    private const double AlikeMm = 1e-3;

    /// <summary>Whether what lies behind the planks of a layer is the same on both sides.</summary>
    public static bool AreTwins(FramingPlan behind, PlankLayerPlan layer) =>
        layer.PortApart is null
        && layer
            .Starboard.Zip(layer.Port)
            .All(pair => Alike(behind.On(pair.First.Id), behind.On(pair.Second.Id)));

    public static (LayerCase Case, SchemeChoice Choice) Of(LayerCase starboard, SchemeChoice choice)
    {
        var twins = new Dictionary<JointPlace, JointPlace>(ReferenceEqualityComparer.Instance);
        ImmutableArray<PlankCase> planks =
        [
            .. starboard.Planks.Select(
                (p, i) =>
                    new PlankCase(
                        new JointedShape(starboard.Layer.Port[i]),
                        [.. p.Places.Select(Twin)],
                        p.LeastJoints
                    )
            ),
        ];
        return (
            starboard with
            {
                Side = Side.Port,
                Planks = planks,
            },
            choice with
            {
                Ways =
                [
                    .. choice.Ways.Select(w =>
                        w with
                        {
                            Joints = [.. w.Joints.Select(j => twins[j])],
                        }
                    ),
                ],
            }
        );

        SeenPlace Twin(SeenPlace seen)
        {
            JointPlace twin = Mirrored(seen.Place);
            twins.Add(seen.Place, twin);
            return new(
                twin,
                seen.JointBelow is { } joint ? (joint.Id.Twin, joint.Mm) : null,
                seen.SeamBelow is { } seam ? (seam.Id.Twin, seam.Mm) : null
            );
        }
    }

    private static JointPlace Mirrored(JointPlace p) =>
        p with
        {
            CutDegrees = 180 - p.CutDegrees,
            Line = [.. p.Line.Reverse().Select(v => new Vec2(v.X, -v.Y))],
        };

    private static bool Alike(
        ImmutableArray<FramingCrossing> starboard,
        ImmutableArray<FramingCrossing> port
    ) =>
        starboard.Length == port.Length
        && starboard
            .Zip(port)
            .All(pair =>
                pair.First.Of == pair.Second.Of
                && Alike(pair.First.Centre, pair.Second.Centre)
                && Alike(pair.First.Cover, pair.Second.Cover)
            );

    /// <summary>Mirror images take the same room.</summary>
    private static bool Alike(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b) =>
        a.IsDefaultOrEmpty == b.IsDefaultOrEmpty
        && (
            a.IsDefaultOrEmpty
            || (
                Near(a.Min(p => p.X), b.Min(p => p.X))
                && Near(a.Max(p => p.X), b.Max(p => p.X))
                && Near(a.Min(p => p.Y), -b.Max(p => p.Y))
                && Near(a.Max(p => p.Y), -b.Min(p => p.Y))
            )
        );

    private static bool Near(double a, double b) => Math.Abs(a - b) < AlikeMm;
}
