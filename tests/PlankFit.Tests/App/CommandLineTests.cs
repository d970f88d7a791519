using System.Diagnostics;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The program as a shell sees it: exit codes, streams, and no stack trace whatever it is given.</summary>
public sealed class CommandLineTests
{
    [Theory]
    [InlineData(2, "Required argument", "lay")]
    [InlineData(2, "see plankfit lay --help", "lay")]
    [InlineData(2, "see plankfit --help", "card")]
    [InlineData(2, "Unrecognized", "lay", "job.toml", "--colour")]
    [InlineData(1, "no such file", "lay", "/nowhere/job.toml")]
    [InlineData(1, "no plank 'S7-01'", "explain", "LAUNCH", "S7-01")]
    [InlineData(1, "is no tolerance", "check", "LAUNCH", "--fair", "thin", "--out", "OUT")]
    [InlineData(3, "Cannot write", "check", "LAUNCH", "--out", "LAUNCH")]
    [InlineData(0, "start with sheets/keel.pdf", "keel", "LAUNCH", "--out", "OUT")]
    [InlineData(1, "names no keel layer", "keel", "SKIFF", "--out", "OUT")]
    [InlineData(0, "run fair", "check", "LAUNCH", "--out", "OUT")]
    [InlineData(2, "did you mean \"layer.width\"", "help", "layer.widht")]
    public void ExitCodesAndWords(int exit, string says, params string[] arguments)
    {
        using var folder = new TempFolder();
        (int code, string output, string errors) = Run([
            .. arguments.Select(a =>
                a.Replace("LAUNCH", LaidLaunch.JobFile, StringComparison.Ordinal)
                    .Replace(
                        "SKIFF",
                        Path.Combine(DemoTables.Folder("pilot-skiff"), "job.toml"),
                        StringComparison.Ordinal
                    )
                    .Replace("OUT", folder.File("out"), StringComparison.Ordinal)
            ),
        ]);
        Assert.Equal(exit, code);
        Assert.Contains(says, errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at PlankFit", output + errors, StringComparison.Ordinal);
        Assert.Empty(output);
    }

    [Fact]
    public void HelpGoesToStandardOutput()
    {
        (int code, string output, string errors) = Run("help", "layer.width");
        Assert.Equal(0, code);
        Assert.StartsWith("layer.width", output, StringComparison.Ordinal);
        Assert.Empty(errors);
    }

    [Fact]
    public void JsonGoesToStandardOutputAlone()
    {
        using var folder = new TempFolder();
        (int code, string output, _) = Run(
            "check",
            LaidLaunch.JobFile,
            "--json",
            "--out",
            folder.File("out")
        );
        Assert.Equal(0, code);
        using var json = System.Text.Json.JsonDocument.Parse(output);
        Assert.Equal("plankfit-check/1", json.RootElement.GetProperty("schema").GetString());
    }

    [Fact]
    public void AFairedCopyStandsBesideTheOldTable()
    {
        using var folder = new TempFolder();
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(Path.Combine(DemoTables.Folder("pilot-skiff"), file), folder.File(file));
        }

        (int code, _, string errors) = Run(
            "check",
            folder.File("job.toml"),
            "--fair",
            "1/16 in",
            "--out",
            folder.File("out")
        );
        Assert.Equal(0, code);
        Assert.Contains("The job still reads the old table", errors, StringComparison.Ordinal);
        Assert.Matches(@"the most by (under 1/32|1/16|1/32)"":", errors);
        Assert.DoesNotMatch(@"\d mm\b", errors);
        Assert.Equal(
            File.ReadAllText(Path.Combine(DemoTables.Folder("pilot-skiff"), "offsets.csv")),
            File.ReadAllText(folder.File("offsets.csv"))
        );

        // The faired table is read as any other; no value has moved by more than the tolerance.
        File.WriteAllText(
            folder.File("job.toml"),
            File.ReadAllText(folder.File("job.toml"))
                .Replace("offsets.csv", "offsets.faired.csv", StringComparison.Ordinal)
        );
        PlankFit.Planking.Whole.Job faired = PlankFit
            .Reading.Jobs.JobReader.Read(folder.File("job.toml"))
            .Job!;
        PlankFit.Planking.Whole.Job old = PlankFit
            .Reading.Jobs.JobReader.Read(Path.Combine(DemoTables.Folder("pilot-skiff"), "job.toml"))
            .Job!;
        foreach (
            (
                PlankFit.Planking.Hulls.OffsetLine a,
                PlankFit.Planking.Hulls.OffsetLine b
            ) in old.Offsets.Lines.Zip(faired.Offsets.Lines)
        )
        {
            Assert.All(
                a.HeightsMm.Zip(b.HeightsMm),
                h => Assert.True(Math.Abs(h.First!.Value - h.Second!.Value) <= 1.5875 + 1e-9)
            );
            Assert.All(
                a.HalfBreadthsMm.Zip(b.HalfBreadthsMm),
                h => Assert.True(Math.Abs(h.First!.Value - h.Second!.Value) <= 1.5875 + 1e-9)
            );
        }

        string[] moves = File.ReadAllLines(folder.File("offsets.moves.csv"));
        Assert.True(moves.Length > 2);
        Assert.StartsWith(
            "# Pilot skiff",
            File.ReadAllText(folder.File("offsets.faired.csv")),
            StringComparison.Ordinal
        );
    }

    private static (int Code, string Output, string Errors) Run(params string[] arguments)
    {
        string program = Path.Combine(AppContext.BaseDirectory, "plankfit.dll");
        var start = new ProcessStartInfo("dotnet", [program, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, errors.Result);
    }
}
