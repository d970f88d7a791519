using PlankFit.Export.Stock;

namespace PlankFit.Tests.Export.Nest;

public sealed class CutTableTests
{
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
