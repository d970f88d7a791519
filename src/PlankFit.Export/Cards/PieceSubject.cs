using System.Collections.Immutable;
using PlankFit.Export.Joints;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>The pieces of a plank, each for a card of its own: what is sawn in one go, with its joints as its ends.</summary>
internal static class PieceSubject
{
    public static IEnumerable<CardSubject> Of(
        PlanShown shown,
        PlankLayerPlan layer,
        Plank plank,
        PlankId? twin = null
    )
    {
        LengthUnit unit = shown.Plan.Job.Units;
        foreach (PlankPiece piece in shown.Plan.Joints.On(plank.Id)?.Pieces ?? [])
        {
            Plank shape = Shape(plank, piece, unit);
            yield return new(shape, layer, piece.Id)
            {
                What =
                    $"{CardSubject.Sides(plank.Side, twin)}, {CardSubject.Thick(layer, unit)}, piece of {plank.Id}, layer {layer.Code} {layer.Spec.Name}",
                Size = $"to saw {LengthText.ForPaper(piece.LengthMm, unit, RoundTo.Up)}",
                Own =
                [
                    .. new[] { piece.Inboard, piece.Outboard }
                        .OfType<PlankJoint>()
                        .Select(j => JointWords.Sentence(plank, j, unit)),
                    .. CardSubject.EdgeLines(shape, unit),
                    "The rest of what is said of the plank is on its own card.",
                ],
                Twin = twin is null ? null : piece.Id.Twin,
                Forward = ForwardArrow.OnFlat(plank),
            };
        }
    }

    /// <summary>The piece as a plank of its own in the coordinates of the whole, with the whole plank's ends that it has and its joints for the others.</summary>
    private static Plank Shape(Plank plank, PlankPiece piece, LengthUnit unit)
    {
        double from = piece.Inboard is null ? double.NegativeInfinity : piece.Net.Min(p => p.X),
            to = piece.Outboard is null ? double.PositiveInfinity : piece.Net.Max(p => p.X);
        PlankEdge forward = Edge(plank.ForwardEdge, piece),
            after = Edge(plank.AfterEdge, piece);
        PlankForm form = plank.Form;
        return plank with
        {
            Form = form with
            {
                Shape = form.Shape with
                {
                    FlatNet = piece.Net,
                    FlatCut = piece.Cut,
                    Forward = forward,
                    After = after,
                },
                Sizes = form.Sizes with
                {
                    NetLengthMm = piece.Net.Max(p => p.X) - piece.Net.Min(p => p.X),
                    CutLengthMm = piece.LengthMm,
                },
                Ends =
                [
                    .. Joints(piece.Inboard, outboard: false, unit),
                    .. plank.Ends.Where(e => Middle(e) > from && Middle(e) < to),
                    .. Joints(piece.Outboard, outboard: true, unit),
                ],
                Marks = [.. plank.Marks.Where(m => FlatPolygon.Holds(piece.Cut, m.At + m.Inward))],
            },
        };
    }

    private static double Middle(PlankEnd end) => (end.NetLine[0].X + end.NetLine[^1].X) / 2;

    private static IEnumerable<PlankEnd> Joints(
        PlankJoint? joint,
        bool outboard,
        LengthUnit unit
    ) => joint is null ? [] : [Joint(joint, outboard, unit)];

    /// <summary>A joint as an end of the piece that reaches to it: the line furthest along, and for a scarf the other line, to which it is tapered.</summary>
    private static PlankEnd Joint(PlankJoint joint, bool outboard, LengthUnit unit)
    {
        bool outerFurthest = joint.Scarf is not { } scarf || scarf.InboardOnOuter == outboard;
        string word =
            joint.Kind == JointKind.Butt
                ? $"butt {joint.Id.Pair}"
                : $"scarf {joint.Id.Pair}, {NumberText.Trimmed(joint.Ratio ?? 0, 1)}:1, {LengthText.ForPaper(joint.LengthMm, unit)} long";
        return new(
            outboard ? PanelEdge.Upper : PanelEdge.Lower,
            EndCut.Fit,
            new(joint.CutDegrees, 0, 0, 0),
            null,
            0,
            new(
                outerFurthest ? joint.OuterLine : joint.InnerLine,
                [],
                joint.OuterLine,
                joint.InnerLine
            )
        )
        {
            Word = word,
        };
    }

    /// <summary>The part of an edge that the piece has.</summary>
    private static PlankEdge Edge(PlankEdge edge, PlankPiece piece)
    {
        if (!edge.Exists)
        {
            return edge;
        }

        double low = piece.Net.Min(p => p.X),
            high = piece.Net.Max(p => p.X);
        (double from, double to) = Ends(edge.Flat, piece, low, high);
        if (to - from < 1)
        {
            return PlankEdge.None;
        }

        ImmutableArray<Vec2> flat = [.. Between(edge.Flat, from, to)];
        return edge with { Flat = flat };
    }

    /// <summary>From where to where an edge is the piece's: as far as its net outline follows it.</summary>
    private static (double From, double To) Ends(
        ImmutableArray<Vec2> edge,
        PlankPiece piece,
        double low,
        double high
    )
    {
        const double OnEdgeMm = 0.05;
        double[] on =
        [
            .. piece
                .Net.Where(p => Segments.YAt(edge, p.X) is { } y && Math.Abs(y - p.Y) < OnEdgeMm)
                .Select(p => p.X),
        ];
        return on.Length < 2 ? (low, low) : (Math.Max(low, on.Min()), Math.Min(high, on.Max()));
    }

    private static IEnumerable<Vec2> Between(ImmutableArray<Vec2> edge, double from, double to) =>
        [
            new(from, Segments.YAt(edge, from) ?? edge[0].Y),
            .. edge.Where(p => p.X > from && p.X < to),
            new(to, Segments.YAt(edge, to) ?? edge[^1].Y),
        ];
}
