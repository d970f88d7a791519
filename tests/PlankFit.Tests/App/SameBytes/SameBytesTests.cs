using System.Security.Cryptography;
using System.Text;
using PlankFit.App.Checking;
using PlankFit.App.Explaining;
using PlankFit.App.Keels;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.App.SameBytes;

/// <summary>
/// While the house is rebuilt nothing that a builder gets may change: every file of every demo, with boards planned by rounds, and of forty jobs by chance, and all that
/// the terminal says. The last digits of sines differ from machine to machine, so both sides are made on one: PLANKFIT_WRITE_BYTES=FILE on the commit before the first
/// move writes a line a job, PLANKFIT_BYTES_WERE=FILE after it holds every job against its line (`-class '*SameBytesTests'`, some twelve minutes of one core each);
/// PLANKFIT_BYTES=FOLDER keeps the files that were made, to be held against those of the older build. With none of these a job by chance is made twice, and is the
/// same both times.
/// </summary>
public sealed class SameBytesTests(ITestOutputHelper output)
{
    private const int ByChance = 40;

    private static readonly string[] Demos =
    [
        "tender",
        "tender-as-she-stands",
        "pilot-skiff",
        "survey-launch",
        "survey-launch-from-the-rack",
    ];

    [Fact]
    public void EveryFileIsWhatItWas()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        string? write = Environment.GetEnvironmentVariable("PLANKFIT_WRITE_BYTES"),
            were = Environment.GetEnvironmentVariable("PLANKFIT_BYTES_WERE");
        if (write is null && were is null)
        {
            Assert.Equal(OfChance(1), OfChance(1));
            return;
        }

        var now = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string demo in Demos)
        {
            now[demo] = OfDemo(demo);
        }

        for (int seed = 1; seed <= ByChance; seed++)
        {
            now[$"by chance {seed:00}"] = OfChance(seed);
        }

        if (write is not null)
        {
            File.WriteAllLines(write, now.Select(n => $"{n.Key}: {n.Value}"));
            return;
        }

        var was = File.ReadAllLines(were!)
            .Select(l => l.Split(": ", 2))
            .ToDictionary(l => l[0], l => l[1]);
        Assert.Equal(
            "",
            string.Join(
                "\n",
                now.Where(n => was.GetValueOrDefault(n.Key) != n.Value)
                    .Select(n =>
                        $"{n.Key}: now {n.Value}, was {was.GetValueOrDefault(n.Key, "not there")}"
                    )
            )
        );
    }

    private string OfDemo(string demo)
    {
        using var temp = new TempFolder();
        foreach (string folder in Demos)
        {
            Directory.CreateDirectory(temp.File(folder));
            foreach (string file in Directory.EnumerateFiles(DemoTables.Folder(folder)))
            {
                File.Copy(file, Path.Combine(temp.File(folder), Path.GetFileName(file)));
            }
        }

        string job = Path.Combine(temp.File(demo), "job.toml");
        string text = File.ReadAllText(job);
        File.WriteAllText(
            job,
            text.Replace("\n[nest]\n", "\n[nest]\nrounds = 1\n", StringComparison.Ordinal)
        );
        return Of(demo, job, temp.File("made"));
    }

    private string OfChance(int seed)
    {
        using var temp = new TempFolder();
        return Of(
            $"by chance {seed:00}",
            ChanceJob.Write(seed, temp.File("job")),
            temp.File("made")
        );
    }

    /// <summary>How many files there are and the digest of all of them with what the terminal says, in the order of their names.</summary>
    private string Of(string name, string job, string made)
    {
        var said = new StringBuilder();
        CancellationToken stop = TestContext.Current.CancellationToken;
        var progress = new Progress<PlanProgress>();
        Say(said, LayRun.Run(new(job, Path.Combine(made, "lay"), true), progress, new(), stop));
        Say(said, KeelRun.Run(new(job, Path.Combine(made, "keel"), true), progress, new(), stop));
        Say(said, CheckRun.Run(new(job, Path.Combine(made, "check"), true), null, new(), stop));
        foreach (string plank in (string[])["S1-03", "P1-03", "S2-07"])
        {
            Say(
                said,
                ExplainRun.Run(
                    new(job, Path.Combine(made, "explain"), false),
                    plank,
                    progress,
                    new(),
                    stop
                )
            );
        }

        Directory.CreateDirectory(made);
        File.WriteAllText(
            Path.Combine(made, "said.txt"),
            said.ToString()
                .Replace(made, "MADE", StringComparison.Ordinal)
                .Replace(Path.GetDirectoryName(job)!, "JOB", StringComparison.Ordinal)
        );
        string[] files =
        [
            .. Directory
                .EnumerateFiles(made, "*", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal),
        ];
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (string file in files)
        {
            all.AppendData(Encoding.UTF8.GetBytes(Path.GetRelativePath(made, file)));
            all.AppendData(SHA256.HashData(File.ReadAllBytes(file)));
        }

        Keep(name, made, files);
        string digest = $"{files.Length} files {Convert.ToHexStringLower(all.GetHashAndReset())}";
        output.WriteLine($"{name}: {digest}");
        return digest;
    }

    private static void Keep(string name, string made, string[] files)
    {
        if (Environment.GetEnvironmentVariable("PLANKFIT_BYTES") is not { } kept)
        {
            return;
        }

        foreach (string file in files)
        {
            string to = Path.Combine(kept, name, Path.GetRelativePath(made, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to, overwrite: true);
        }
    }

    private static void Say(StringBuilder said, RunReport report)
    {
        said.Append(report.Exit).Append('\n');
        said.AppendJoin('\n', report.First).Append('\n');
        said.AppendJoin('\n', report.Findings.Select(f => f.ToString())).Append('\n');
        said.AppendJoin('\n', report.Lines).Append('\n').Append(report.Result).Append('\n');
    }
}
