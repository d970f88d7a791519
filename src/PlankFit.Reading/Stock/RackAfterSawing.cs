using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Stock;

namespace PlankFit.Reading.Stock;

/// <summary>The rack as it is after the planks on the record were sawn: without the boards that they came from, with their offcuts. The user's own file stays as it is.</summary>
public static class RackAfterSawing
{
    /// <summary>What its finding is about.</summary>
    public const string About = "the rack";

    private const int MostNamed = 6;

    internal static (NestSpec Spec, ImmutableArray<Finding> Findings) Of(
        NestSpec spec,
        ImmutableArray<BoardSawnInto> sawn,
        string record
    )
    {
        List<StockBoard> rack = [.. spec.Boards];
        HashSet<string> named = [.. spec.Boards.Select(b => b.Id)];
        List<string> off = [],
            left = [];
        foreach (BoardSawnInto board in sawn)
        {
            if (Taken(rack, board.Board))
            {
                off.Add(board.Board);
            }

            // One that a file of the stock names already has been put there by hand.
            foreach (OffcutLeft offcut in board.Offcuts.Where(o => !named.Contains(o.Id)))
            {
                OffcutLeft own = offcut with { Id = Own(offcut.Id, left) };
                left.Add(own.Id);
                rack.Add(Stock(own, record));
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
                        About,
                        $"by {record}, which says what planks were sawn out of: {Named(off)} left it, and {Named(left)} came in as offcuts; the files of the stock are as they were"
                    ),
                ]
            );
    }

    /// <summary>Each plan counts the boards of a row from one: what is left of the first of two plans has the name of what is left of the first of another.</summary>
    private static string Own(string id, List<string> taken) =>
        !taken.Contains(id)
            ? id
            : Enumerable
                .Range(2, taken.Count)
                .Select(n => $"{id} ({n})")
                .First(n => !taken.Contains(n));

    /// <summary>Takes one board of the row off; false where the rack has it no more.</summary>
    private static bool Taken(List<StockBoard> rack, string id)
    {
        // A row may have another's name with a point and more: B.5 is itself before it is the fifth of B.
        int at = rack.FindIndex(b => b.OnHand && b.Id == id);
        if (at < 0)
        {
            at = rack.FindIndex(b =>
                b.OnHand && id.StartsWith(b.Id + ".", StringComparison.Ordinal)
            );
        }

        if (at < 0)
        {
            return false;
        }

        if (rack[at].Count is > 1 and int count)
        {
            bool isNumbered = int.TryParse(
                id.AsSpan(Math.Min(rack[at].Id.Length + 1, id.Length)),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out int number
            );
            rack[at] = rack[at] with
            {
                Count = count - 1,
                SawnNumbers = isNumbered ? rack[at].SawnNumbers.Add(number) : rack[at].SawnNumbers,
            };
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
