using System.Globalization;
using PlankFit.Planking;

namespace PlankFit.Export;

/// <summary>Words for boards and what is sawn out of them.</summary>
public static class NestWords
{
    public static string Of(StockKind kind) => kind == StockKind.Sheet ? "sheet" : "board";

    public static string Objective(NestObjective objective) =>
        objective == NestObjective.Cost ? "cost" : "bought area";

    /// <summary>How a piece lies, seen on the board's marked face. In a sheet whose grain runs across it lies between its two edges.</summary>
    public static string Lie(StockBoard board, LaidPiece piece) =>
        (piece.FaceDown ? "outer face away from you" : "outer face towards you")
        + ", inboard end to the "
        + (board.GrainAcross, piece.Turned) switch
        {
            (false, false) => "marked end",
            (false, true) => "far end",
            (true, false) => "edge that is not marked",
            (true, true) => "marked edge",
        };

    /// <summary>3600 × 160 × 9 mm.</summary>
    public static string Size(StockBoard board, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{LengthText.PaperNumber(board.LengthMm, unit)} × {LengthText.PaperNumber(board.WidthMm, unit)} × {LengthText.ForPaper(board.ThicknessMm, unit)}"
            : $"{LengthText.ForPaper(board.LengthMm, unit)} × {PlankWords.Small(board.WidthMm, unit)} × {PlankWords.Small(board.ThicknessMm, unit)}";

    public static string Money(decimal money) =>
        money.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>A value as the objective has it.</summary>
    public static string Value(NestSpec spec, double value, LengthUnit unit) =>
        spec.Objective == NestObjective.Cost
            ? Money((decimal)value)
            : BoardCutWords.Area(value, unit);

    /// <summary>Bounds are taken so much lower than they were found, for what doubles may have lost; a gap of no more is none.</summary>
    private const double LeastPercent = 1e-3;

    /// <summary>How good the plan is: the proven bound, and the gap to it.</summary>
    public static string Gap(NestSpec spec, NestedMaterial material, LengthUnit unit)
    {
        string bound = Value(spec, material.LowerBound, unit);
        return double.IsInfinity(material.GapPercent)
                ? "how near it is to the least possible was not worked out"
            : material.GapPercent < LeastPercent
                ? $"proved to be the least possible in rows ({bound})"
            : $"proved to be no more than {AtMost(material.GapPercent)} above the least possible in rows, which is {bound} or more";
    }

    /// <summary>A gap is never told smaller than it is: to the next tenth of a per cent.</summary>
    public static string AtMost(double gapPercent) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Math.Ceiling((10 * gapPercent) - LeastPercent) / 10:0.0} %"
        );

    /// <summary>What square crosscuts would take beside it; null where they place fewer pieces.</summary>
    public static string? SquareCuts(NestSpec spec, NestedMaterial material, LengthUnit unit) =>
        material.SquareCutsFirstFit is not { } square || !(material.Value > 0)
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"square crosscuts, each piece in the first board that still has room, would take {Value(spec, square, unit)} in {material.SquareCutsBoards} boards, {100 * (square - material.Value) / material.Value:0.0} % more"
            );
}
