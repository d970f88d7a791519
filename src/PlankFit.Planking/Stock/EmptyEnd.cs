using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>
/// The ends of a board that lanes side by side leave empty, near ones before a fault and far ones. Sawn off square across them before they are ripped each is one
/// piece, and no rip runs through it; what parts such lanes from others, or from what lies empty beside them, is ripped before that.
/// </summary>
internal static class EmptyEnd
{
    /// <summary>Of the ways to part the board the one that leaves the largest single offcut, then the largest second one, and so on.</summary>
    /// <param name="plain">All rips over the whole length.</param>
    /// <param name="sawn">The whole list from the cuts that part the lanes, and how far these leave each of them reaching.</param>
    public static BoardCutList Best(
        NestSpec spec,
        BoardCutList plain,
        Func<ImmutableArray<SawCut>, ImmutableArray<LaneSpan>, BoardCutList> sawn
    )
    {
        if (plain.Cuts.All(r => r.Kind != CutKind.Rip || r.IsPlaned))
        {
            return plain;
        }

        var ways = new EndsOff(spec, plain);
        if (ways.Best is not { } best)
        {
            return plain;
        }

        // What is sawn in a lane may come in another order when it is shorter.
        BoardCutList ended = sawn(ways.Cuts(best), ways.Lanes(best));
        return EndsOff.IsLarger(Left(spec, plain), Left(spec, ended)) ? plain : ended;
    }

    /// <summary>The areas of what is kept, the largest first.</summary>
    private static double[] Left(NestSpec spec, BoardCutList list) =>
        [.. Offcuts.Of(spec, list).Select(o => o.AreaMm2).OrderDescending()];
}
