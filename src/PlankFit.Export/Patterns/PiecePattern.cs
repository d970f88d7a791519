using System.Collections.Immutable;
using PlankFit.Export.Joints;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Patterns;

/// <summary>
/// One piece of a plank in true size for a cutting machine, outer face up, in the whole plank's own coordinates, so that the pieces of a plank lie in their
/// files as they lie on the boat. Layers as in <see cref="CuttingPattern"/>; a scarf's two lines, between which it is tapered, are on the layer of the joints.
/// </summary>
public static class PiecePattern
{
    private const double NameMm = 8;
    private const double TickMm = 12;

    public static Drawing Of(PlanShown shown, Plank plank, PlankPiece piece)
    {
        var box = Box.Around(piece.Cut);
        return new(
            $"{shown.Plan.Job.Name} {piece.Id}",
            box.Width,
            box.Height,
            [.. Shapes(shown, plank, piece)]
        );
    }

    private static IEnumerable<Shape> Shapes(PlanShown shown, Plank plank, PlankPiece piece)
    {
        yield return new Polyline(Layers.Cut, Pens.Cut, piece.Cut, true);
        yield return new Polyline(Layers.Net, Pens.Net, piece.Net, true);
        foreach (
            ImmutableArray<Vec2> line in plank
                .Ends.Where(e => e.BevelDegrees != 0)
                .SelectMany(e => new[] { e.OuterLine, e.InnerLine })
                .Where(l => l.Length > 1 && Holds(piece, l[l.Length / 2]))
        )
        {
            yield return new Polyline(Layers.Marks, Pens.Outer, line, false);
        }

        foreach (
            PlankMark mark in plank.Marks.Where(m => FlatPolygon.Holds(piece.Cut, m.At + m.Inward))
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

        foreach (
            CircleShape hole in shown
                .Added.SelectMany(a => a.Holes(plank, new Vec2(0, 0)))
                .Where(h => FlatPolygon.Holds(piece.Net, h.Centre))
        )
        {
            yield return hole;
        }

        Vec2 middle = Interior.DeepestPoint(piece.Net, out double room);
        double height = Math.Clamp(room / 4, 1.5, NameMm);
        yield return Text(piece.Id.ToString(), middle + new Vec2(0, 0.4 * height), height, true);
        yield return Text(
            plank.IsRefused ? RefusedBend.Mark : $"outer face up, rev {shown.Plan.Job.Revision}",
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
