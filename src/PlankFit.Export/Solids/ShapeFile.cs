using PlankFit.Draughting.Bodies;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Solids;

/// <summary>The whole shape for other programs: every plank and every keel layer as a body, in glTF.</summary>
public static class ShapeFile
{
    public const string Name = "shape.glb";

    /// <summary>By which edges may be off for having fewer vertices, mm: what no drawing program's user measures on wood.</summary>
    public const double ToleranceMm = 0.05;

    /// <summary>The stream is left open.</summary>
    public static void Write(BottomPlan plan, Stream stream) =>
        GlbWriter.Write(
            stream,
            [
                .. PlanSolids.Of(plan, ToleranceMm).Select(s => Of(plan, s)),
                .. OnPlanks.Of(plan).Bodies(),
            ],
            Turned,
            [
                ("job", plan.Job.Name),
                ("revision", plan.Job.Revision),
                (
                    "stands",
                    "metres; y up, z forward, x to port; nothing moved: x of the table is -z"
                ),
            ]
        );

    /// <summary>From x aft, y to starboard, z up to the format's y up and z forward: a turn, no mirror.</summary>
    public static Vec3 Turned(Vec3 p) => new(-p.Y, p.Z, -p.X);

    private static Body Of(BottomPlan plan, PlankSolid solid)
    {
        PlankLayerPlan layer = plan.LayerOf(solid.Id);
        return BodyMaking
            .Between(solid.Outer, solid.Inner, solid.Normals, solid.Faces)
            .Named(solid.Id.ToString()) with
        {
            Kind = $"{layer.Code} {layer.Spec.Name}",
            Told =
            [
                ("panel", plan.PanelOf(solid.Id).Job.Hull.Panel.Name),
                ("layer", layer.Number),
                ("layerName", layer.Spec.Name),
                ("side", Words.PlankWords.Of(solid.Id.Side)),
                ("thicknessMm", layer.Spec.ThicknessMm),
            ],
        };
    }
}
