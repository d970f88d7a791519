using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>A joint with what is needed to speak of it.</summary>
internal sealed record JointRow(
    BottomPlan Plan,
    PlankLayerPlan Layer,
    JointedLayer Jointed,
    Plank Plank,
    PlankPiece Inboard,
    PlankPiece Outboard,
    PlankJoint Joint
)
{
    public LengthUnit Unit => Plan.Job.Units;

    /// <summary>From the plank's inboard tip, as sawn, to the joint's middle on the plank's own line, mm.</summary>
    public double FromTipMm => Joint.AtMm - Plank.FlatCut.Min(p => p.X);

    public JointDistance? Of(JointRuleKind what) =>
        Joint.Distances.FirstOrDefault(d => d.Rule.What == what);

    public static IEnumerable<JointRow> All(BottomPlan plan) =>
        plan.Joints.Layers.SelectMany(l => Of(plan, l));

    public static IEnumerable<JointRow> Of(BottomPlan plan, JointedLayer jointed)
    {
        PlankLayerPlan layer = plan.PlankLayers.First(l => l.Number == jointed.Layer);
        var planks = layer.On(jointed.Side).ToDictionary(p => p.Id);
        return jointed.Planks.SelectMany(p =>
            p.Joints.Select(
                (joint, k) =>
                    new JointRow(
                        plan,
                        layer,
                        jointed,
                        planks[p.PlankId],
                        p.Pieces[k],
                        p.Pieces[k + 1],
                        joint
                    )
            )
        );
    }
}

/// <summary>A piece with what is needed to speak of it.</summary>
internal sealed record PieceRow(
    BottomPlan Plan,
    PlankLayerPlan Layer,
    Plank Plank,
    PlankPiece Piece
)
{
    public LengthUnit Unit => Plan.Job.Units;

    public static IEnumerable<PieceRow> All(BottomPlan plan) =>
        plan.Joints.Layers.SelectMany(jointed =>
        {
            PlankLayerPlan layer = plan.PlankLayers.First(l => l.Number == jointed.Layer);
            var planks = layer.On(jointed.Side).ToDictionary(p => p.Id);
            return jointed.Planks.SelectMany(p =>
                p.Pieces.Select(piece => new PieceRow(plan, layer, planks[p.PlankId], piece))
            );
        });
}
