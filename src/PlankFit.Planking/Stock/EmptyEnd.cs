using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>
/// The ends of a board that lanes side by side leave empty. Sawn off square across them before they are ripped each is one piece, and no rip runs through it; what
/// parts such lanes from others, or from what lies empty beside them, is ripped before that.
/// </summary>
internal static class EmptyEnd
{
    /// <summary>Offcuts that differ by no more are as large: a hair over a board's width.</summary>
    private const double EqualMm2 = 1;

    /// <summary>Of the ways to part the board the one that leaves the largest single offcut, then the largest second one, and so on.</summary>
    /// <param name="plain">All rips over the whole length.</param>
    /// <param name="sawn">The whole list from the cuts that part the lanes, and where these leave the end of each.</param>
    public static BoardCutList Best(
        SawnBoard board,
        NestSpec spec,
        ImmutableArray<SawnLane> lanes,
        ImmutableArray<SawCut> rips,
        BoardCutList plain,
        Func<ImmutableArray<SawCut>, ImmutableArray<double>, BoardCutList> sawn
    )
    {
        if (rips.All(r => r.IsPlaned))
        {
            return plain;
        }

        var ways = new EndsOff(board, spec, lanes, rips);
        if (ways.Best is not { } best)
        {
            return plain;
        }

        // Faults, and what lies between pieces, are for the offcuts to say.
        BoardCutList ended = sawn(ways.Cuts(best), ways.LaneEnds(best));
        return EndsOff.IsLarger(Left(spec, plain), Left(spec, ended), EqualMm2) ? plain : ended;
    }

    /// <summary>The areas of what is kept, the largest first.</summary>
    private static double[] Left(NestSpec spec, BoardCutList list) =>
        [.. Offcuts.Of(spec, list).Select(o => o.AreaMm2).OrderDescending()];
}
