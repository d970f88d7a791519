using PlankFit.Planking.Joints;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Joints;

/// <summary>A draft of a stock made whole with the usual figures, and held against what can be pieced at all.</summary>
internal static class JointStockBinder
{
    /// <param name="table">Where the draft was read, for messages.</param>
    /// <returns>Null where no longest piece is known, or where anything is wrong.</returns>
    public static JointStock? Of(StockDraft draft, TableReader table)
    {
        bool sound = Sound(draft, table);
        if (draft.LongestMm is not { } longest)
        {
            return null;
        }

        if (draft.Kind is null && !table.Has(JointKeys.Kind))
        {
            table.Missing(JointKeys.Kind, JointKeys.Kind.Accepted);
            return null;
        }

        double shortest = draft.ShortestMm ?? JointKeys.UsualShortest * longest;
        if (longest > 0 && !(shortest > 0 && shortest <= longest / 2))
        {
            table.Wrong(
                table.Has(JointKeys.Shortest) ? JointKeys.Shortest : JointKeys.Longest,
                "the shortest piece must be greater than 0 and at most half the longest: a plank a little longer than one piece is made of two"
            );
            return null;
        }

        return sound && draft.Kind is { } kind
            ? new(
                longest,
                shortest,
                kind,
                draft.Ratio ?? JointKeys.Ratio.DefaultValue!.Value,
                new(
                    draft.Butt.Cut ?? JointKeys.Cut.DefaultChoice!.Value,
                    draft.Butt.On
                        ?? (
                            draft.Butt.BlockMm is null
                                ? JointStock.Carrying
                                : [.. JointStock.Carrying, JointStock.Block]
                        ),
                    draft.Butt.BlockMm,
                    draft.Butt.BearingMm ?? JointKeys.Bearing.DefaultMm!.Value
                ),
                draft.GridMm ?? JointKeys.Grid.DefaultMm!.Value,
                draft.StockLengthsMm
            )
            : null;
    }

    private static bool Sound(StockDraft draft, TableReader table)
    {
        bool sound = true;
        Check(
            draft.StockLengthsMm.IsEmpty || !(draft.LongestMm > draft.StockLengthsMm[^1] + 1e-6),
            JointKeys.Longest,
            "is longer than any of stock-lengths"
        );
        Check(
            draft.Butt.On?.Contains(JointStock.Block) != true || draft.Butt.BlockMm is not null,
            JointKeys.On,
            "names \"block\", and no block = length along the plank is given"
        );
        if (
            draft.Ratio is { } r
            && JointKeys.Ratio.Limits.Hold(r)
            && r < JointKeys.Ratio.DefaultValue
        )
        {
            table.Doubtful(
                JointKeys.Ratio,
                "shorter than the 8:1 of Gougeon Brothers on Boat Construction, ch. 12"
            );
        }

        return sound;

        void Check(bool holds, JobKey key, string what)
        {
            if (!holds)
            {
                table.Wrong(key, what);
                sound = false;
            }
        }
    }
}
