using PlankFit.Export.Stock;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Made to fill a narrow sheet, the tables under a board break no figure while another column has room: it was 13'-2 19/ and 32" once.</summary>
public sealed class CutTableTests
{
    private const string Long = "13'-2 19/32\"";

    private static CutTable Table(string last) =>
        new(
            ["piece", "begins", "ends", "left beyond"],
            [25, 22, 22, 22],
            [false, true, true, true],
            [new(["P1-06", "1'-9 1/16\"", "4'-4 5/8\"", last], null)]
        );

    [Fact]
    public void AFigureIsNotBrokenWhereAnotherColumnHasRoom()
    {
        CutTable scaled = Table(Long).Scaled(0.9);
        double asked = Letters.WidestWord(Long, Letters.Bench);
        Assert.True(asked > (0.9 * 22) - 2, $"{asked} mm");
        Assert.Single(Letters.Wrap(Long, Letters.Bench, scaled.WidthsMm[3] - 2));
        Assert.Equal(0.9 * 91, scaled.WidthMm, 1e-9);
        Assert.All(scaled.WidthsMm, w => Assert.True(w > 10));
    }

    [Fact]
    public void WhereNoneIsBrokenAllColumnsKeepTheirPart() =>
        Assert.Equal(
            [22.5, 19.8, 19.8, 19.8],
            Table("2'").Scaled(0.9).WidthsMm.Select(w => Math.Round(w, 9))
        );

    /// <summary>In the usual letters the figure is a little wider than its column.</summary>
    [Fact]
    public void AFigureTooWideForItsColumnIsWrittenSmallerAndNotBroken()
    {
        const string Figure = "4'-10 21/32\"";
        double width = Letters.Width(Figure, Letters.Bench) + 1.5;
        var table = new CutTable(
            ["piece", "begins"],
            [20, width],
            [false, true],
            [new(["S1-31", Figure], null), new(["P1-21", "0\""], null)]
        );
        var pad = new SheetCanvas();
        table.Draw(pad, 0, 100, 0, 2);
        Assert.Equal(Letters.Small, Assert.Single(pad.Letterings, l => l.Text == Figure).HeightMm);
        Assert.Equal(Letters.Bench, Assert.Single(pad.Letterings, l => l.Text == "0\"").HeightMm);
        Assert.Equal(table.RowMm(0), table.RowMm(1));
    }
}
