using System.Collections.Immutable;

namespace PlankFit.Export.Tables;

/// <summary>A table as data, the same for every kind of file. A name is a legal name of a spreadsheet's sheet.</summary>
public sealed record Table(
    string Name,
    ImmutableArray<TableColumn> Columns,
    ImmutableArray<ImmutableArray<TableCell>> Rows
);

/// <param name="Name">The head, with the unit where the cells are numbers.</param>
/// <param name="WidthCharacters">A column wide enough for what stands in it, in characters.</param>
/// <param name="Decimals">For numbers: how many decimals are shown.</param>
public sealed record TableColumn(string Name, double WidthCharacters, int Decimals = 0);

/// <summary>Words, or a number, or nothing.</summary>
public readonly record struct TableCell(string? Text, double? Number)
{
    /// <summary>Where along the hull that is of which it tells, mm aft; null where that is not known. No file has it.</summary>
    public double? AtMm { get; init; }

    public static readonly TableCell Empty = default;

    public static implicit operator TableCell(string? text) => new(text, null);

    public static implicit operator TableCell(double? number) => new(null, number);

    public static implicit operator TableCell(double number) => new(null, number);

    public static implicit operator TableCell(int number) => new(null, number);
}
