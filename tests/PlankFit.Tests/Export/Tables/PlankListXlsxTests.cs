using System.IO.Compression;
using System.Text;
using MiniExcelLibs;
using PlankFit.Export.Lists;
using PlankFit.Export.Tables;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Tables;

public sealed class PlankListXlsxTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build(new(ClothMm: 1)) with
    {
        Findings =
        [
            new(Severity.Note, "hull", "said last"),
            new(Severity.Error, "S1-03", "<said> & \"first\""),
        ],
    };

    private static readonly byte[] File = Bytes(Plan);

    [Fact]
    public void SheetsInOrder() =>
        Assert.Equal(
            ["planks", "ends", "layers", "findings", "about"],
            new MemoryStream(File).GetSheetNames()
        );

    [Fact]
    public void EveryCellOfEveryTableReadsBack()
    {
        foreach (
            Table table in new[]
            {
                PlankTables.Planks(Plan),
                PlankTables.Ends(Plan),
                PlanTables.Layers(Plan),
                PlanTables.Findings(Plan),
            }
        )
        {
            List<IDictionary<string, object?>> rows = Sheet(table.Name);
            Assert.Equal(table.Rows.Length, rows.Count);
            for (int i = 0; i < rows.Count; i++)
            {
                for (int c = 0; c < table.Columns.Length; c++)
                {
                    object? read = rows[i][table.Columns[c].Name];
                    TableCell cell = table.Rows[i][c];
                    if (cell.Number is { } number)
                    {
                        Assert.Equal(
                            number,
                            Assert.IsType<double>(read),
                            0.5001 * Math.Pow(10, -table.Columns[c].Decimals)
                        );
                    }
                    else
                    {
                        Assert.Equal(cell.Text ?? "", read?.ToString() ?? "");
                    }
                }
            }
        }
    }

    [Fact]
    public void APlankLayerAClothAndAFinding()
    {
        IDictionary<string, object?> plank = Sheet("planks")
            .Single(r => (string?)r["plank"] == "P2-17");
        // n turns with the side, words along the hull do not: the outer layer heads forward.
        Assert.Equal("45° from square, leans forward going outboard", plank["inboard angle"]);
        Assert.Equal("bevel 20°, outer face longer by 3.5 mm", plank["inboard bevel"]);
        List<IDictionary<string, object?>> layers = Sheet("layers");
        Assert.Equal(["planks", "cloth", "planks"], layers.Select(r => r["kind"]));
        Assert.Null(layers[1]["layer"]);
        Assert.Equal(2.0, layers[2]["layer"]);
        // 1064.1778 - 4.5 tan 20 by 6000.
        Assert.Equal("6.38 m²", layers[2]["area a side"]);
        Assert.Equal(["error", "note", "note"], Sheet("findings").Select(r => r["severity"]));
        Assert.Equal(
            ["DO NOT SAW", "SAW ONLY AFTER", "KNOW"],
            Sheet("findings").Select(r => r["what it costs"])
        );
        Assert.Equal("<said> & \"first\"", Sheet("findings")[0]["what"]);
        Assert.Contains(
            Sheet("about"),
            r =>
                (string?)r["about this list"] == "revision of the inputs"
                && r.Values.Contains("7f3a9c")
        );
    }

    [Fact]
    public void TheSameInputGivesTheSameBytesAtAnyTime()
    {
        // Zip times have a step of two seconds: wait it out, so that a stamped file would differ.
        Thread.Sleep(2100);
        Assert.Equal(
            File,
            Bytes(PrismaticPlan.Build(new(ClothMm: 1)) with { Findings = Plan.Findings })
        );
        using ZipArchive zip = new(new MemoryStream(File));
        Assert.True(zip.Entries.Count >= 8);
        Assert.All(
            zip.Entries,
            e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime)
        );
        foreach (
            ZipArchiveEntry entry in zip.Entries.Where(e =>
                e.FullName.StartsWith("docProps", StringComparison.Ordinal)
            )
        )
        {
            Assert.DoesNotContain("dcterms", Text(entry), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void HeadsStayInViewColumnsHaveWidthsAndNumbersTheirFormats()
    {
        using ZipArchive zip = new(new MemoryStream(File));
        string sheet = Text(zip.GetEntry("xl/worksheets/sheet1.xml")!);
        Assert.Contains("state=\"frozen\"", sheet, StringComparison.Ordinal);
        Assert.Contains("<cols>", sheet, StringComparison.Ordinal);
        Assert.Contains("<autoFilter ref=\"A1:", sheet, StringComparison.Ordinal);
        Assert.Contains("0.00", Text(zip.GetEntry("xl/styles.xml")!), StringComparison.Ordinal);
    }

    [Fact]
    public void ANumberThatIsNoneIsRefused()
    {
        PlankLayerPlan layer = Plan.PlankLayers.First();
        BottomPlan broken = Plan with
        {
            Layers =
            [
                layer with
                {
                    Starboard =
                    [
                        layer
                            .Starboard[3]
                            .Sized(s => s with { WidestMm = 150, AreaMm2 = double.NaN }),
                    ],
                    Port = [],
                },
            ],
        };
        Assert.Contains(
            "area mm2",
            Assert.Throws<InvalidOperationException>(() => Bytes(broken)).Message,
            StringComparison.Ordinal
        );
    }

    private static byte[] Bytes(BottomPlan plan)
    {
        using MemoryStream stream = new();
        Workbook.Write(
            [
                new(PlankTables.Planks(plan), 1),
                new(PlankTables.Ends(plan), 1),
                new(PlanTables.Layers(plan), 0),
                new(PlanTables.Findings(plan), 0),
                new(PlanTables.About(plan), 0),
            ],
            stream
        );
        return stream.ToArray();
    }

    private static List<IDictionary<string, object?>> Sheet(string name) =>
        [
            .. new MemoryStream(File)
                .Query(useHeaderRow: true, sheetName: name)
                .Cast<IDictionary<string, object?>>(),
        ];

    private static string Text(ZipArchiveEntry entry)
    {
        using StreamReader reader = new(entry.Open(), Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
