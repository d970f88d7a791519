using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Building;

/// <summary>
/// The shape to saw: the board between the plank's two edges, carried straight on past its net ends, cut off at each end. An end left long is cut parallel to the
/// net end's chord; an end that is fit is cut on the outermost of its lines on the two faces, or parallel to its chord where there is an allowance.
/// </summary>
internal static class SawnOutline
{
    /// <summary>Points of a sawn outline are this far apart at least, mm: five times what its numbers are rounded to.</summary>
    public const double TidyMm = 5e-4;

    /// <param name="ahead">The forward edge laid flat, inboard to outboard; null where the stock's own edge serves. <paramref name="behind"/> likewise.</param>
    /// <param name="halfWidthMm">Half the stock's width: nothing is sawn from beyond its edges.</param>
    /// <param name="low">Least and greatest n of the net shape, mm.</param>
    public static List<Vec2> Build(
        Vec2[]? ahead,
        Vec2[]? behind,
        IEnumerable<(EndPiece End, double AllowanceMm)> ends,
        double halfWidthMm,
        double low,
        double high
    )
    {
        (EndPiece End, double AllowanceMm)[] all = [.. ends];
        double reach =
            (6 * halfWidthMm)
            + (4 * all.Select(e => e.End.Rule.ByMm + e.AllowanceMm).DefaultIfEmpty(0).Max());
        double from = all.SelectMany(e => e.End.Net).Min(p => p.X) - reach,
            to = all.SelectMany(e => e.End.Net).Max(p => p.X) + reach;
        (double bottom, double top) = StockRoom.Band(low, high, 2 * halfWidthMm);
        List<Vec2> shape = Board(
            ahead ?? [new(from, bottom), new(to, bottom)],
            behind ?? [new(from, top), new(to, top)],
            reach
        );
        foreach ((EndPiece end, double allowance) in all)
        {
            shape = LineClip.Cut(shape, CutLine(end, allowance), end.Outward);
        }

        shape = LineClip.Cut(shape, [new(from, bottom), new(to, bottom)], new(0, -1));
        return TidyOutline.Of(
            LineClip.Cut(shape, [new(from, top), new(to, top)], new(0, 1)),
            TidyMm
        );
    }

    /// <summary>Both edges carried on; where they would meet, they end in that point.</summary>
    private static List<Vec2> Board(Vec2[] ahead, Vec2[] behind, double reach)
    {
        (Vec2 a0, Vec2 b0) = Beyond(ahead[0], ahead[1], behind[0], behind[1], reach);
        (Vec2 a1, Vec2 b1) = Beyond(ahead[^1], ahead[^2], behind[^1], behind[^2], reach);
        return [a0, .. ahead, a1, b1, .. behind.Reverse(), b0];
    }

    private static (Vec2 Ahead, Vec2 Behind) Beyond(
        Vec2 a,
        Vec2 aFrom,
        Vec2 b,
        Vec2 bFrom,
        double reach
    )
    {
        Vec2 p = (a - aFrom).Unit(),
            q = (b - bFrom).Unit();
        double det = p.Cross(q);
        if (Math.Abs(det) > 1e-9)
        {
            double along = (b - a).Cross(q) / det,
                alongB = (b - a).Cross(p) / det;
            if (along > 0 && alongB > 0 && Math.Min(along, alongB) < reach)
            {
                Vec2 tip = a + (along * p);
                return (tip, tip);
            }
        }

        return (a + (reach * p), b + (reach * q));
    }

    private static IReadOnlyList<Vec2> CutLine(EndPiece end, double allowanceMm)
    {
        Vec2 a = end.Net[0],
            b = end.Net[^1],
            outward = end.Outward;
        double Out(Vec2 p) => outward.Dot(p - a);
        double net = end.Net.Max(Out),
            faces = Math.Max(end.Outer.Max(Out), end.Inner.Max(Out));
        double? offset =
            end.Rule.Cut == EndCut.LeftLong ? Math.Max(net + end.Rule.ByMm, faces)
            : allowanceMm > 0 ? Math.Max(net, faces) + allowanceMm
            : null;
        if (offset is { } o)
        {
            return [a + (o * outward), b + (o * outward)];
        }

        IReadOnlyList<Vec2>[] lines = [end.Net, end.Outer, end.Inner];
        return LineClip.Outermost(lines, outward);
    }
}
