using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Export.Joints;
using PlankFit.Export.Patterns;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The pieces of long planks: the table of joints, a map of each layer's, the list of pieces, and a DXF file a piece.</summary>
internal static class JointFiles
{
    public static FeatureFiles Of(BottomPlan plan)
    {
        JointPlan joints = plan.Joints;
        if (joints.ByPlank.IsEmpty)
        {
            return FeatureFiles.None;
        }

        (string Name, Lazy<Drawing> Drawing)[] maps =
        [
            .. plan
                .PlankLayers.Where(l =>
                    joints.Layers.Any(j => j.Layer == l.Number && !j.Planks.IsEmpty)
                )
                .Select(l =>
                    ($"joints-layer-{l.Number}", new Lazy<Drawing>(() => JointMap.Of(plan, l)))
                ),
        ];
        return new(
            [
                BookSection.Of(
                    InBook.Joints,
                    "joints",
                    "Joints in long planks",
                    () => [.. maps.Select(m => m.Drawing.Value), .. JointPages.Of(plan)]
                ),
            ],
            [
                ListedTable.Of("joints", () => JointTables.Joints(plan)),
                ListedTable.Of("pieces", () => JointTables.Pieces(plan)),
            ],
            [
                .. joints
                    .Layers.Where(l => !l.Planks.IsEmpty)
                    .Select(l => new FileWork(
                        $"DXF of pieces, layer {l.Layer} {PlankWords.Of(l.Side)}",
                        output => Pieces(output, plan, l)
                    )),
                .. maps.Select(m => MadeFiles.Picture(m.Name, plan.Job, () => m.Drawing.Value)),
            ]
        );
    }

    private static void Pieces(OutputFolder output, BottomPlan plan, JointedLayer layer)
    {
        foreach (JointedPlank pieced in layer.Planks)
        {
            Plank plank = plan.Find(pieced.PlankId)!;
            foreach (PlankPiece piece in pieced.Pieces)
            {
                MadeFiles.Dxf(
                    output,
                    piece.Id.ToString(),
                    PiecePattern.Of(OnPlanks.Of(plan), plank, piece),
                    plan.Job
                );
            }
        }
    }
}
