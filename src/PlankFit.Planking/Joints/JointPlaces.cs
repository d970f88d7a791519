using System.Collections.Immutable;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>Every place where a plank may be jointed by itself, whatever its neighbours: on what backs it, clear of what is kept open, by steps.</summary>
internal static class JointPlaces
{
    /// <param name="lengthMm">Of a scarf's overlap; 0 for a butt.</param>
    /// <param name="below">The name of the layer below; null for the first.</param>
    public static ImmutableArray<JointPlace> Of(
        JointedShape shape,
        JointStock stock,
        double lengthMm,
        ImmutableArray<FramingCrossing> behind,
        string? below
    )
    {
        IEnumerable<JointPlace> places =
            stock.Kind == JointKind.Scarf
                ? Free(shape, stock, lengthMm, null)
                : OnBacking(shape, stock, behind, below);
        FramingCrossing[] open = [.. behind.Where(b => b.Of.Kind == FramingKind.Open)];
        return
        [
            .. places
                .Where(p => open.All(o => !Covers(o, p, lengthMm)))
                .OrderBy(p => p.AtMm)
                .Select(p => OnHull(p, shape.Plank)),
        ];
    }

    /// <summary>Whether a thing behind is one that the stock's butts may lie on.</summary>
    public static bool Carries(JointStock stock, FramingSpec behind) =>
        behind.Kind != FramingKind.Open
        && (
            stock.On.Contains(Word(behind.Kind), StringComparer.Ordinal)
            || stock.On.Contains(behind.Name, StringComparer.Ordinal)
        );

    private static string Word(FramingKind kind) =>
        kind switch
        {
            FramingKind.Stringer => "stringer",
            FramingKind.Frame => "frame",
            FramingKind.Floor => "floor",
            FramingKind.Solid => "solid",
            _ => "open",
        };

    private static IEnumerable<JointPlace> OnBacking(
        JointedShape shape,
        JointStock stock,
        ImmutableArray<FramingCrossing> behind,
        string? below
    )
    {
        IEnumerable<JointPlace> places = behind
            .Where(b => Carries(stock, b.Of))
            .SelectMany(b => BackedPlaces.On(shape, stock, b));
        if (below is not null && stock.On.Contains(JointStock.LayerBelow))
        {
            places = places.Concat(Free(shape, stock, 0, $"layer {below}"));
        }

        if (stock.BlockMm is { } block && stock.On.Contains(JointStock.Block) && below is null)
        {
            // A block as wide as its plank: what lies behind must leave its whole length free.
            (double From, double To)[] taken =
            [
                .. behind
                    .Where(b => !b.Cover.IsDefaultOrEmpty)
                    .Select(b => (b.Cover.Min(p => p.X), b.Cover.Max(p => p.X))),
            ];
            places = places.Concat(
                Free(shape, stock, 0, JointStock.Block)
                    .Where(p =>
                        taken.All(t =>
                            p.AtMm + (block / 2) <= t.From || p.AtMm - (block / 2) >= t.To
                        )
                    )
            );
        }

        return places;
    }

    /// <summary>Square joints by steps of the grid, such that the piece inboard comes out in whole steps, and those that use the longest piece to the full from either end.</summary>
    private static IEnumerable<JointPlace> Free(
        JointedShape shape,
        JointStock stock,
        double lengthMm,
        string? backing
    )
    {
        double half = lengthMm / 2;
        List<double> at = [];
        int steps = (int)((shape.To - shape.From) / stock.GridMm);
        for (int k = 1; k <= steps; k++)
        {
            at.Add(shape.From + (k * stock.GridMm) - half);
        }

        foreach (
            double full in new[]
            {
                shape.From + stock.LongestMm - half,
                shape.To - stock.LongestMm + half,
            }
        )
        {
            if (at.TrueForAll(a => Math.Abs(a - full) > 0.5))
            {
                at.Add(full);
            }
        }

        foreach (double a in at)
        {
            if (Square(shape, a, lengthMm, backing, false) is { } place)
            {
                yield return place;
            }
        }
    }

    /// <summary>A joint square to the plank's own line; null where it, or an end of its overlap, does not run from edge to edge.</summary>
    public static JointPlace? Square(
        JointedShape shape,
        double at,
        double lengthMm,
        string? backing,
        bool named
    )
    {
        double half = lengthMm / 2;
        return
            shape.Across(at, 90) is { } line
            && (
                half == 0
                || (
                    shape.Across(at - half, 90) is not null
                    && shape.Across(at + half, 90) is not null
                )
            )
            ? new(at, 90, at + half, at - half, backing, named) { Line = line }
            : null;
    }

    /// <summary>Whether a joint lies over a place kept open: its line, or the middle line of either end of its overlap, comes into it.</summary>
    private static bool Covers(FramingCrossing open, JointPlace place, double lengthMm)
    {
        if (open.Cover.IsDefaultOrEmpty)
        {
            return false;
        }

        double from = place.Line.Min(p => p.X) - (lengthMm / 2),
            to = place.Line.Max(p => p.X) + (lengthMm / 2);
        return open.Cover.Max(p => p.X) > from && open.Cover.Min(p => p.X) < to;
    }

    private static JointPlace OnHull(JointPlace place, Plank plank) =>
        place with
        {
            XMm = plank.Map.Under(new(place.AtMm, 0)).P.X,
        };
}
