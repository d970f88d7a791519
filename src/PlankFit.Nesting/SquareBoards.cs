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

    /// <summary>What is short by more than this is passed over unasked, mm.</summary>
    private const double RoomMm = 2 * FitsMm;

    private readonly StripRegion region = StripRegion.Of(stock, spec);
    private readonly List<List<Lane>> boards = [];

    /// <summary>By board begun, the longest stretch that is still clear in its lanes, and where the next lane would begin: thousands of pieces ask, and most have no room.</summary>
    private readonly List<(double ClearMm, double NextV)> begun = [];

    public StockBoard Stock => stock;

    /// <summary>Lays a piece into the first board with room, a new one if need be.</summary>
    /// <param name="corner">Least x and y of the piece in its own coordinates.</param>
    public bool Take(SawPiece piece, Vec2 corner, double length, double width)
    {
        if (TakeBegun(piece, corner, length, width))
        {
            return true;
        }

        var lanes = new List<Lane>();
        if (!MayBegin(length) || !Into(lanes, piece, corner, length, width))
        {
            return false;
        }

        boards.Add(lanes);
        begun.Add(Left(lanes));
        return true;
    }

    /// <summary>Whether a board may have room for a piece: where not, none has.</summary>
    public bool MayTake(double length, double width)
    {
        if (MayBegin(length))
        {
            return true;
        }

        for (int b = 0; b < begun.Count; b++)
        {
            if (MayTake(begun[b], length, width))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The same without beginning a board.</summary>
    public bool TakeBegun(SawPiece piece, Vec2 corner, double length, double width)
    {
        for (int b = 0; b < begun.Count; b++)
        {
            if (MayTake(begun[b], length, width) && Into(boards[b], piece, corner, length, width))
            {
                begun[b] = Left(boards[b]);
                return true;
            }
        }

        return false;
    }

    private bool MayBegin(double length) =>
        boards.Count < (stock.Count ?? int.MaxValue) && length <= region.LengthMm + RoomMm;

    private bool MayTake((double ClearMm, double NextV) board, double length, double width) =>
        length <= board.ClearMm + RoomMm
        || (
            length <= region.LengthMm + RoomMm
            && board.NextV + width <= region.MostV + spec.ProudMm + RoomMm
        );

    private (double ClearMm, double NextV) Left(List<Lane> lanes) =>
        (lanes.Max(l => l.ClearMm), lanes[^1].LowV + lanes[^1].WidthMm + spec.KerfMm);

    public IEnumerable<SawnBoard> Sawn() =>
        boards.Select(
            (lanes, i) =>
                new SawnBoard(
                    stock.NameOf(i),
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

        /// <summary>The longest that it still takes.</summary>
        public double ClearMm =>
            stretches.Select((s, i) => s.ToU - from[i]).DefaultIfEmpty(0).Max();

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
