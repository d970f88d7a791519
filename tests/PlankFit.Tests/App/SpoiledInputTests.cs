using System.Collections.Immutable;
using PlankFit.App.Laying;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Text;
using PlankFit.Tests.Reading.Fuzz;
using PlankFit.Tests.Reading.Names;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>
/// Some 170 spoiled inputs of all six files that a job may have, through the reader and, where that accepts them, through the planner, and some through the whole
/// command with its files: each gives a plan or findings, never an exception. Each is seeded by its number, so that a failure names it. With PLANKFIT_LONG=1
/// there are 2000, and all that the reader accepts are planned.
/// </summary>
public sealed class SpoiledInputTests(ITestOutputHelper output)
{
    private const int Each = 84;

    /// <summary>Of the inputs that the reader accepts every so many are planned, and of those every so many go through the whole command, which is many times the work.</summary>
    private static int PlanEach => Long ? 1 : 16;

    private static int WholeEach => Long ? 20 : 16;

    /// <summary>What reading may allocate: some 3 MB are usual; a loop that does not end, or work that grows with a number's value, goes beyond at once.</summary>
    private const long MostBytesOfReading = 400_000_000;

    private static readonly string[] Tokens =
    [
        .. ", ; \" # \n [ ] { } = . - / : null true [] {} 0 -1 1e308 -1e-308 0.0001 99999999 1/2 5-4-6 2' x starboard port S1-09 S9-99 height position chine".Split(
            ' '
        ),
        "\"fit\"",
        "\"\"",
        "\u001B[2J",
        "\u202E",
        "𝄞",
        new string('9', 400),
    ];

    private static bool Long => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    private static readonly Lazy<Sound> Base = new(Sound.Make);

    [Theory]
    [InlineData("job.toml")]
    [InlineData("offsets.csv")]
    [InlineData("stock.csv")]
    [InlineData("yard.csv")]
    [InlineData("measured.csv")]
    [InlineData("sawn-planks.json")]
    public void ASpoiledFileGivesAPlanOrFindings(string file)
    {
        var failures = new List<string>();
        int accepted = 0,
            planned = 0,
            whole = 0,
            runs = Long ? 4 * Each : Each / 3;
        for (int run = 0; run < runs && failures.Count < 5; run++)
        {
            Sound spoiled = Base.Value.With(file, Spoil(Base.Value.Texts[file], run));
            try
            {
                long before = GC.GetAllocatedBytesForCurrentThread();
                ReadResult read = spoiled.Read();
                long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
                Assert.True(bytes < MostBytesOfReading, $"reading allocates {bytes} bytes");
                Said(read.Job is not null, read.Findings);
                if (read.Job is not { } job)
                {
                    continue;
                }

                accepted++;
                if (!Changes(file) || accepted % PlanEach != 0)
                {
                    continue;
                }

                var steps = new Steps();
                PlanResult plan = BottomPlanner.Plan(job, steps, steps.Stop);
                Said(plan.Plan is not null, plan.Findings);
                planned++;
                if (planned % WholeEach == 1)
                {
                    whole++;
                    Whole(spoiled);
                }
            }
            catch (Exception e)
            {
                failures.Add($"{file}, run {run}: {e}\n{Changed(spoiled.Texts[file], file)}");
            }
        }

        output.WriteLine(
            FormattableString.Invariant(
                $"{file}: {runs} inputs, {accepted} accepted, {planned} planned, {whole} through the whole command"
            )
        );
        Assert.True(failures.Count == 0, string.Join("\n\n", failures));

        // Were none refused, or all, nothing would be tried; a record is one that the program wrote or none at all.
        Assert.InRange(accepted, file == "sawn-planks.json" ? 0 : runs / 20, runs - (runs / 20));
    }

    /// <summary>Whether a plan can tell of it: boards are for the whole command only, which takes long.</summary>
    private static bool Changes(string file) => Long || file is not ("stock.csv" or "yard.csv");

    private static void Whole(Sound spoiled)
    {
        using var folder = new TempFolder();
        foreach ((string name, string text) in spoiled.Texts)
        {
            File.WriteAllText(folder.File(name), text);
        }

        var steps = new Steps();
        RunReport report = LayRun.Run(
            new(folder.File("job.toml"), folder.File("out"), Json: false),
            steps,
            new Timings(),
            steps.Stop
        );
        Said(report.Exit != ExitCode.JobHasFaults, report.Findings);
    }

    private static void Said(bool done, ImmutableArray<Finding> findings)
    {
        bool faulty = findings.Any(f => f.Severity == Severity.Error);
        Assert.True(done || faulty, "neither a result nor a fault");
        Assert.All(findings, f => Assert.True(f.Message.Length > 8 && f.Where.Length > 0));
    }

    private static string Spoil(string text, int run)
    {
        if (run % 3 != 0)
        {
            return new NumberSpoiler(run).Spoil(text);
        }

        byte[] bytes = new Mutator(run, Tokens).Spoil(text);
        return TextFile.Decode(bytes, "spoiled").Text ?? text[..(text.Length / 2)];
    }

    /// <summary>The lines that are not the sound file's.</summary>
    private static string Changed(string text, string file) =>
        string.Join(
            '\n',
            text.Split('\n')
                .Except(Base.Value.Texts[file].Split('\n'))
                .Select(l => "  > " + (l.Length > 300 ? l[..300] : l))
        );

    /// <summary>Counts what the planner reports, and ends a run that goes on and on.</summary>
    private sealed class Steps : IProgress<PlanProgress>
    {
        private const int Most = 100_000;
        private readonly CancellationTokenSource source = new();
        private int count;

        public CancellationToken Stop => source.Token;

        public void Report(PlanProgress value)
        {
            if (Interlocked.Increment(ref count) > Most)
            {
                source.Cancel();
            }
        }
    }

    /// <summary>The six files of a job, by name.</summary>
    private sealed record Sound(ImmutableDictionary<string, string> Texts)
    {
        /// <summary>Few planks in few boards, so that a whole run is quick.</summary>
        private static string Coarse(string text) =>
            text.Replace("width = 150", "width = 300").Replace(",160,10,", ",310,10,");

        public static Sound Make()
        {
            using var folder = new TempFolder();
            var texts = new Dictionary<string, string>
            {
                ["job.toml"] =
                    Coarse(EveryName.Job)
                        .Replace(
                            "fitted = [\"S1-08\"]",
                            "fitted = [\"S1-08\"]\nsawn = \"sawn-planks.json\""
                        ) + "\n",
                ["offsets.csv"] = EveryName.Offsets,
                ["stock.csv"] = Coarse(EveryName.Stock),
                ["yard.csv"] = Coarse(EveryName.Yard),
                ["measured.csv"] = EveryName.Measured,
            };
            foreach ((string name, string text) in texts)
            {
                File.WriteAllText(folder.File(name), text);
            }

            // The record is the program's own, and there is none yet.
            File.WriteAllText(folder.File("job.toml"), Coarse(EveryName.Job));
            CancellationToken stop = CancellationToken.None;
            RunReport report = SawnRun.Run(
                new(folder.File("job.toml"), folder.File("out"), Json: false),
                ["S1-05", "P2-04"],
                new Progress<PlanProgress>(),
                new Timings(),
                stop
            );
            Assert.True(
                report.Exit == ExitCode.Done,
                string.Join('\n', report.Findings.Select(f => f.Where + ": " + f.Message))
            );
            texts["sawn-planks.json"] = File.ReadAllText(folder.File("sawn-planks.json"));
            return new(texts.ToImmutableDictionary());
        }

        public Sound With(string file, string text) => new(Texts.SetItem(file, text));

        public ReadResult Read() =>
            JobReader.Read(
                Texts["job.toml"],
                "job.toml",
                Texts["offsets.csv"],
                "offsets.csv",
                Texts["measured.csv"],
                Texts["sawn-planks.json"],
                [Texts["stock.csv"], Texts["yard.csv"]]
            );
    }
}
