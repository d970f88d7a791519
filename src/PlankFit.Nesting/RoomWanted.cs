using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Nesting;

/// <summary>What room is missing where a piece finds no board, though there are boards of its sort. Thousands of pieces may ask, of thousands of boards: what boards have is looked at once.</summary>
internal sealed class RoomWanted(NestSpec spec, StockGroup share, LengthUnit units)
{
    /// <summary>By sort, every region of a board once.</summary>
    private readonly ImmutableArray<ImmutableArray<StripRegion>> regions =
    [
        .. share.Sorts.Select(boards =>
            boards
                .Select(b => StripRegion.Of(b, spec))
                .DistinctBy(r => (r.LeastU, r.MostU, r.LeastV, r.MostV, string.Join(' ', r.Faults)))
                .ToImmutableArray()
        ),
    ];

    /// <summary>By what serves a piece and its width: the widest board, and the longest that is clear among those that are wide enough; none where none is.</summary>
    private readonly Dictionary<
        (string Serving, double WidthMm),
        (double Widest, double? Longest)
    > known = [];

    public string Of(SawPiece piece)
    {
        double length = Extent(piece, p => p.X),
            width = Extent(piece, p => p.Y);
        string size =
            $"{LengthText.ForPaper(Math.Ceiling(length), units)} long and {LengthText.ForPaper(width, units)} wide";
        (double widest, double? longest) = Known(share.Serving(spec, piece), width);
        return longest is not { } its
                ? $"no board of its sort is wide enough (the widest has {LengthText.ForPaper(widest, units)}): one clear for {size} would serve"
            : its < length
                ? $"no board of its sort is clear for its length (the longest has {LengthText.ForPaper(Math.Floor(its), units)}): one clear for {size} would serve, or a joint"
            : $"all boards that could give it are full: one more, clear for {size}, would serve";
    }

    private (double Widest, double? Longest) Known(ImmutableArray<int> serving, double width)
    {
        (string, double) key = (string.Join(' ', serving), width);
        if (!known.TryGetValue(key, out (double Widest, double? Longest) its))
        {
            StripRegion[] all = [.. serving.SelectMany(s => regions[s])];
            its = known[key] = (
                all.Max(r => r.WidthMm),
                all.Where(r => r.WidthMm + spec.ProudMm >= width - 1e-6)
                    .Select(r => (double?)Longest(r, width))
                    .Max()
            );
        }

        return its;
    }

    /// <summary>Of a lane along either edge.</summary>
    private double Longest(StripRegion region, double width) =>
        region
            .Clear(region.LeastV, region.LeastV + width, spec.KerfMm)
            .Concat(region.Clear(region.MostV - width, region.MostV, spec.KerfMm))
            .Select(s => s.LengthMm)
            .DefaultIfEmpty(0)
            .Max();

    private static double Extent(SawPiece piece, Func<Vec2, double> along) =>
        piece.Outline.Max(along) - piece.Outline.Min(along);
}
