using System.Text.Json;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace PlankFit.Tests.App;

/// <summary>A plank that is not trusted with its bend: one judge, one sentence on all that comes out, no board sawn for it, and no figure on its card to saw it by.</summary>
public sealed class RefusedPlankTests
{
    private const string Job = """
        [job]
        name = "Thick skin"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        [[layer]]
        name = "skin"
        thickness = 45
        width = 300
        heads = "forward"
        angle = 45
        [timber]
        planks = "douglas-fir"
        [nest]
        stock = "stock.csv"
        rounds = 0
        [output]
        sheets = "book-and-single"
        sides = "all"
        """;

    [Fact]
    public void ItIsToldAlikeEverywhereAndNothingIsSawnForIt()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder.File("job.toml"), Job);
        File.WriteAllText(
            folder.File("stock.csv"),
            "board,count,length,width,thickness\nB-01,80,4000,350,46\n"
        );
        File.Copy(
            Path.Combine(DemoTables.Folder("survey-launch"), "offsets.csv"),
            folder.File("offsets.csv")
        );
        string output = folder.File("out");
        RunReport report = LayRun.Run(
            new(folder.File("job.toml"), output, true),
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.StockIsShort, report.Exit);
        JsonElement planks = JsonDocument.Parse(report.Result!).RootElement.GetProperty("planks");
        string[] refused =
        [
            .. planks
                .EnumerateArray()
                .Where(p =>
                    p.GetProperty("bend")
                        .GetProperty("verdict")
                        .GetString()!
                        .StartsWith("refuse", StringComparison.Ordinal)
                )
                .Select(p => p.GetProperty("id").GetString()!),
        ];
        Assert.InRange(refused.Length, 2, planks.GetArrayLength() - 2);

        Assert.Equal(Rank.DoNotSaw, report.Findings[0].Rank);
        Assert.EndsWith(RefusedBend.ToDo, report.Findings[0].Message, StringComparison.Ordinal);
        Assert.Contains(report.First, l => l.Contains(RefusedBend.ToDo, StringComparison.Ordinal));
        foreach (string list in new[] { "tables/plank-list.csv", "tables/timber.csv" })
        {
            Assert.Equal(
                refused,
                File.ReadLines(Path.Combine(output, list))
                    .Where(l => l.Contains(RefusedBend.ToDo, StringComparison.Ordinal))
                    .Select(l => l.Split(',')[0])
            );
        }

        foreach (
            string file in Directory
                .GetFiles(output, "*.csv")
                .Append(Path.Combine(output, "summary.txt"))
        )
        {
            string text = File.ReadAllText(file);
            Assert.DoesNotContain("Do not bend", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Do not force", text, StringComparison.Ordinal);
        }

        JsonElement nest = JsonDocument
            .Parse(File.ReadAllText(Path.Combine(output, "nest.json")))
            .RootElement;
        Assert.Equal(
            refused,
            nest.GetProperty("unplaced").EnumerateArray().Select(u => u.GetString())
        );
        Assert.DoesNotContain(
            Words(Path.Combine(output, "full-size/labels.pdf")),
            refused.Contains
        );

        string[] cards = Words(Path.Combine(output, "sheets/plank-cards.pdf"));
        Assert.Equal(2 * refused.Length, cards.Count(w => w == "NOT"));
        Assert.Equal(planks.GetArrayLength() - refused.Length, Saw(cards));
    }

    /// <summary>How many cards say what is "to saw".</summary>
    private static int Saw(string[] words) =>
        words.Zip(words.Skip(1)).Count(w => w is ("to", "saw"));

    private static string[] Words(string pdf)
    {
        using var read = PdfDocument.Open(pdf);
        return [.. read.GetPages().SelectMany(p => p.GetWords()).Select((Word w) => w.Text)];
    }
}
