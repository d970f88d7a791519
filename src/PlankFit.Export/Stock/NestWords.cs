using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Stock;

/// <summary>Words for boards and what is sawn out of them.</summary>
public static class NestWords
{
    public static string Of(StockKind kind) => kind == StockKind.Sheet ? "sheet" : "board";

    /// <summary>What value and bound speak of, as the data names it.</summary>
    public static string Measure(NestMeasure measure) =>
        measure switch
        {
            NestMeasure.BoughtArea => "bought area",
            NestMeasure.BoughtCost => "cost",
            NestMeasure.Cost => "price of boards on hand",
            _ => "area of boards on hand",
        };

    /// <summary>How a piece lies, seen on the board's marked face. In a sheet whose grain runs across it lies between its two edges.</summary>
    public static string Lie(StockBoard board, LaidPiece piece) =>
        (piece.FaceDown ? "outer face away from you" : "outer face towards you")
        + $", {Panel.InnerWordOf(piece.Piece.PlankId)} end to the "
        + (board.GrainAcross, piece.Turned) switch
        {
            (false, false) => "marked end",
            (false, true) => "far end",
            (true, false) => "edge that is not marked",
            (true, true) => "marked edge",
        };

    /// <summary>3600 × 160 × 9 mm.</summary>
    public static string Size(StockBoard board, LengthUnit unit) =>
        Size(board.LengthMm, board.WidthMm, board.ThicknessMm, unit);

    public static string Size(
        double lengthMm,
        double widthMm,
        double thicknessMm,
        LengthUnit unit
    ) =>
        $"{LengthText.PaperNumber(lengthMm, unit)} × {LengthText.PaperNumber(widthMm, unit)} × {LengthText.ForPaper(thicknessMm, unit)}";

    public static string Money(decimal money) =>
        money.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>A value in its measure.</summary>
    public static string Value(NestMeasure measure, double value, LengthUnit unit) =>
        measure is NestMeasure.Cost or NestMeasure.BoughtCost
            ? Money((decimal)value)
            : BoardCutWords.Area(value, unit);

    /// <summary>The same, and whether that is to be bought or there already.</summary>
    public static string Takes(NestedMaterial material, LengthUnit unit) =>
        Value(material.Measure, material.Value, unit)
        + (material.Measure.IsBought() ? " to buy" : " of the boards on hand");

    /// <summary>What more time would bring, where the search was ended while it still found better; else nothing.</summary>
    public static string More(NestSpec spec, NestedMaterial material)
    {
        if (!material.MoreMayHelp || material.GapPercent < LeastPercent)
        {
            return "";
        }

        string gap = double.IsInfinity(material.GapPercent)
            ? ""
            : $"gap {AtMost(material.GapPercent)}: ";
        double more = 10 * Math.Ceiling(Math.Max(LeastMore, TimesMore * spec.Seconds) / 10);
        return spec.Rounds is null
            ? string.Create(CultureInfo.InvariantCulture, $"{gap}{more:0} s more is worth trying")
            : $"{gap}more rounds are worth trying";
    }

    /// <summary>So many times the time that it had, and so many seconds at the least.</summary>
    private const double TimesMore = 3;
    private const double LeastMore = 10;

    /// <summary>Bounds are taken so much lower than they were found, for what doubles may have lost; a gap of no more is none.</summary>
    private const double LeastPercent = 1e-3;

    /// <summary>How good the plan is: the proven bound, and the gap to it.</summary>
    public static string Gap(NestSpec spec, NestedMaterial material, LengthUnit unit)
    {
        string bound = Value(material.Measure, material.LowerBound, unit);
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

    /// <summary>What is missing, and what would serve; a sentence for each thickness, wood and grade.</summary>
    public static IEnumerable<string> Missing(NestPlan nest, LengthUnit unit)
    {
        foreach (Shortfall s in nest.Short)
        {
            string wood = s.Species is { } species ? ", " + species : "",
                grade = s.LeastGrade is { } least ? $", {least} or better" : "",
                these = string.Join(", ", s.PieceIds.Take(NamedPieces)),
                more = s.PieceIds.Length > NamedPieces
                    ? $" and {s.PieceIds.Length - NamedPieces} more"
                    : "";
            yield return $"MISSING: {PlanWords.Count(s.PieceIds.Length, "piece")} of {PlankWords.Small(s.ThicknessMm, unit)}{wood}{grade} {(s.PieceIds.Length == 1 ? "finds" : "find")} no board: {these}{more}. "
                + $"{s.Boards} more {(s.Boards == 1 ? "board" : "boards")} of {Size(s.LengthMm, s.WidthMm, s.ThicknessMm, unit)} would serve, sawn square; with them in the stock the plan may need fewer.";
        }
    }

    /// <summary>How often the saw is set to another angle: board by board, and all boards as one job.</summary>
    public static string Settings(NestPlan nest)
    {
        BoardCutList[] boards = [.. nest.Boards.Select(b => BoardCuts.Of(b, nest.Spec))];
        int each = boards.Sum(b => b.Settings),
            together = SawSettings.Count(SawSettings.OneJob(boards).Select(c => c.Cut));
        string first = boards.Any(b => b.Cuts.Any(c => c.Kind == CutKind.EndOff))
            ? "empty ends come off and all boards are ripped first"
            : "all boards are ripped first";
        return $"To half a degree the saw is set {each} times if it is done board by board, and {together} times if {first} and then crosscut in the order of cuts-by-setting.csv.";
    }

    /// <summary>So many pieces that are missing are named in one line.</summary>
    private const int NamedPieces = 8;

    /// <summary>What square crosscuts would take beside it; null where they place fewer pieces.</summary>
    public static string? SquareCuts(NestedMaterial material, LengthUnit unit) =>
        material.SquareCutsFirstFit is not { } square || !(material.Value > 0)
            ? null
            : $"the best that square crosscuts were found to do in the same boards (the longest piece first, each in the first board with room, over each order of boards) is {Value(material.Measure, square, unit)} in {material.SquareCutsBoards} boards, {More(square, material.Value)}";

    /// <summary>17.0 % more; no more.</summary>
    private static string More(double value, double than)
    {
        double percent = 100 * (value - than) / than;
        return Math.Abs(percent) < 0.05
            ? "no more"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{Math.Abs(percent):0.0} % {(percent > 0 ? "more" : "less")}"
            );
    }

    /// <summary>How good a plan is, in words to follow what it takes; nothing while pieces are missing, since it then says nothing of the job.</summary>
    public static string Quality(NestPlan nest, NestedMaterial material, LengthUnit unit) =>
        !nest.Unplaced.IsEmpty
            ? ""
            : ", "
                + Gap(nest.Spec, material, unit)
                + (SquareCuts(material, unit) is { } square ? "; " + square : "");
}
