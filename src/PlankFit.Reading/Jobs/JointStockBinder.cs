using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Jobs;

/// <summary>A draft of a stock made whole with the usual figures, and held against what can be pieced at all.</summary>
internal static class JointStockBinder
{
    /// <summary>Bevel of a glued scarf: Gougeon Brothers on Boat Construction, ch. 12.</summary>
    private const double UsualRatio = 8;
    private const double LeastRatio = 4;
    private const double MostRatio = 40;

    // Proposals, no source: bearing of each piece at a butt, steps, and the shortest piece as a part of the longest.
    private const double UsualBearingMm = 15;
    private const double UsualGridMm = 50;
    private const double UsualShortest = 0.25;

    private const double LeastGridMm = 5;

    public static readonly string RatioAccepted =
        $"accepted: {NumberText.Trimmed(LeastRatio, 0)} to {NumberText.Trimmed(MostRatio, 0)}, the length of a scarf over the thickness";

    /// <param name="table">Where the draft was read, for messages.</param>
    /// <returns>Null where no longest piece is known, or where anything is wrong.</returns>
    public static JointStock? Of(StockDraft draft, TableReader table)
    {
        bool sound = Sound(draft, table);
        if (draft.LongestMm is not { } longest)
        {
            return null;
        }

        if (draft.Kind is null && table.Find("kind") is null)
        {
            table.Missing("kind", "accepted: \"butt\" or \"scarf\"");
            return null;
        }

        double shortest = draft.ShortestMm ?? UsualShortest * longest;
        if (longest > 0 && !(shortest > 0 && shortest <= longest / 2))
        {
            table.Wrong(
                table.Find("shortest") is null ? "longest" : "shortest",
                "the shortest piece must be greater than 0 and at most half the longest: a plank a little longer than one piece is made of two"
            );
            return null;
        }

        return sound && draft.Kind is { } kind
            ? new(
                longest,
                shortest,
                kind,
                draft.Ratio ?? UsualRatio,
                draft.Cut ?? ButtCut.Square,
                draft.On
                    ?? (
                        draft.BlockMm is null
                            ? JointStock.Carrying
                            : [.. JointStock.Carrying, JointStock.Block]
                    ),
                draft.BlockMm,
                draft.BearingMm ?? UsualBearingMm,
                draft.GridMm ?? UsualGridMm,
                draft.StockLengthsMm
            )
            : null;
    }

    private static bool Sound(StockDraft draft, TableReader table)
    {
        bool sound = true;
        Check(!(draft.LongestMm <= 0), "longest", "must be greater than 0");
        Check(
            draft.StockLengthsMm.IsEmpty || !(draft.LongestMm > draft.StockLengthsMm[^1] + 1e-6),
            "longest",
            "is longer than any of stock-lengths"
        );
        Check(draft.Ratio is null or >= LeastRatio and <= MostRatio, "ratio", RatioAccepted);
        Check(!(draft.BlockMm <= 0), "block", "must be greater than 0: its length along the plank");
        Check(!(draft.BearingMm < 0), "bearing", "must not be negative");
        Check(
            !(draft.GridMm < LeastGridMm),
            "grid",
            $"must be at least {NumberText.Trimmed(LeastGridMm, 0)} mm"
        );
        Check(
            draft.On?.Contains(JointStock.Block) != true || draft.BlockMm is not null,
            "on",
            "names \"block\", and no block = length along the plank is given"
        );
        if (sound && draft.Ratio < UsualRatio)
        {
            table.Doubtful(
                "ratio",
                "shorter than the 8:1 of Gougeon Brothers on Boat Construction, ch. 12"
            );
        }

        return sound;

        void Check(bool holds, string key, string what)
        {
            if (!holds)
            {
                table.Wrong(key, what);
                sound = false;
            }
        }
    }
}
