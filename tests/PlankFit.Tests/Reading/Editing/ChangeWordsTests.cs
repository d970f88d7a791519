using PlankFit.Reading.Editing;

namespace PlankFit.Tests.Reading.Editing;

/// <summary>A change is told by the names that the builder gave, not by where it stands in the file.</summary>
public sealed class ChangeWordsTests
{
    private const string Text = """
        [hull]
        offsets = "offsets.csv"
        [[layer]]
        name = "inner"
        width = 100
        [[layer]]
        width = 120
        """;

    [Theory]
    [InlineData("layer[0].width", " 110 ", "width of inner to 110")]
    [InlineData("layer[0].angle-drift", "9", "angle drift of inner to 9")]
    [InlineData("layer[1].width", "", "width of layer left out")]
    [InlineData("hull.offsets", "table.csv", "offsets of hull to table.csv")]
    [InlineData("no.such", "1", "no.such to 1")]
    public void ByTheNamesOfTheBuilder(string address, string typed, string words) =>
        Assert.Equal(words, ChangeWords.Of(Text, address, typed));
}
