using System.Diagnostics;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The program as a shell sees it where the stock does not reach, and where its search is interrupted.</summary>
public sealed class ShortStockTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>Two boards for 168 planks: what is missing is the first line everywhere, the exit code is 4, and all files are there.</summary>
    public static TheoryData<string> Verbs => LongRuns.FirstOf("nest", "lay");

    [Theory]
    [MemberData(nameof(Verbs))]
    public async Task WhatIsMissingComesFirst(string verb)
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        string job = Job(
            "rounds = 0",
            "board,length,width,thickness,species,grade\nB-01,3600,160,9.5,douglas-fir,clear\nB-02,3600,160,9.5,douglas-fir,clear\n"
        );
        string output = folder.File("out");
        using Process process = Start(verb, job, "--out", output);
        (string errors, string said) = await Ended(process);
        Assert.Equal((4, ""), (process.ExitCode, said));
        string[] lines = errors.Split('\n');
        Assert.StartsWith("MISSING: ", lines[0], StringComparison.Ordinal);
        Assert.Matches(@"more boards of 3600 × 160 × 9(\.5)? mm would serve,", lines[0]);
        Assert.DoesNotContain("above the least", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("square crosscuts", errors, StringComparison.Ordinal);
        using var book = new BoundBook(output);
        foreach (string sheet in new[] { "Boards to buy and to fetch", "Cut sheets" })
        {
            string words = book.Section(sheet)[0].Text;
            Assert.Contains("MISSING:", words, StringComparison.Ordinal);
            Assert.DoesNotContain("the rack serves", words, StringComparison.Ordinal);
        }

        Assert.Contains(
            "missing: in no list",
            File.ReadAllText(Path.Combine(output, "tables", "shopping-list.csv")),
            StringComparison.Ordinal
        );
        Assert.True(File.Exists(Path.Combine(output, "full-size", "labels.pdf")));
        if (verb == "lay")
        {
            Assert.StartsWith(
                "MISSING: ",
                File.ReadAllText(Path.Combine(output, "summary.txt")),
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>Interrupted while it searches: nothing but the program's own words is read from it.</summary>
    [Fact]
    public async Task NoSolverSpeaksWhenTheSearchIsInterrupted()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("signals are sent by kill");
        }

        string job = Job("time = 20", null);
        // It ends by itself where a shell has the signal ignored.
        using Process process = Start("nest", job, "--out", folder.File("out"));
        Task<(string Errors, string Said)> ended = Ended(process);
        // Whatever it is about by then: what is asked of it holds at every moment. On a quiet machine a solver is at work.
        await Task.Delay(TimeSpan.FromSeconds(3), TestContext.Current.CancellationToken);
        using (var kill = Process.Start("kill", ["-INT", $"{process.Id}"]))
        {
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        (string errors, string said) = await ended;
        string all = errors + said;
        Assert.DoesNotContain("CTRL-C", all, StringComparison.Ordinal);
        Assert.DoesNotContain("SCIP", all, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("presolv", all, StringComparison.OrdinalIgnoreCase);
        Assert.True(process.ExitCode is 0 or 130, all);
        Assert.All(
            all.Split('\n', StringSplitOptions.RemoveEmptyEntries),
            l =>
                Assert.True(
                    l.StartsWith("plankfit:", StringComparison.Ordinal)
                        || l.StartsWith("Stopped:", StringComparison.Ordinal)
                        || l.StartsWith("9 mm", StringComparison.Ordinal)
                        || l.Contains("files are in", StringComparison.Ordinal)
                        || l.StartsWith("note", StringComparison.OrdinalIgnoreCase),
                    l
                )
        );
    }

    private static async Task<(string Errors, string Said)> Ended(Process process)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        Task<string> errors = process.StandardError.ReadToEndAsync(stop);
        string said = await process.StandardOutput.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        return (await errors, said);
    }

    private static Process Start(params string[] arguments) =>
        Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [Path.Combine(AppContext.BaseDirectory, "plankfit.dll"), .. arguments]
            )
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;

    private string Job(string search, string? stock)
    {
        string from = DemoTables.Folder("survey-launch-from-the-rack"),
            text = File.ReadAllText(Path.Combine(from, "job.toml"))
                .Replace(
                    "../survey-launch/",
                    DemoTables.Folder("survey-launch").Replace('\\', '/') + "/",
                    StringComparison.Ordinal
                )
                .Replace("[nest]", "[nest]\n" + search, StringComparison.Ordinal);
        if (stock is null)
        {
            File.Copy(Path.Combine(from, "stock.csv"), folder.File("stock.csv"));
            File.Copy(Path.Combine(from, "yard.csv"), folder.File("yard.csv"));
        }
        else
        {
            File.WriteAllText(folder.File("stock.csv"), stock);
            text = text.Replace("buy = \"yard.csv\"", "", StringComparison.Ordinal);
        }

        File.WriteAllText(folder.File("job.toml"), text);
        return folder.File("job.toml");
    }
}
