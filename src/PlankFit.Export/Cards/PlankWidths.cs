using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Cards;

/// <summary>The net width of a plank at one place, square to its own line.</summary>
/// <param name="AtMm">s of the place.</param>
/// <param name="LowMm">n of the lower edge there.</param>
public readonly record struct WidthAt(double AtMm, double LowMm, double WidthMm)
{
    /// <summary>
    /// The widths a rule can check: where both seams are there, at the inboard and the outboard end of that stretch and halfway between. A piece with one
    /// seam or none has no such stretch, and gets its greatest width alone.
    /// </summary>
    public static ImmutableArray<WidthAt> Of(Plank plank)
    {
        if (plank.ForwardEdge.Exists && plank.AfterEdge.Exists)
        {
            ImmutableArray<Vec2> forward = plank.ForwardEdge.Flat,
                after = plank.AfterEdge.Flat;
            double from = Math.Max(forward[0].X, after[0].X),
                to = Math.Min(forward[^1].X, after[^1].X);
            if (to > from)
            {
                return
                [
                    .. new[] { from, (from + to) / 2, to }
                        .Select(s => Between(forward, after, s))
                        .OfType<WidthAt>(),
                ];
            }
        }

        var box = Box.Around(plank.FlatNet);
        return [new(box.Middle.X, box.Bottom, box.Height)];
    }

    private static WidthAt? Between(ImmutableArray<Vec2> one, ImmutableArray<Vec2> other, double s)
    {
        double? a = Segments.YAt(one, s),
            b = Segments.YAt(other, s);
        return a is { } y && b is { } z ? new(s, Math.Min(y, z), Math.Abs(y - z)) : null;
    }
}
