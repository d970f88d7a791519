using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Reading.Stock;

/// <summary>Stretches of a board as a cell of a stock file has them.</summary>
internal static class BoardStretches
{
    private const string FaultsAccepted =
        "accepted: stretches along the board, 1200..1260, with the part of the width after an x where it is not all of it, 1200..1260 x 0..60; several with ; between";

    /// <summary>40/0: unusable at the marked end and at the other; one figure for both.</summary>
    /// <returns>The texts of both lengths; not two where the cell has no such sense.</returns>
    public static ImmutableArray<string> Ends(string cell, LengthUnit units)
    {
        // A fraction has a stroke too: only one with nothing but lengths around it parts the ends.
        string[] parts = cell.Split('/', StringSplitOptions.TrimEntries);
        return LengthNotation.Read(cell, units).Ok ? [cell, cell]
            : parts.Length == 2 ? [.. parts]
            : Halved(cell, units);
    }

    /// <summary>1200..1260 x 0..60: a stretch to be cut out, and across the board where it does not take the whole width.</summary>
    /// <returns>The fault of the board, or what is wrong with the text.</returns>
    public static (BoardFault? Fault, string? Wrong) Fault(
        string text,
        double lengthMm,
        double widthMm,
        LengthUnit units
    )
    {
        string[] ways = text.Split([" x ", " X ", " × "], StringSplitOptions.TrimEntries);
        (double From, double To)? along = ways.Length <= 2 ? Stretch(ways[0], units) : null,
            across = ways.Length == 2 ? Stretch(ways[1], units) : null;
        if (along is not { } a || (ways.Length == 2 && across is null))
        {
            return (null, FaultsAccepted);
        }

        if (a.From < 0 || a.To > lengthMm || a.To <= a.From)
        {
            return (null, "must begin and end on the board, the lesser first");
        }

        return across is { } c && (c.From < 0 || c.To > widthMm || c.To <= c.From)
            ? (null, "must lie within the board's width, the lesser first")
            : (new(a.From, a.To, across?.From, across?.To), null);
    }

    /// <summary>The one way to part the text at a stroke so that both sides are lengths; empty where there is none or more than one.</summary>
    private static ImmutableArray<string> Halved(string cell, LengthUnit units)
    {
        IEnumerable<ImmutableArray<string>> ways =
            from i in Enumerable.Range(0, cell.Length)
            where cell[i] == '/'
            let a = cell[..i].Trim()
            let b = cell[(i + 1)..].Trim()
            where LengthNotation.Read(a, units).Ok && LengthNotation.Read(b, units).Ok
            select ImmutableArray.Create(a, b);
        ImmutableArray<string>[] found = [.. ways.Take(2)];
        return found.Length == 1 ? found[0] : [];
    }

    private static (double, double)? Stretch(string text, LengthUnit units)
    {
        string[] ends = text.Split("..", StringSplitOptions.TrimEntries);
        return
            ends.Length == 2
            && LengthNotation.Read(ends[0], units) is { Ok: true } from
            && LengthNotation.Read(ends[1], units) is { Ok: true } to
            ? (from.Mm, to.Mm)
            : null;
    }
}
