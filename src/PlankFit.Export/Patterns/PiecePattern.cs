using System.Collections.Immutable;
using PlankFit.Export.Fastenings;
using PlankFit.Export.Joints;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Patterns;

/// <summary>
/// One piece of a plank in true size for a cutting machine, outer face up, in the whole plank's own coordinates, so that the pieces of a plank lie in their
/// files as they lie on the boat. Layers as in <see cref="CuttingPattern"/>; a scarf's two lines, between which it is tapered, are on the layer of the joints.
/// </summary>
public static class PiecePattern
{
    private const double NameMm = 8;
    private const double TickMm = 12;

    public static Drawing Of(BottomPlan plan, Plank plank, PlankPiece piece)
    {
        Box box = Box.Around(piece.Cut);
        return new(
            $"{plan.Job.Name} {piece.Id}",
            box.Width,
            box.Height,
            [.. Shapes(plan, plank, piece)]
        );
    }

    private static IEnumerable<Shape> Shapes(BottomPlan plan, Plank plank, PlankPiece piece)
    {
        const double Thin = CuttingPattern.ThinningMm;
        yield return new Polyline(Layers.Cut, Pens.Cut, Thinning.Closed(piece.Cut, Thin), true);
        yield return new Polyline(Layers.Net, Pens.Net, Thinning.Closed(piece.Net, Thin), true);
        foreach (
            ImmutableArray<Vec2> line in plank
                .Ends.Where(e => e.BevelDegrees != 0)
                .SelectMany(e => new[] { e.OuterLine, e.InnerLine })
                .Where(l => l.Length > 1 && Holds(piece, l[l.Length / 2]))
        )
        {
            yield return new Polyline(Layers.Marks, Pens.Outer, Thinning.Open(line, Thin), false);
        }

        foreach (
            PlankMark mark in plank.Marks.Where(m => Segments.Inside(piece.Cut, m.At + m.Inward))
        )
        {
            yield return new Polyline(
                Layers.Marks,
                Pens.Tick,
                [mark.At, mark.At + (TickMm * mark.Inward)],
                false
            );
        }

        foreach (PlankJoint joint in new[] { piece.Inboard, piece.Outboard }.OfType<PlankJoint>())
        {
            if (joint.Kind == JointKind.Scarf)
            {
                foreach (Shape line in JointMarks.Lines(joint, new Vec2(0, 0)))
                {
                    yield return line;
                }
            }
        }

        foreach (Shape hole in FasteningMarks.Holes(plan, plank, new Vec2(0, 0)))
        {
            if (hole is CircleShape circle && Segments.Inside(piece.Net, circle.Centre))
            {
                yield return hole;
            }
        }

        Vec2 middle = Interior.DeepestPoint(piece.Net, out double room);
        double height = Math.Clamp(room / 4, 1.5, NameMm);
        yield return Text(piece.Id.ToString(), middle + new Vec2(0, 0.4 * height), height, true);
        yield return Text(
            $"outer face up, rev {plan.Job.Revision}",
            middle - new Vec2(0, 0.8 * height),
            height / 2,
            false
        );
        if (Tapers(piece) is { Length: > 0 } tapers)
        {
            yield return Text(tapers, middle - new Vec2(0, 1.8 * height), height / 2, false);
        }
    }

    /// <summary>scarf outboard: taper the inner face between the two lines.</summary>
    private static string Tapers(PlankPiece piece) =>
        string.Join(
            "; ",
            new[] { (piece.Inboard, Outboard: false), (piece.Outboard, Outboard: true) }
                .Where(j => j.Item1?.Kind == JointKind.Scarf)
                .Select(j =>
                    $"scarf {(j.Outboard ? "outboard" : "inboard")}: taper the {j.Item1!.TaperedFace(j.Outboard)} face between its lines"
                )
        );

    private static Lettering Text(string text, Vec2 at, double height, bool bold) =>
        new(Layers.Text, Pen.Thin, at, text, height, Anchor.BaselineCentre, 0, bold);

    /// <summary>Whether a place at one of the plank's own ends belongs to a piece.</summary>
    private static bool Holds(PlankPiece piece, Vec2 p) =>
        p.X >= (piece.Inboard is null ? double.NegativeInfinity : piece.Net.Min(v => v.X))
        && p.X <= (piece.Outboard is null ? double.PositiveInfinity : piece.Net.Max(v => v.X));
}
