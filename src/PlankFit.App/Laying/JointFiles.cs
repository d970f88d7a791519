using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Export;
using PlankFit.Export.Joints;
using PlankFit.Export.Patterns;
using PlankFit.Export.Tables;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The pieces of long planks: the table of joints, a map of each layer's, the list of pieces, and a DXF file a piece.</summary>
internal static class JointFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.Joints is not { } joints || joints.ByPlank.IsEmpty)
        {
            return [];
        }

        return
        [
            .. joints
                .Layers.Where(l => !l.Planks.IsEmpty)
                .Select(l => new FileWork(
                    $"DXF of pieces, layer {l.Layer} {PlankWords.Of(l.Side)}",
                    output => Pieces(output, plan, l)
                )),
            .. plan
                .PlankLayers.Where(l =>
                    joints.Layers.Any(j => j.Layer == l.Number && !j.Planks.IsEmpty)
                )
                .Select(l =>
                    MadeFiles.Picture(
                        $"drawings/joints-layer-{l.Number}",
                        () => JointMap.Of(plan, l)
                    )
                ),
            MadeFiles.Pdf("joints.pdf", plan, "joints in long planks", () => JointPages.Of(plan)),
            MadeFiles.File("joints.csv", s => Csv.Write(JointTables.Joints(plan), s)),
            MadeFiles.File("pieces.csv", s => Csv.Write(JointTables.Pieces(plan), s)),
        ];
    }

    private static void Pieces(OutputFolder output, BottomPlan plan, JointedLayer layer)
    {
        foreach (JointedPlank pieced in layer.Planks)
        {
            Plank plank = plan.Find(pieced.PlankId)!;
            foreach (PlankPiece piece in pieced.Pieces)
            {
                Drawing pattern = PiecePattern.Of(OnPlanks.Of(plan), plank, piece);
                foreach (
                    (string folder, DxfVersion version) in new[]
                    {
                        ("r2000", DxfVersion.R2000),
                        ("r12", DxfVersion.R12),
                    }
                )
                {
                    output.Write(
                        $"dxf/{folder}/{piece.Id}.dxf",
                        s => DxfWriter.Write(s, pattern, OutputAsked.Dxf(plan.Job.Output, version))
                    );
                }
            }
        }
    }
}
