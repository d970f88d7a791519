using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.AsBuilt;

/// <summary>Names of planks as a builder writes them: S1-10, or a run of them, S1-08..S1-12.</summary>
public static class PlankIds
{
    /// <summary>What is said of anything else.</summary>
    public const string Accepted =
        "a plank's number looks like S1-10 (side, layer, number from forward)";

    private const int MostInARun = 5000;

    /// <summary>What is said of names among which one is a piece's; null where none is.</summary>
    public static string? OfPiece(IEnumerable<string> names) =>
        names.Select(PieceId.Parse).FirstOrDefault(p => p?.Letter is not null) is { } piece
            ? $"{piece} is a piece of a plank, and planks are named whole, once all their pieces are sawn: say {piece.Plank}"
            : null;

    /// <summary>One plank or a run of them; or what is wrong with the text.</summary>
    public static (ImmutableArray<PlankId> Ids, string? Fault) Expand(string text)
    {
        string[] ends = text.Split("..", StringSplitOptions.TrimEntries);
        if (
            ends.Length > 2
            || PlankId.Parse(ends[0]) is not { } first
            || PlankId.Parse(ends[^1]) is not { } last
        )
        {
            return ([], OfPiece(ends) ?? $"{Accepted}; a run of them S1-08..S1-12");
        }

        if ((first with { Number = last.Number }) != last)
        {
            return ([], "a run of planks is of one side and layer");
        }

        if (last.Number < first.Number || last.Number - first.Number >= MostInARun)
        {
            return ([], "a run goes from the forward plank to the after one");
        }

        return (
            [
                .. Enumerable
                    .Range(first.Number, last.Number - first.Number + 1)
                    .Select(n => first with { Number = n }),
            ],
            null
        );
    }
}
