using System.Collections.Immutable;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>A rectangle that may be cut out of a sheet, always the same way round.</summary>
/// <param name="LengthMm">Along the sheet's length; <paramref name="WidthMm"/> along its width.</param>
/// <param name="Value">What one of them is worth; one worth nothing is never cut.</param>
/// <param name="Most">How many of them are wanted; null for any number.</param>
public readonly record struct SheetItem(double LengthMm, double WidthMm, double Value, int? Most);

/// <summary>A part of a sheet, mm from the corner where its length and its width begin.</summary>
public readonly record struct SheetBox(double X, double Y, double LengthMm, double WidthMm);

/// <summary>What becomes of a part of a sheet: it is cut from edge to edge in two, or gives one rectangle out of its first corner, or is left over.</summary>
/// <param name="Item">The rectangle that it gives, by its place in the list asked for; what is beyond it is trimmed off.</param>
/// <param name="AtMm">Where the cut begins, from the sheet's corner; the part beyond begins a kerf further.</param>
/// <param name="AcrossLength">The cut runs along the sheet's width, and parts the length.</param>
public sealed record SheetNode(
    SheetBox Box,
    int? Item,
    bool AcrossLength,
    double AtMm,
    SheetNode? First,
    SheetNode? Second
);

/// <summary>A rectangle where it is cut.</summary>
public readonly record struct SheetPlace(int Item, SheetBox Box);

/// <summary>How a sheet is best cut.</summary>
/// <param name="Cuts">From the whole sheet down.</param>
/// <param name="Value">Of all rectangles.</param>
/// <param name="UpperBound">No way to cut the sheet edge to edge is worth more.</param>
/// <param name="Proved">Value and bound are the same.</param>
public sealed record SheetCutting(
    ImmutableArray<SheetPlace> Places,
    SheetNode Cuts,
    double Value,
    double UpperBound,
    bool Proved
);
