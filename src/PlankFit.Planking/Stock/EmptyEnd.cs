using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The end of a board that all its lanes leave empty. Sawn off square across them before they are ripped it is one piece, and no rip runs through it; or it
/// is sawn off when what lies empty beside the lanes has been ripped off over the whole length.
/// </summary>
internal static class EmptyEnd
{
    /// <summary>Offcuts that differ by no more are as large: a hair over a board's width.</summary>
    private const double EqualMm2 = 1;

    /// <summary>Of the ways to begin the one that leaves the largest single offcut, then the largest second one, and so on; of equal ones that without rips through empty board.</summary>
    /// <param name="sawn">The whole list from the cuts that it begins with, and where these end the lanes.</param>
    public static BoardCutList Best(
        SawnBoard board,
        NestSpec spec,
        Func<ImmutableArray<SawCut>, double?, BoardCutList> sawn
    )
    {
        BoardCutList plain = sawn([], null);
        BoardFrame frame = plain.Frame;
        SawCut[] rips = [.. plain.Cuts.Where(c => c.Kind == CutKind.Rip)];
        if (rips.All(r => r.IsPlaned))
        {
            return plain;
        }

        // Faults or none, an end worth keeping is one that is long enough; what of it is kept is for the offcuts to say.
        double at = board.Pieces.SelectMany(p => frame.Of(p)).Max(p => p.X),
            usable = frame.LengthMm - (board.Stock.GrainAcross ? 0 : board.Stock.OtherEndMm);
        if (usable - at - spec.KerfMm < spec.LeastOffcutMm)
        {
            return plain;
        }

        BoardCutList best = sawn([Across(board, spec, frame, at, frame.WidthMm)], at);
        double edge = plain.Lanes.Max(l => l.HighMm);
        if (rips.FirstOrDefault(r => r.From.Y == edge && !r.IsPlaned) is { } beside)
        {
            best = Better(spec, best, sawn([beside, Across(board, spec, frame, at, edge)], at));
        }

        return Better(spec, best, plain);
    }

    /// <summary>The first, unless the other leaves a larger offcut, or as large a one and a larger second, and so on.</summary>
    private static BoardCutList Better(NestSpec spec, BoardCutList one, BoardCutList other)
    {
        double[] left = Left(spec, one),
            otherLeft = Left(spec, other);
        for (int i = 0; i < Math.Max(left.Length, otherLeft.Length); i++)
        {
            double more = otherLeft.ElementAtOrDefault(i) - left.ElementAtOrDefault(i);
            if (Math.Abs(more) > EqualMm2)
            {
                return more > 0 ? other : one;
            }
        }

        return one;
    }

    /// <summary>The areas of what is kept, the largest first.</summary>
    private static double[] Left(NestSpec spec, BoardCutList list) =>
        [.. Offcuts.Of(spec, list).Select(o => o.AreaMm2).OrderDescending()];

    /// <param name="toMm">From the board's lower edge to so far up.</param>
    private static SawCut Across(
        SawnBoard board,
        NestSpec spec,
        BoardFrame frame,
        double at,
        double toMm
    )
    {
        Vec2 from = new(at, 0),
            to = new(at, toMm);
        return new(0, CutKind.EndOff, null, null, null, from, to, false, 0, spec.KerfMm, [from, to])
        {
            Ends =
            [
                .. board
                    .Pieces.Where(p => EndsAt(LanePiece.Of(p, frame, spec.Saw), at, spec.Saw))
                    .Select(p => p.Piece.Id),
            ],
        };
    }

    private static bool EndsAt(LanePiece piece, double at, SawTolerances tolerances) =>
        piece.Sides.Any(s =>
            s.Kind == SideKind.Far && s.Points.All(p => Math.Abs(p.X - at) <= tolerances.StraightMm)
        );
}
