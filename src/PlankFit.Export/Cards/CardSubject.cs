using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>What a card is of: a plank, or one piece of it, with all that is said of it.</summary>
/// <param name="Shape">What is drawn, with its ends; of a piece a plank of its own, whose ends at joints are the joints.</param>
/// <param name="Id">S1-07; S1-07a.</param>
internal sealed record CardSubject(Plank Shape, PlankLayerPlan Layer, PieceId Id)
{
    public required string What { get; init; }

    /// <summary>What it asks of a board.</summary>
    public required string Size { get; init; }

    /// <summary>Notes of the plank itself, none of which may be lost.</summary>
    public ImmutableArray<string> Own { get; init; } = [];

    /// <summary>What the later parts say of it.</summary>
    public ImmutableArray<string> OfParts { get; init; } = [];

    /// <summary>Where its pieces meet; none on the card of one piece, whose ends they are.</summary>
    public ImmutableArray<PlankJoint> Joints { get; init; } = [];

    /// <summary>The plank, or its piece, to port that is its mirror image and has no card of its own; null where there is none.</summary>
    public PieceId? Twin { get; init; }

    /// <summary>Forward on the flat plank (s, n).</summary>
    public required Vec2 Forward { get; init; }

    public double ThicknessMm => Layer.Spec.ThicknessMm;

    /// <summary>The whole plank.</summary>
    /// <param name="twin">The plank to port that its card serves as well.</param>
    public static CardSubject Of(
        PlanShown shown,
        PlankLayerPlan layer,
        Plank plank,
        PlankId? twin = null
    )
    {
        LengthUnit unit = shown.Plan.Job.Units;
        JointedPlank? pieced = shown.Plan.Joints.On(plank.Id);
        return new(plank, layer, PieceId.Whole(plank.Id))
        {
            What =
                $"{Sides(plank.Side, twin)}, {Thick(layer, unit)}, {PlankWords.Of(plank.Kind)}, layer {layer.Code} {layer.Spec.Name}",
            Size = plank.IsRefused
                ? RefusedBend.Mark
                : (
                    pieced is null
                        ? $"to saw {LengthText.ForPaper(plank.CutLengthMm, unit, RoundTo.Up)}"
                        : $"in {pieced.Pieces.Length} pieces"
                ) + $"   net {LengthText.ForPaper(plank.NetLengthMm, unit, RoundTo.Up)}",
            Own = plank.IsRefused
                ? []
                : [.. PlankNotes.Of(layer, plank, unit), .. EdgeLines(plank, unit)],
            OfParts = plank.IsRefused ? [] : [.. PartNotes.OnCard(shown, plank)],
            Joints = pieced?.Joints ?? [],
            Twin = twin is { } other ? PieceId.Whole(other) : null,
            Forward = ForwardArrow.OnFlat(plank),
        };
    }

    public static string Thick(PlankLayerPlan layer, LengthUnit unit) =>
        $"{LengthText.ForPaper(layer.Spec.ThicknessMm, unit)} thick";

    public static string Sides(Side side, PlankId? twin) =>
        twin is null
            ? PlankWords.Of(side)
            : $"{PlankWords.Of(side)} as drawn, {PlankWords.Of(twin.Value.Side)} its mirror image";

    /// <summary>How far out an edge stands that is not straight, for both.</summary>
    public static IEnumerable<string> EdgeLines(Plank plank, LengthUnit unit)
    {
        string every = LengthText.ForPaper(EdgeOffset.SpacingMm(unit), unit);
        (string Name, PlankEdge Edge)[] edges =
        [
            ("forward edge", plank.ForwardEdge),
            ("after edge", plank.AfterEdge),
        ];
        if (plank.StraightEdges)
        {
            yield break;
        }

        string[] straight =
        [
            .. edges.Where(e => PlankWords.Edge(e.Edge, unit) == "straight").Select(e => e.Name),
        ];
        if (straight.Length > 0)
        {
            yield return $"{string.Join(" and ", straight)}, out from the line: under {LengthText.ForPaper(LengthText.PaperStepMm(unit), unit)} all along, to be taken from the pattern";
        }

        foreach ((string name, PlankEdge edge) in edges)
        {
            // An edge shorter than the spacing has no ordinate, and its words alone.
            if (
                edge.Exists
                && !straight.Contains(name)
                && EdgeOffset.Of(plank, edge, unit) is { IsEmpty: false } out_
            )
            {
                yield return $"{name}, out from the line every {every}: {string.Join("; ", out_.Select(o => LengthText.PaperNumber(o.OutMm, unit)))}";
            }
        }
    }
}
