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
}
