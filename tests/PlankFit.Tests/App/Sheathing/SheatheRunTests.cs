using System.Text.Json;
using PlankFit.App.Running;
using PlankFit.App.Sheathing;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Sheathing;

/// <summary>`plankfit sheathe` from the job to its files.</summary>
public sealed class SheatheRunTests
{
    private const string Cloth = """

        [[cloth]]
        name = "stitched 600"
        kind = "stitched"
        mass = 600
        roll = { width = 1270, length = 50000 }
        [[sheathing]]
        layer = "core cloth"
        cloth = "stitched 600"
        """;

    [Fact]
    public void EverythingForTheRollIsWritten()
    {
        using var folder = new TempFolder();
        RunReport report = Run(folder, Cloth);
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Contains(report.Lines, l => l.Contains("lies flat by itself"));
        string output = folder.File("out");
        foreach (
            string name in "sheets/cloth.pdf sheathing.json tables/cloth-order.csv tables/cloth-pieces.csv tables/cloth-cutting.csv tables/cloth-lines.csv tables/cloth-shear.csv dxf/cloth-S-C1.dxf dxf/cloth-P-C1.dxf".Split(
                ' '
            )
        )
        {
            Assert.True(new FileInfo(Path.Combine(output, name)).Length > 0, name);
        }

        using var json = JsonDocument.Parse(
            File.ReadAllBytes(Path.Combine(output, "sheathing.json"))
        );
        JsonElement root = json.RootElement;
        Assert.Equal("plankfit-sheathing/1", root.GetProperty("schema").GetString());
        JsonElement piece = root.GetProperty("pieces")[0];
        Assert.Equal("S-C1", piece.GetProperty("id").GetString());
        // The list of points is of the same outline: at every place along, its edges are the outline's.
        double[] xs =
        [
            .. piece.GetProperty("outline").EnumerateArray().Select(p => p[0].GetDouble()),
        ];
        Assert.Equal(0, xs.Min(), 1e-3);
        string[][] struck =
        [
            .. File.ReadAllLines(Path.Combine(output, "tables/cloth-cutting.csv"))
                .Skip(1)
                .Select(l => l.Split(','))
                .Where(r => r[0] == "S-C1"),
        ];
        Assert.True(struck.Length > 16);
        Assert.Equal(xs.Max(), double.Parse(struck[^1][6]) - double.Parse(struck[0][6]), 0.02);
        using var printed = JsonDocument.Parse(report.Result!);
        Assert.Equal(root.ToString(), printed.RootElement.ToString());
    }

    [Fact]
    public void WithoutClothItIsSaidWhatToAdd()
    {
        using var folder = new TempFolder();
        RunReport report = Run(folder, "");
        Assert.Equal(ExitCode.JobHasFaults, report.Exit);
        Assert.Contains(report.Findings, f => f.Message.Contains("[[sheathing]]"));
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public void AFirstLineThatNoClothFollowsIsToldAndNothingIsThrown()
    {
        using var folder = new TempFolder();
        RunReport report = Run(
            folder,
            Cloth.Replace("mass = 600", "mass = 600\nlocks-at = 5") + "\nfirst-along = \"keel\"\n"
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        Assert.Contains(
            report.Findings,
            f => f.Message.Contains("more than half of the 5 degrees")
        );
    }

    private static RunReport Run(TempFolder folder, string cloth)
    {
        string from = DemoTables.Folder("survey-launch");
        foreach (string file in Directory.EnumerateFiles(from))
        {
            File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        }

        string job = Path.Combine(folder.Path, "job.toml");
        // Hull and layers alone: the rest takes the time.
        string text = File.ReadAllText(job);
        File.WriteAllText(job, text[..text.IndexOf("[ends]", StringComparison.Ordinal)] + cloth);
        return SheatheRun.Run(
            new(job, folder.File("out"), Json: true),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
    }
}
