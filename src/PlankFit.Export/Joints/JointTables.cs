using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>The lists of joints and of pieces; each size as the bench reads it, and as a plain number of millimetres.</summary>
public static class JointTables
{
    private const double Short = 11;

    /// <summary>One row a joint.</summary>
    public static Table Joints(BottomPlan plan) =>
        TableOf.Build(
            "joints",
            [
                new("joint", Short, (JointRow r) => r.Joint.Id.ToString()),
                new("plank", 9, r => r.Plank.Id.ToString()),
                new("side", Short, r => PlankWords.Of(r.Plank.Side)),
                new("layer", 7, r => r.Layer.Number),
                new("kind", 8, r => JointWords.Of(r.Joint.Kind)),
                new("on", 16, r => r.Joint.Backing),
                new("cut", 44, r => JointWords.Cut(r.Plank, r.Joint, r.Unit)),
                new("from the inboard tip", 14, r => LengthText.ForPaper(r.FromTipMm, r.Unit)),
                .. Distances(),
                new("at mm", Short, r => r.Joint.AtMm, 3),
                new("cut deg", Short, r => r.Joint.CutDegrees, 3),
                new("scarf ratio", Short, r => r.Joint.Ratio, 2),
                new("scarf length mm", Short, r => Scarf(r.Joint), 2),
                .. InNumbers(),
                new("pieces of the layer", Short, r => r.Jointed.Pieces),
                new("no fewer proved", Short, r => r.Jointed.LeastPieces),
            ],
            JointRow.All(plan)
        );

    /// <summary>One row a piece: what is to be sawn.</summary>
    public static Table Pieces(BottomPlan plan) =>
        TableOf.Build(
            "pieces",
            [
                new("piece", Short, (PieceRow r) => r.Piece.Id.ToString()),
                new("plank", 9, r => r.Plank.Id.ToString()),
                new("side", Short, r => PlankWords.Of(r.Plank.Side)),
                new("layer", 7, r => r.Layer.Number),
                new(
                    "length to cut",
                    14,
                    r => LengthText.ForPaper(r.Piece.LengthMm, r.Unit, RoundTo.Up)
                ),
                new("inboard end", 26, r => End(r.Piece.Inboard, false)),
                new("outboard end", 26, r => End(r.Piece.Outboard, true)),
                new("length to cut mm", Short, r => r.Piece.LengthMm, 2),
                new("thickness mm", Short, r => r.Layer.Spec.ThicknessMm, 3),
            ],
            PieceRow.All(plan)
        );

    private static IEnumerable<ColumnOf<JointRow>> Distances() =>
        Enum.GetValues<JointRuleKind>()
            .Select(what => new ColumnOf<JointRow>(
                JointWords.Of(what),
                20,
                r => r.Of(what) is { } d ? JointWords.Distance(d, r.Unit) : TableCell.Empty
            ));

    private static IEnumerable<ColumnOf<JointRow>> InNumbers() =>
        Enum.GetValues<JointRuleKind>()
            .Where(what => what != JointRuleKind.SameBacking)
            .Select(what => new ColumnOf<JointRow>(
                JointWords.Of(what) + " mm",
                Short,
                r => r.Of(what)?.DistanceMm,
                2
            ));

    private static double? Scarf(PlankJoint joint) =>
        joint.Kind == JointKind.Scarf ? joint.LengthMm : null;

    private static string End(PlankJoint? joint, bool outboard) =>
        joint is null ? "the plank's own"
        : joint.Kind == JointKind.Butt ? $"butt {joint.Id}"
        : $"scarf {joint.Id}, tapered on its {joint.TaperedFace(outboard)} face";
}
