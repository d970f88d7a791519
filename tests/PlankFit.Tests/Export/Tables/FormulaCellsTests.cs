using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using PlankFit.Export.Tables;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Stock;
using PlankFit.Tests.Architecture;

namespace PlankFit.Tests.Export.Tables;

/// <summary>No list that we write runs in the spreadsheet that opens it, and what we guard we read back.</summary>
public sealed partial class FormulaCellsTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+A", "'+A")]
    [InlineData("-x", "'-x")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\tx", "'\tx")]
    [InlineData("\rx", "\"'\rx\"")]
    [InlineData("-0-3-4", "'-0-3-4")]
    [InlineData("=\"a\",b", "\"'=\"\"a\"\",b\"")]
    [InlineData("-12.5", "-12.5")]
    [InlineData("+3", "+3")]
    [InlineData("1-2", "1-2")]
    [InlineData("x=1", "x=1")]
    [InlineData("a\nb, \"c\"", "\"a\nb, \"\"c\"\"\"")]
    [InlineData("", "")]
    public void ATextThatWouldBeAFormulaIsGuardedAndANumberIsNot(string text, string field) =>
        Assert.Equal($"{field},-3.2\r\n", Rows(text)[0]);

    [Fact]
    public void HeadsAreGuardedToo()
    {
        var table = new Table("t", [new("=A1", 5), new("b", 5)], []);
        Assert.Equal("'=A1,b\r\n", Written(table));
    }

    [Fact]
    public void AWorkbookHasTextsAsTextsAndNoFormula()
    {
        using var stream = new MemoryStream();
        Workbook.Write([new(TableOf("=1+1"), 0)], stream);
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
        using var sheet = new StreamReader(
            zip.Entries.Single(e => e.FullName.Contains("sheet1", StringComparison.Ordinal)).Open()
        );
        string xml = sheet.ReadToEnd();
        Assert.Contains(">=1+1<", xml, StringComparison.Ordinal);
        Assert.Contains("t=\"inlineStr\"", xml, StringComparison.Ordinal);
        Assert.DoesNotContain("<f>", xml, StringComparison.Ordinal);
    }

    [Fact]
    public void GuardedOffcutsAreReadBackAsStock()
    {
        var table = new Table(
            "offcuts",
            [
                new("board", 5),
                new("length", 5),
                new("width", 5),
                new("thickness", 5),
                new("species", 5),
                new("grade", 5),
            ],
            [
                ["B-1", "900", "120", "10", "@yard", "-A"],
            ]
        );
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = StockText.Read(
            Written(table),
            "offcuts.csv",
            LengthUnit.Millimetre,
            NestSpec.Usual with
            {
                Grades = ["-A"],
            },
            onHand: true,
            new Dictionary<string, string>()
        );
        Assert.Empty(findings);
        StockBoard board = Assert.Single(boards);
        Assert.Equal(("@yard", "-A"), (board.Species, board.Grade));
    }

    /// <summary>A list that is put together elsewhere has no guard: whatever is written to a file of this form is written by the one writer.</summary>
    [Fact]
    public void EveryListGoesThroughTheOneWriter()
    {
        string[] writers =
        [
            .. HouseRules
                .SourceFiles()
                .Select(File.ReadAllText)
                .SelectMany(text => ListWriter().Matches(text))
                .Select(m => m.Groups[1].Value),
        ];
        // The tables of every run, those of compare, and what is to be taped, of lay and of trust.
        Assert.True(writers.Length >= 4, $"{writers.Length} places that write lists");
        Assert.All(writers, w => Assert.Equal("Csv.Write", w));
    }

    /// <summary>A name of a file and what fills its stream, as <c>File("tables/compare.csv", s => Csv.Write(…))</c>.</summary>
    [GeneratedRegex(@"\.csv""\s*,\s*\(?\w+\)?\s*=>\s*\{?\s*([\w.]+)")]
    private static partial Regex ListWriter();

    private static Table TableOf(string text) =>
        new(
            "t",
            [new("a", 5), new("b", 5, 1)],
            [
                [text, -3.2],
            ]
        );

    private static string[] Rows(string text) => [Written(TableOf(text))["a,b\r\n".Length..]];

    private static string Written(Table table)
    {
        using var stream = new MemoryStream();
        Csv.Write(table, stream);
        string text = Encoding.UTF8.GetString(stream.ToArray());
        Assert.Equal('\uFEFF', text[0]);
        return text[1..];
    }
}
