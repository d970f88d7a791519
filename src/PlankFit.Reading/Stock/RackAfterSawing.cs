using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Stock;

namespace PlankFit.Reading.Stock;

/// <summary>The rack as it is after the planks on the record were sawn: without the boards that they came from, with their offcuts. The user's own file stays as it is.</summary>
internal static class RackAfterSawing
{
    private const int MostNamed = 6;

    public static (NestSpec Spec, ImmutableArray<Finding> Findings) Of(
        NestSpec spec,
        ImmutableArray<BoardSawnInto> sawn,
        string record
    )
    {
        List<StockBoard> rack = [.. spec.Boards];
        List<string> off = [],
            left = [];
        foreach (BoardSawnInto board in sawn)
        {
            if (Taken(rack, board.Board))
            {
                off.Add(board.Board);
            }

            foreach (OffcutLeft offcut in board.Offcuts.Where(o => rack.All(b => b.Id != o.Id)))
            {
                left.Add(offcut.Id);
                rack.Add(Stock(offcut, record));
            }
        }

        return off.Count + left.Count == 0
            ? (spec, [])
            : (
                spec with
                {
                    Boards = [.. rack],
                },
                [
                    new(
                        Severity.Note,
                        "the rack",
                        $"by {record}, which says what planks were sawn out of: {Named(off)} left it, and {Named(left)} came in as offcuts; the files of the stock are as they were"
                    ),
                ]
            );
    }

    /// <summary>Takes one board of the row off; false where the rack has it no more.</summary>
    private static bool Taken(List<StockBoard> rack, string id)
    {
        int at = rack.FindIndex(b =>
            b.OnHand && (b.Id == id || id.StartsWith(b.Id + ".", StringComparison.Ordinal))
        );
        if (at < 0)
        {
            return false;
        }

        if (rack[at].Count is > 1 and int count)
        {
            rack[at] = rack[at] with { Count = count - 1 };
        }
        else
        {
            rack.RemoveAt(at);
        }

        return true;
    }

    private static StockBoard Stock(OffcutLeft o, string record) =>
        new(
            o.Id,
            o.IsSheet ? StockKind.Sheet : StockKind.Board,
            new(o.LengthMm, o.WidthMm, o.ThicknessMm),
            new(o.Species, o.Grade),
            new(null, 1, true),
            new(0, 0, []),
            new(record, 1)
        )
        {
            GrainAcross = o.GrainAcross,
        };

    private static string Named(List<string> ids) =>
        ids.Count == 0 ? "none"
        : ids.Count <= MostNamed ? string.Join(", ", ids)
        : $"{string.Join(", ", ids.Take(MostNamed))} and {ids.Count - MostNamed} more";
}
