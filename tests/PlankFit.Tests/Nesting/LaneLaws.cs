using NetTopologySuite.Geometries;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>A board can be ripped into its lanes, each lane crosscut into its pieces in the order told.</summary>
internal static class LaneLaws
{
    private const double Near = BoardLaws.NearMm;

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board)
    {
        // A board that is not ripped is one lane.
        if (board.Lanes.IsEmpty)
        {
            board = board with
            {
                Lanes =
                [
                    new(
                        double.NegativeInfinity,
                        double.PositiveInfinity,
                        [.. board.Pieces.Select(p => p.Piece.Id)]
                    ),
                ],
            };
        }

        PieceId[] told = [.. board.Lanes.SelectMany(l => l.PieceIds)];
        if (!told.SequenceEqual(board.Pieces.Select(p => p.Piece.Id)))
        {
            yield return $"{board.Id}: its lanes and its list of pieces do not have the same pieces in the same order";
            yield break;
        }

        if (board.Pieces.Any(p => p.Outline.Any(v => !v.IsFinite)))
        {
            yield break;
        }

        for (int l = 0; l < board.Lanes.Length; l++)
        {
            SawnLane lane = board.Lanes[l];
            if (lane.PieceIds.IsEmpty)
            {
                yield return $"{board.Id}: nothing lies in lane {l + 1}";
            }

            if (l > 0 && lane.LowMm - board.Lanes[l - 1].HighMm < spec.KerfMm - Near)
            {
                yield return $"{board.Id}: lanes {l} and {l + 1} are {lane.LowMm - board.Lanes[l - 1].HighMm} mm apart";
            }

            Span[] spans =
            [
                .. lane.PieceIds.Select(id =>
                    Along(board, board.Pieces.First(p => p.Piece.Id == id))
                ),
            ];
            foreach (Span s in spans)
            {
                if (s.Low < lane.LowMm - Near || s.High > lane.HighMm + Near)
                {
                    yield return $"{board.Id}: {s.Id} crosses the edge of lane {l + 1}";
                }
            }

            for (int i = 0; i < spans.Length; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    if (spans[i].Before(spans[j]))
                    {
                        yield return $"{board.Id}: {spans[j].Id} is told before {spans[i].Id}, and lies behind it";
                    }
                }
            }
        }
    }

    /// <summary>From and to along the grain, from the lane's beginning; low and high across, as lanes are measured.</summary>
    private static Span Along(SawnBoard board, LaidPiece laid)
    {
        Envelope e = BoardLaws.Shape(laid.Outline).EnvelopeInternal;
        return board.Stock.GrainAcross
            ? new(
                laid.Piece.Id,
                board.Stock.WidthMm - e.MaxY,
                board.Stock.WidthMm - e.MinY,
                e.MinX,
                e.MaxX
            )
            : new(laid.Piece.Id, e.MinX, e.MaxX, e.MinY, e.MaxY);
    }

    private readonly record struct Span(PieceId Id, double From, double To, double Low, double High)
    {
        /// <summary>Slanting ends reach past each other; pieces abreast are neither before nor behind.</summary>
        public bool Before(Span other) =>
            From < other.From
            && To < other.To
            && To - other.From < Math.Min(To - From, other.To - other.From) / 2;
    }
}
