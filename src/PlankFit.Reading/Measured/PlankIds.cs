using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>Names of planks as a builder writes them: S1-10, or a run of them, S1-08..S1-12.</summary>
public static partial class PlankIds
{
    /// <summary>What is said of anything else.</summary>
    public const string Accepted =
        "a plank's number looks like S1-10 (side, layer, number from forward)";

    private const int MostInARun = 5000;

    /// <summary>Side, layer and number of an id; null where it is none.</summary>
    public static (Side Side, int Layer, int Number)? Parse(string id) =>
        One().Match(id) is { Success: true } m
            ? (
                m.Groups[1].Value == "S" ? Side.Starboard : Side.Port,
                int.Parse(m.Groups[2].ValueSpan, CultureInfo.InvariantCulture),
                PlankId.Number(m.Groups[3].ValueSpan)
            )
            : null;

    /// <summary>The ids of one plank or of a run; or what is wrong with the text.</summary>
    public static (ImmutableArray<string> Ids, string? Fault) Expand(string text)
    {
        string[] ends = text.Split("..", StringSplitOptions.TrimEntries);
        if (ends.Length > 2 || Parse(ends[0]) is not { } from || Parse(ends[^1]) is not { } to)
        {
            return ([], $"{Accepted}; a run of them S1-08..S1-12");
        }

        if (from.Side != to.Side || from.Layer != to.Layer)
        {
            return ([], "a run of planks is of one side and layer");
        }

        if (to.Number < from.Number || to.Number - from.Number >= MostInARun)
        {
            return ([], "a run goes from the forward plank to the after one");
        }

        return (
            [
                .. Enumerable
                    .Range(from.Number, to.Number - from.Number + 1)
                    .Select(n => PlankId.Of(from.Side, from.Layer, n)),
            ],
            null
        );
    }

    [GeneratedRegex(
        @"^([SP])([1-9][0-9]{0,2})-([0-9]{2}|[1-9][0-9]{2,4}|A[1-9][0-9]{0,3})\z",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex One();
}
