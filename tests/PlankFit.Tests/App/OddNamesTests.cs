using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Text;
using PlankFit.Tests.Export.Tables;
using PlankFit.Tests.Reading.Names;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;

namespace PlankFit.Tests.App;

/// <summary>The whole command on a job whose every name is as odd as the rule of names lets it be: all files are written, sound, and do nothing but be read.</summary>
public sealed class OddNamesTests : IDisposable
{
    private static readonly (string Name, string Odd)[] Odd =
    [
        ("Every name", new string('W', Name.Longest)),
        ("yard larch", "+лиственница, \"сухая\""),
        ("stringer A", "../Гагара; <b>&amp;"),
        ("frame 2", "@frame {0} %d"),
        ("inner", "=inner\"½″ – “x”"),
        ("outer", "-outer'\\^%%"),
        ("core cloth", "CON."),
        ("first keel", "Θάλεια/Ω"),
        ("second keel", "|second `$(x)`"),
        ("diagonal", "= diagonal, Łódź"),
        ("clear", "=A"),
        ("pan head screw", "№ 8 × 1¼″"),
    ];

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>The whole run, for the long runs: what reads and says names is held apart from it.</summary>
    [Fact]
    public void EveryFileOfARunIsSoundWhateverTheNames()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        string job = EveryName
            .Job.Replace("width = 150", "width = 300")
            .Replace("{ outer = ", "{ \"outer\" = ")
            .Replace("rounds = 0", "rounds = 0\nleast-offcut = 100\nleast-offcut-width = 20");
        string offsets = EveryName.Offsets,
            stock = Coarse(EveryName.Stock),
            yard = Coarse(EveryName.Yard),
            measured = EveryName.Measured;
        foreach ((string name, string odd) in Odd)
        {
            job = job.Replace($"\"{name}\"", JsonSerializer.Serialize(odd));
            string cell = $"\"{odd.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
            offsets = offsets.Replace($"\n{name},", $"\n{cell},");
            stock = stock.Replace($",{name},", $",{cell},");
            yard = yard.Replace($",{name},", $",{cell},");
            measured = measured.Replace($",{name}/2,", $",\"{odd}/2\",");
        }

        foreach (
            (string file, string text) in new[]
            {
                ("job.toml", job),
                ("offsets.csv", offsets),
                ("stock.csv", stock),
                ("yard.csv", yard),
                ("measured.csv", measured),
            }
        )
        {
            File.WriteAllText(folder.File(file), text);
        }

        RunReport report = LayRun.Run(
            new(folder.File("job.toml"), folder.File("out"), Json: true),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        Assert.True(
            report.Exit != ExitCode.JobHasFaults,
            string.Join('\n', report.Findings.Select(f => f.Where + ": " + f.Message))
        );
        string[] files = Directory.GetFiles(folder.File("out"), "*", SearchOption.AllDirectories);
        Assert.True(files.Length > 100);
        Assert.All(files, Sound);
        Assert.All(report.Lines, l => Assert.Equal(l, PlainText.Of(l)));
        OffcutsAreStock();
    }

    private static string Coarse(string stock) => stock.Replace(",160,10,", ",310,10,");

    private void OffcutsAreStock()
    {
        (ImmutableArray<StockBoard> boards, ImmutableArray<Finding> findings) = StockText.Read(
            File.ReadAllText(folder.File("out/tables/offcuts.csv")),
            "offcuts.csv",
            LengthUnit.Millimetre,
            NestSpec.Usual with
            {
                Grades = ["=A", "sound"],
            },
            onHand: true,
            new Dictionary<string, string>()
        );
        Assert.Empty(findings);
        Assert.Contains(boards, b => b.Grade == "=A" || b.Species == Odd[1].Odd);
    }

    private static void Sound(string file)
    {
        byte[] bytes = File.ReadAllBytes(file);
        string text = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF');
        switch (Path.GetExtension(file))
        {
            case ".svg":
                Assert.NotNull(XDocument.Parse(text).Root);
                break;
            case ".json":
                using (JsonDocument.Parse(text)) { }

                break;
            case ".csv":
                Assert.All(
                    CsvReader.Rows(bytes).SelectMany(r => r.Values),
                    cell =>
                        Assert.True(
                            cell is not (['=' or '+' or '-' or '@', ..])
                                || double.TryParse(cell, CultureInfo.InvariantCulture, out _),
                            $"{file}: {cell}"
                        )
                );
                break;
            case ".dxf":
                Assert.All(bytes, b => Assert.True(b is < 0x7F and (>= 0x20 or 13 or 10)));
                Assert.DoesNotContain("?", text, StringComparison.Ordinal);
                break;
            case ".pdf":
                using (var document = PdfDocument.Open(bytes))
                {
                    Assert.True(document.NumberOfPages > 0);
                }

                return;
            case ".png":
                Assert.Equal("PNG", Encoding.ASCII.GetString(bytes, 1, 3));
                return;
            case ".xlsx":
                using (var zip = new ZipArchive(new MemoryStream(bytes)))
                {
                    foreach (ZipArchiveEntry entry in zip.Entries)
                    {
                        using var reader = new StreamReader(entry.Open());
                        Assert.DoesNotContain("<f>", reader.ReadToEnd(), StringComparison.Ordinal);
                    }
                }

                return;
        }

        Assert.Equal(text, PlainText.OfLines(text));
    }
}
