using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>The joints of a plank in true size: where each shows on the outer and on the inner face, and the name of every piece but the longest, which the pattern letters itself.</summary>
internal static class JointMarks
{
    private const double MostNameMm = 8;
    private const double LeastNameMm = 2.5;
    private const double ClearMm = 8;

    /// <summary>The piece that carries the plank's lettering; null where the plank is of one piece.</summary>
    public static PlankPiece? Longest(BottomPlan plan, Plank plank) =>
        plan.Joints.On(plank.Id)?.Pieces.MaxBy(p => p.LengthMm);

    /// <param name="shift">Added to the plank's own (s, n).</param>
    public static IEnumerable<Shape> Of(BottomPlan plan, Plank plank, Vec2 shift)
    {
        if (plan.Joints.On(plank.Id) is not { } pieced)
        {
            yield break;
        }

        foreach (PlankJoint joint in pieced.Joints)
        {
            foreach (Shape line in Lines(joint, shift))
            {
                yield return line;
            }
        }

        PlankPiece longest = Longest(plan, plank)!;
        foreach (PlankPiece piece in pieced.Pieces.Where(p => p != longest))
        {
            Vec2 middle = Interior.DeepestPoint(piece.Net, out double room);
            yield return new Lettering(
                Layers.Text,
                Pen.Thin,
                middle + shift,
                piece.Id.ToString(),
                Math.Clamp(room / 4, LeastNameMm, MostNameMm),
                Anchor.MiddleCentre,
                0,
                true
            );
        }
    }

    /// <summary>A place for a few letters, moved along the plank where a joint would run through them.</summary>
    public static Vec2 Clear(BottomPlan plan, Plank plank, Vec2 at)
    {
        bool IsClear(Vec2 p) =>
            plan.Joints.On(plank.Id) is not { } pieced
            || pieced
                .Joints.SelectMany(j => new[] { j.OuterLine, j.InnerLine })
                .All(l => Math.Abs((l[1] - l[0]).Unit().Cross(p - l[0])) > ClearMm);
        return new[] { 0, 1, -1, 2, -2 }
            .Select(k => at + new Vec2(k * ClearMm, 0))
            .FirstOrDefault(IsClear, at);
    }

    /// <summary>A joint's line on the outer face, and where it differs that on the inner face, in dashes.</summary>
    public static IEnumerable<Shape> Lines(PlankJoint joint, Vec2 shift)
    {
        ImmutableArray<Vec2> Moved(ImmutableArray<Vec2> line) => [.. line.Select(p => p + shift)];
        yield return new Polyline(Layers.Joints, Pens.Cut, Moved(joint.OuterLine), false);
        if (joint.Kind == JointKind.Scarf)
        {
            yield return new Polyline(Layers.Joints, Pens.Inner, Moved(joint.InnerLine), false);
        }
    }
}
