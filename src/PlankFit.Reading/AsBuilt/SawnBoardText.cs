using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Reading.AsBuilt;

/// <summary>A board sawn into, as the record of sawn planks has it.</summary>
internal sealed record SawnBoardText(string Board, string[] Planks, OffcutLeft[] Offcuts)
{
    /// <summary>No board is so long, mm: our own bound of what is plausible, wide, no source.</summary>
    private const double FarMm = 1e5;

    public static SawnBoardText Of(BoardSawnInto board) =>
        new(board.Board, [.. board.Planks.Select(p => p.ToString())], [.. board.Offcuts]);

    public BoardSawnInto ToBoard() =>
        Offcuts.All(o =>
            o.LengthMm is > 0 and < FarMm
            && o.WidthMm is > 0 and < FarMm
            && o.ThicknessMm is > 0 and < FarMm
        )
            ? new(
                Board,
                [.. Planks.Select(p => PlankId.Parse(p) ?? throw new FormatException())],
                [.. Offcuts]
            )
            : throw new FormatException();
}
