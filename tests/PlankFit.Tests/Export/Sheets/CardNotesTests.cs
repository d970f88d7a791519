using PlankFit.Export.Cards;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Notes of a card keep to their column, and what finds no room there stands across the foot: none is left out.</summary>
public sealed class CardNotesTests
{
    /// <summary>Of a plank with three ends in feet and inches: 22 mm of column, in which they once ran on over the title block and off the sheet.</summary>
    private static readonly string[] Own =
    [
        "Both edges hollow 0 in; cut to the line: straight stock would overlap by up to 1/32 in.",
        "Bend: cold, with care, hard twist. Least radius 4.31 ft, 206 times the thickness, 0-0-0 from the inboard net end; twist 7° a foot.",
        "Lies at 51° to the keel.",
        "Ticks meet those of the same number on the neighbour.",
        "forward edge, out from the line every 0-10-0: 0-0-0",
        "after edge, out from the line every 0-10-0: 0-0-0; 1/32 in",
    ];

    private static readonly string[] OfParts =
    [
        "Behind it, centres along forward / after edge from the inboard net corner: stringer A 1-1-7 1/4 / 1-3-7 1/4; chine log 1-4-0 / 1-8-4.",
        "Western redcedar, 0.26 lb; strain 110 % of the cold limit.",
        "Fastenings: 6 screws with pad 1 1/2 in.",
    ];

    [Theory]
    [InlineData(22, 45)]
    [InlineData(22, 25)]
    [InlineData(60, 45)]
    [InlineData(60, 5)]
    public void TheColumnIsKeptAndNothingOfThePlankIsLost(double columnMm, double highMm)
    {
        var notes = CardNotes.Of(Own, OfParts, columnMm, highMm, 280);
        double high = notes.Column.Sum(n => (n.Count * Letters.Small * Letters.Leading) + 1);
        Assert.InRange(high, 0, highMm);
        string all = string.Join(' ', notes.Column.SelectMany(n => n).Concat(notes.Foot));
        Assert.All(Own, n => Assert.Contains(n, all, StringComparison.Ordinal));
        Assert.All(notes.Foot, l => Assert.InRange(Letters.Width(l, Letters.Small), 0, 280));
        Assert.All(OfParts, n => Assert.Contains(n, all, StringComparison.Ordinal));
    }
}
