using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Export.Checks;

/// <summary>A blank of the check sheet: what is read there, where, and which reading of it, the first, the second. Its text names it wherever readings are kept.</summary>
/// <param name="What">A kind that measured.csv knows, or one of this sheet's own.</param>
/// <param name="Where">As measured.csv has it: names of lines and stations may hold any sign.</param>
/// <param name="Side">Null where it is of both.</param>
/// <param name="Time">From 1.</param>
public readonly record struct BlankId(string What, string Where, Side? Side, int Time)
{
    /// <summary>Where a seam meets the lower edge, and where the upper; across from the one to the other; ten planks of the stock side by side. No tape adjusts the hull to them.</summary>
    public const string AlongLower = "a",
        AlongUpper = "b",
        Diagonal = "d",
        TenOfTheStock = "ten of the stock";

    /// <summary>So often nobody reads one thing.</summary>
    public const int MostTimes = 99;

    private const int LongestWhere = 400;
    private const string Between = " | ";

    private static readonly HashSet<string> Kinds =
    [
        AlongLower,
        AlongUpper,
        Diagonal,
        TenOfTheStock,
        .. Enum.GetValues<TapeKind>().Select(TapePlace.WordOf),
    ];

    public static BlankId Of(TapePlace place, int time) =>
        new(place.What, place.Where, place.Side, time);

    /// <summary>measured.csv has a row for it.</summary>
    public bool IsOfTheHull => What is not (AlongLower or AlongUpper or Diagonal or TenOfTheStock);

    public static BlankId? Parse(string text)
    {
        int first = text.IndexOf(Between, StringComparison.Ordinal),
            last = text.LastIndexOf(Between, StringComparison.Ordinal),
            side = last > first
                ? text.LastIndexOf(Between, last - 1, StringComparison.Ordinal)
                : -1;
        if (side < first + Between.Length || first < 0)
        {
            return null;
        }

        string what = text[..first],
            where = text[(first + Between.Length)..side],
            word = text[(side + Between.Length)..last],
            time = text[(last + Between.Length)..];
        Side? of =
            word == PlankWords.Of(Planking.Findings.Side.Starboard)
                ? Planking.Findings.Side.Starboard
            : word == PlankWords.Of(Planking.Findings.Side.Port) ? Planking.Findings.Side.Port
            : null;
        return
            Kinds.Contains(what)
            && where.Length is > 0 and <= LongestWhere
            && !where.Any(char.IsControl)
            && (of is not null || word == "both")
            && int.TryParse(time, NumberStyles.None, CultureInfo.InvariantCulture, out int n)
            && n is >= 1 and <= MostTimes
            ? new(what, where, of, n)
            : null;
    }

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{What}{Between}{Where}{Between}{(Side is { } side ? PlankWords.Of(side) : "both")}{Between}{Time}"
        );
}
