using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>
/// A board or a sheet, or a count of equal ones, as stock.csv has it. Lengths in mm. Along the board x runs from its marked end, across it y from its marked
/// edge, seen with the marked face up.
/// </summary>
/// <param name="Id">B-04; a row of several boards gives B-04.1, B-04.2 and so on to each.</param>
/// <param name="Waste">What of it is unusable.</param>
/// <param name="Row">Where it was read.</param>
public sealed record StockBoard(
    string Id,
    StockKind Kind,
    BoardSize Size,
    BoardWood Wood,
    BoardSupply Supply,
    BoardWaste Waste,
    FileRow Row
)
{
    /// <inheritdoc cref="BoardSize.LengthMm"/>
    public double LengthMm
    {
        get => Size.LengthMm;
        init => Size = Size with { LengthMm = value };
    }

    /// <inheritdoc cref="BoardSize.WidthMm"/>
    public double WidthMm
    {
        get => Size.WidthMm;
        init => Size = Size with { WidthMm = value };
    }

    /// <inheritdoc cref="BoardSize.ThicknessMm"/>
    public double ThicknessMm
    {
        get => Size.ThicknessMm;
        init => Size = Size with { ThicknessMm = value };
    }

    /// <inheritdoc cref="BoardWood.Species"/>
    public string? Species
    {
        get => Wood.Species;
        init => Wood = Wood with { Species = value };
    }

    /// <inheritdoc cref="BoardWood.Grade"/>
    public string? Grade
    {
        get => Wood.Grade;
        init => Wood = Wood with { Grade = value };
    }

    /// <inheritdoc cref="BoardSupply.Price"/>
    public decimal? Price
    {
        get => Supply.Price;
        init => Supply = Supply with { Price = value };
    }

    /// <inheritdoc cref="BoardSupply.Count"/>
    public int? Count
    {
        get => Supply.Count;
        init => Supply = Supply with { Count = value };
    }

    /// <inheritdoc cref="BoardSupply.OnHand"/>
    public bool OnHand
    {
        get => Supply.OnHand;
        init => Supply = Supply with { OnHand = value };
    }

    /// <inheritdoc cref="BoardWaste.MarkedEndMm"/>
    public double MarkedEndMm
    {
        get => Waste.MarkedEndMm;
        init => Waste = Waste with { MarkedEndMm = value };
    }

    /// <inheritdoc cref="BoardWaste.OtherEndMm"/>
    public double OtherEndMm
    {
        get => Waste.OtherEndMm;
        init => Waste = Waste with { OtherEndMm = value };
    }

    /// <inheritdoc cref="BoardWaste.Faults"/>
    public ImmutableArray<BoardFault> Faults
    {
        get => Waste.Faults;
        init => Waste = Waste with { Faults = value };
    }

    /// <inheritdoc cref="FileRow.File"/>
    public string File
    {
        get => Row.File;
        init => Row = Row with { File = value };
    }

    /// <inheritdoc cref="FileRow.Line"/>
    public int Line
    {
        get => Row.Line;
        init => Row = Row with { Line = value };
    }

    /// <summary>A sheet's face grain runs along its marked edge, or across it. A board's always runs along.</summary>
    public bool GrainAcross { get; init; }

    public double AreaMm2 => LengthMm * WidthMm;

    /// <summary>Numbers of the row's boards that are sawn already: the others keep their own, so that what is written on a board in the rack stays true.</summary>
    public ImmutableArray<int> SawnNumbers { get; init; } = [];

    /// <summary>The name of one of the row's boards, counted from nought among those that are left: B-04.3; the row's own where it has one board only.</summary>
    public string NameOf(int nth)
    {
        if (Count == 1 && SawnNumbers.IsEmpty)
        {
            return Id;
        }

        int number = 0;
        for (int left = nth; left >= 0; )
        {
            number++;
            left -= SawnNumbers.Contains(number) ? 0 : 1;
        }

        return FormattableString.Invariant($"{Id}.{number}");
    }
}

/// <summary>How large a board is, mm.</summary>
/// <param name="LengthMm">Along the grain for a board; for a sheet, along its marked edge.</param>
public readonly record struct BoardSize(double LengthMm, double WidthMm, double ThicknessMm);

/// <summary>What a board is of.</summary>
/// <param name="Species">Null where the row does not say: it serves any wood.</param>
public readonly record struct BoardWood(string? Species, string? Grade);

/// <summary>Whether boards are in the rack or are to be bought, how many, and for how much.</summary>
/// <param name="Price">Of one board, in the builder's own money; null where the row does not say.</param>
/// <param name="Count">How many there are; null for as many as are wanted, which only a yard's list may say.</param>
/// <param name="OnHand">In the rack already, and not to be bought.</param>
public readonly record struct BoardSupply(decimal? Price, int? Count, bool OnHand);

/// <summary>What of a board nothing may lie in.</summary>
/// <param name="MarkedEndMm">Unusable length at the marked end; <paramref name="OtherEndMm"/> at the other.</param>
public readonly record struct BoardWaste(
    double MarkedEndMm,
    double OtherEndMm,
    ImmutableArray<BoardFault> Faults
);

/// <summary>A row of a file, for messages.</summary>
public readonly record struct FileRow(string File, int Line);

public enum StockKind
{
    Board,

    /// <summary>Plywood and the like: wide, and planks lie abreast in it.</summary>
    Sheet,
}

/// <summary>A knot, a split or any other place to be cut out.</summary>
/// <param name="FromMm">Along the board from its marked end, to <paramref name="ToMm"/>.</param>
/// <param name="LowMm">Across, from the marked edge, to <paramref name="HighMm"/>; both null where it takes the whole width.</param>
public sealed record BoardFault(double FromMm, double ToMm, double? LowMm, double? HighMm);
