using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>What the saw makes of a board that can no longer be kept.</summary>
internal static class KerfBox
{
    /// <summary>
    /// What a cut goes through, in the frame of the board: lanes are ripped to where they end, and ends carried across their whole lane. Of a rip, its
    /// kerf; of a cut across, as far along the grain as its kerf goes when it leans; of one along a piece, a box a kerf wider all round. What is sawn in a lane
    /// comes neither into ends that were sawn off before nor beyond the lane, which lies by itself by then.
    /// </summary>
    public static BoardBox Of(BoardCutList list, SawCut cut)
    {
        double kerf = Math.Abs(cut.KerfMm),
            along = kerf / Math.Cos(cut.DegreesFromSquare * Math.PI / 180);
        BoardBox box = cut.Kind switch
        {
            CutKind.Rip => BoardBox.Around([cut.From, cut.To + new Vec2(0, cut.KerfMm)]),
            CutKind.EndOff => BoardBox.Around([cut.From, cut.To + new Vec2(cut.KerfMm, 0)]),
            CutKind.Edge => BoardBox.Around(cut.Line).Grown(kerf),
            _ => BoardBox.Around(cut.Line).Grown(Math.Max(kerf, along)),
        };
        if (cut.Lane is { } lane)
        {
            double begins = list.LaneBeginsMm[lane],
                ends = list.LaneEndsMm[lane];
            box = new(
                Math.Clamp(box.X0, begins, ends),
                Math.Clamp(box.X1, begins, ends),
                Math.Max(box.Y0, list.Lanes[lane].LowMm),
                Math.Min(box.Y1, list.Lanes[lane].HighMm)
            );
        }

        return box;
    }
}
