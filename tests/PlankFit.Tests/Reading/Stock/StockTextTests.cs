using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Stock;

namespace PlankFit.Tests.Reading.Stock;

/// <summary>stock.csv as a builder writes it, right and wrong.</summary>
public sealed class StockTextTests
{
    private const string Head =
        "board,kind,count,length,width,thickness,species,grade,price,ends,faults,grain\n";

    private static readonly NestSpec Graded = NestSpec.Usual with { Grades = ["clear", "sound"] };

    [Fact]
    public void EveryColumnIsRead()
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            Head
                + "# the long wall\n"
                + "B-04,,2,3600,160,9.5,douglas-fir,clear,21.50,40/0,1200..1260; 2000..2030 x 0..60,\n"
                + "PLY-1,sheet,,2440,1220,9,,,,10,,across\n"
        );
        Assert.Empty(findings);
        StockBoard board = boards[0],
            sheet = boards[1];
        Assert.Equal(
            ("B-04", StockKind.Board, 3600.0, 160.0, 9.5, "douglas-fir", "clear", 21.5m, 2),
            (
                board.Id,
                board.Kind,
                board.LengthMm,
                board.WidthMm,
                board.ThicknessMm,
                board.Species!,
                board.Grade!,
                board.Price!.Value,
                board.Count!.Value
            )
        );
        Assert.Equal((40.0, 0.0), (board.MarkedEndMm, board.OtherEndMm));
        Assert.Equal([new(1200, 1260, null, null), new(2000, 2030, 0, 60)], board.Faults);
        Assert.Equal(
            (StockKind.Sheet, true, 1, 10.0, 10.0),
            (sheet.Kind, sheet.GrainAcross, sheet.Count, sheet.MarkedEndMm, sheet.OtherEndMm)
        );
        Assert.Null(sheet.Species);
    }

    [Fact]
    public void ColumnsMayStandInAnyOrderAndBeLeftOut()
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            "width;board;thickness;length\n160;B1;9;3600\n"
        );
        Assert.Empty(findings);
        Assert.Equal(
            (160.0, 9.0, 3600.0, 1),
            (boards[0].WidthMm, boards[0].ThicknessMm, boards[0].LengthMm, boards[0].Count)
        );
    }

    [Fact]
    public void AYardHasAsManyAsAreWanted()
    {
        (ImmutableArray<StockBoard> boards, _) = Read(
            Head + "Y1,,,3600,160,9,,,20,,,\nY2,,4,3000,160,9,,,17,,,\n",
            onHand: false
        );
        Assert.Equal([null, 4], boards.Select(b => b.Count));
        Assert.All(boards, b => Assert.False(b.OnHand));
    }

    [Fact]
    public void FeetInchesAndEighthsAreRead()
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            Head + "B1,,1,12-0-0,0-6-2,0-0-3,,,,0-1-4/0-0-0,4-0-0..4-2-4 x 0-0-0..0-2-0,\n",
            LengthUnit.FeetInchesEighths
        );
        Assert.Empty(findings);
        Assert.Equal(
            (3657.6, 158.75, 9.525),
            (boards[0].LengthMm, boards[0].WidthMm, boards[0].ThicknessMm)
        );
        Assert.Equal((38.1, 0.0), (boards[0].MarkedEndMm, boards[0].OtherEndMm));
        Assert.Equal(new(1219.2, 1282.7, 0, 50.8), boards[0].Faults[0]);
    }

    /// <summary>A stock is bought by the inch: only the table of offsets itself is in nothing but eighths.</summary>
    [Fact]
    public void AJobInEighthsTakesLengthsWithTheirUnits()
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            Head + "B1,,1,12 ft,5 1/2 in,3/8 in,,,,1 1/2 in/0,\"4'-0\"\"..4'-2 1/2\"\"\",\n",
            LengthUnit.FeetInchesEighths
        );
        Assert.Empty(findings);
        Assert.Equal(
            (3657.6, 139.7, 9.525),
            (boards[0].LengthMm, boards[0].WidthMm, boards[0].ThicknessMm)
        );
        Assert.Equal((38.1, 0.0), (boards[0].MarkedEndMm, boards[0].OtherEndMm));
        Assert.Equal(1219.2, boards[0].Faults[0].FromMm, 1e-9);
        Assert.Contains(
            "with its own unit such as 5 1/2 in",
            Read(Head + "B1,,1,3600,160,9,,,,,,\n", LengthUnit.FeetInchesEighths).Item2[0].Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>An inch fraction has a stroke in it as the two ends have between them.</summary>
    [Theory]
    [InlineData("1 1/2 in", 38.1, 38.1)]
    [InlineData("1 1/2 in/0", 38.1, 0)]
    [InlineData("0/3/8 in", 0, 9.525)]
    [InlineData("1/2 in/3/4 in", 12.7, 19.05)]
    public void EndsInFractionsAreParted(string ends, double marked, double other)
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            Head + $"B1,,,3600,160,9,,,,{ends},,\n"
        );
        Assert.Empty(findings);
        Assert.Equal(marked, boards[0].MarkedEndMm, 1e-9);
        Assert.Equal(other, boards[0].OtherEndMm, 1e-9);
    }

    [Theory]
    [InlineData(",,,3600,160,9,,,,,,", "column 1 (board)", "give the board a name")]
    [InlineData("../x,,,3600,160,9,,,,,,", "column 1 (board)", "letters, digits")]
    [InlineData("B1,plank,,3600,160,9,,,,,,", "column 2 (kind)", "board or sheet")]
    [InlineData("B1,,none,3600,160,9,,,,,,", "column 3 (count)", "whole number")]
    [InlineData("B1,,0,3600,160,9,,,,,,", "column 3 (count)", "whole number")]
    [InlineData("B1,,,long,160,9,,,,,,", "column 4 (length)", "accepted")]
    [InlineData("B1,,,36000,160,9,,,,,,", "column 4 (length)", "more than 30 m")]
    [InlineData("B1,,,3600,0,9,,,,,,", "column 5 (width)", "greater than 0")]
    [InlineData("B1,,,3600,160,-9,,,,,,", "column 6 (thickness)", "greater than 0")]
    [InlineData("B1,,,3600,160,9,,best,,,,", "column 8 (grade)", "\"clear\", \"sound\"")]
    [InlineData("B1,,,3600,160,9,,,dear,,,", "column 9 (price)", "point for decimals")]
    [InlineData("B1,,,3600,160,9,,,,40/30/20,,", "column 10 (ends)", "marked end first")]
    [InlineData("B1,,,3600,160,9,,,,2000/1600,,", "column 10 (ends)", "nothing of the board")]
    [InlineData("B1,,,3600,160,9,,,,,1200-1260,", "column 11 (faults)", "1200..1260")]
    [InlineData("B1,,,3600,160,9,,,,,3500..3700,", "column 11 (faults)", "on the board")]
    [InlineData("B1,,,3600,160,9,,,,,1260..1200,", "column 11 (faults)", "lesser first")]
    [InlineData("B1,,,3600,160,9,,,,,10..20 x 0..170,", "column 11 (faults)", "board's width")]
    [InlineData("B1,,,3600,160,9,,,,,,across", "column 12 (grain)", "only a sheet's")]
    [InlineData("B1,,,3600,160,9,,,,,,along,7", "line 2", "13 cells")]
    public void EveryFaultNamesItsCell(string row, string where, string what)
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = Read(
            Head + row + "\nB9,,,3600,160,9,,,,,,\n"
        );
        Finding fault = Assert.Single(findings);
        Assert.Equal(Severity.Error, fault.Severity);
        Assert.Contains("stock.csv, line 2", fault.Where);
        Assert.Contains(where, fault.Where);
        Assert.Contains(what, fault.Message);
        Assert.Equal(["B9"], boards.Select(b => b.Id));
    }

    [Fact]
    public void TheSameNameTwiceIsAFault()
    {
        (_, ImmutableArray<Finding> findings) = Read(
            Head + "B1,,,3600,160,9,,,,,,\nb1,,,3000,160,9,,,,,,\n"
        );
        Assert.Contains("line 2 already", Assert.Single(findings).Message);
    }

    [Fact]
    public void TheLeastCostNeedsPrices()
    {
        (_, ImmutableArray<Finding> findings) = StockText.Read(
            Head + "B1,,,3600,160,9,,,,,,\n",
            "stock.csv",
            LengthUnit.Millimetre,
            NestSpec.Usual with
            {
                Objective = NestObjective.Cost,
            },
            true,
            new Dictionary<string, string>()
        );
        Assert.Contains("has no price", Assert.Single(findings).Message);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("board,length,width\nB1,3600,160\n", "thickness is missing")]
    [InlineData("board,lenght,width,thickness\n", "did you mean \"length\"")]
    public void AFileWithoutItsColumnsIsNamed(string text, string what)
    {
        (_, ImmutableArray<Finding> findings) = Read(text);
        Assert.Contains(findings, f => f.Message.Contains(what, StringComparison.Ordinal));
    }

    private static (ImmutableArray<StockBoard>, ImmutableArray<Finding>) Read(
        string text,
        LengthUnit units = LengthUnit.Millimetre,
        bool onHand = true
    ) => StockText.Read(text, "stock.csv", units, Graded, onHand, new Dictionary<string, string>());
}
