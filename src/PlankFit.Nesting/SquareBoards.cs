using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>The boards of one row of the stock while square crosscuts fill them, first to last.</summary>
internal sealed class SquareBoards(NestSpec spec, StockBoard stock)
{
    /// <summary>What a double loses in a sum, mm.</summary>
    private const double FitsMm = 1e-7;

    private readonly StripRegion region = StripRegion.Of(stock, spec);
    private readonly List<List<Lane>> boards = [];

    public StockBoard Stock => stock;

    /// <summary>Lays a piece into the first board with room, a new one if need be.</summary>
    /// <param name="corner">Least x and y of the piece in its own coordinates.</param>
    public bool Take(SawPiece piece, Vec2 corner, double length, double width)
    {
        if (TakeBegun(piece, corner, length, width))
        {
            return true;
        }

        if (boards.Count >= (stock.Count ?? int.MaxValue))
        {
            return false;
        }

        var lanes = new List<Lane>();
        if (!Into(lanes, piece, corner, length, width))
        {
            return false;
        }

        boards.Add(lanes);
        return true;
    }

    /// <summary>The same without beginning a board.</summary>
    public bool TakeBegun(SawPiece piece, Vec2 corner, double length, double width) =>
        boards.Any(lanes => Into(lanes, piece, corner, length, width));

    public IEnumerable<SawnBoard> Sawn() =>
        boards.Select(
            (lanes, i) =>
                new SawnBoard(
                    stock.Count == 1
                        ? stock.Id
                        : FormattableString.Invariant($"{stock.Id}.{i + 1}"),
                    stock,
                    [
                        .. lanes.Select(l => new SawnLane(
                            l.LowV,
                            l.LowV + l.WidthMm,
                            [.. l.Pieces.OrderBy(p => p.FromU).Select(p => p.Laid.Piece.Id)]
                        )),
                    ],
                    [
                        .. lanes.SelectMany(l =>
                            l.Pieces.OrderBy(p => p.FromU)
                                .Select(p => BoardLayout.InBoard(stock, p.Laid))
                        ),
                    ]
                )
        );

    private bool Into(List<Lane> lanes, SawPiece piece, Vec2 corner, double length, double width)
    {
        if (lanes.Any(l => width <= l.WidthMm + FitsMm && l.Take(piece, corner, length, spec)))
        {
            return true;
        }

        // A lane as wide as the piece, beside the last one or past the faults that do not leave it the length.
        double least =
            lanes.Count == 0 ? region.LeastV : lanes[^1].LowV + lanes[^1].WidthMm + spec.KerfMm;
        IEnumerable<double> lows = region
            .Faults.Select(f => f.HighV)
            .Where(v => v > least)
            .Order()
            .Prepend(least);
        foreach (double low in lows)
        {
            if (low + width > region.MostV + spec.ProudMm + FitsMm)
            {
                return false;
            }

            var lane = new Lane(low, width, region.Clear(low, low + width, spec.KerfMm));
            if (lane.Take(piece, corner, length, spec))
            {
                lanes.Add(lane);
                return true;
            }
        }

        return false;
    }

    private sealed class Lane(double lowV, double widthMm, ImmutableArray<ClearStretch> stretches)
    {
        private readonly double[] from = [.. stretches.Select(s => s.FromU)];

        public double LowV => lowV;

        public double WidthMm => widthMm;

        public List<(double FromU, LaidPiece Laid)> Pieces { get; } = [];

        public bool Take(SawPiece piece, Vec2 corner, double length, NestSpec spec)
        {
            for (int s = 0; s < from.Length; s++)
            {
                if (from[s] + length <= stretches[s].ToU + FitsMm)
                {
                    Vec2 shift = new Vec2(from[s], lowV) - corner;
                    Pieces.Add((from[s], new(piece, false, false, 0, shift)));
                    from[s] += length + spec.KerfMm;
                    return true;
                }
            }

            return false;
        }
    }
}
