using System.Diagnostics;
using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>
/// The program killed at random moments: its folder holds the old run or the new one, whole, or the next run makes it so; and nothing is left over. How many
/// kills fall where depends on the machine, what is asked after each does not.
/// </summary>
public sealed class KilledRunsTests : IDisposable
{
    private const string Stage = ".plankfit-writing";
    private readonly TempFolder temp = new();
    private readonly string before,
        after;

    public KilledRunsTests()
    {
        before = SmallJob.In(temp.File("before"), 400);
        after = SmallJob.In(temp.File("after"), 320);
    }

    public void Dispose() => temp.Dispose();

    public static TheoryData<string> Verbs => LongRuns.FirstOf("keel", "nest", "lay");

    [Theory]
    [MemberData(nameof(Verbs))]
    public void ARunKilledAtAnyMomentLeavesTheOldOrTheNew(string verb)
    {
        int kills = LongRuns.Asked ? 15 : 1;
        string old = temp.File("old");
        SmallJob.Run("lay", before, old);
        File.WriteAllText(Path.Combine(old, "my notes"), "mine");
        string whole = FolderState.Copy(old, temp.File("new"));
        SmallJob.Run(verb, after, whole);
        string[] oldState = FolderState.Of(old),
            newState = FolderState.Of(whole);
        Assert.NotEqual(oldState, newState);
        int files = File.ReadAllLines(Path.Combine(whole, "files.txt"))
            .Count(l => l.StartsWith(verb + "\t", StringComparison.Ordinal));
        int alive = 0;
        for (int kill = 0; alive < kills && kill < 10 * kills; kill++)
        {
            string folder = FolderState.Copy(old, temp.File($"killed{kill}"));
            using (Process run = Quiet([verb, after, "--out", folder]))
            {
                // One in four before it writes; the others while it does, at so many files or once it has done.
                if (Random.Shared.Next(4) == 0)
                {
                    Thread.Sleep(Random.Shared.Next(1500));
                }
                else
                {
                    int wanted = Random.Shared.Next(files + 2);
                    while (!run.HasExited && Staged(folder) < wanted)
                    {
                        Thread.Sleep(1);
                    }

                    Thread.Sleep(Random.Shared.Next(5));
                }

                alive += Killed(run) ? 1 : 0;
            }

            Check(folder, oldState, newState, kill);
            Directory.Delete(folder, recursive: true);
        }

        Assert.Equal(kills, alive);
    }

    /// <summary>
    /// The run has some hundred files of an earlier run to remove, so that the journal stands for long enough to be seen; a kill then falls within the moves.
    /// </summary>
    [Fact]
    public void ARunKilledWhileItMovesItsFilesIsFinishedByTheNext()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        const int Wanted = 20;
        int within = 0;
        string old = temp.File("old");
        using (var many = OutputFolder.Begin(old, "keel", TestContext.Current.CancellationToken))
        {
            foreach (int i in Enumerable.Range(0, 400))
            {
                many.Write($"many/{i % 7}/{i}", BitConverter.GetBytes(i));
            }

            many.Write("tables/keel.csv", "an earlier one"u8.ToArray());
            many.Commit();
        }

        string whole = FolderState.Copy(old, temp.File("new"));
        SmallJob.Run("keel", after, whole);
        string[] oldState = FolderState.Of(old),
            newState = FolderState.Of(whole);
        for (int kill = 0; within < Wanted && kill < 10 * Wanted; kill++)
        {
            string folder = FolderState.Copy(old, temp.File($"killed{kill}"));
            string journal = Path.Combine(folder, Stage, "journal");
            using (Process run = Quiet(["keel", after, "--out", folder]))
            {
                while (!File.Exists(journal) && !run.HasExited)
                {
                    Thread.Sleep(1);
                }

                Thread.SpinWait(Random.Shared.Next(100_000));
                run.Kill();
                run.WaitForExit();
            }

            within += File.Exists(journal) ? 1 : 0;
            Check(folder, oldState, newState, kill);
            Directory.Delete(folder, recursive: true);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{within} kills within the moves");
        Assert.Equal(Wanted, within);
    }

    [Fact]
    public void CutKilledAtAnyMomentLeavesTheOldRecordOrTheNew()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        const int Kills = 15;
        File.AppendAllText(before, "\n[as-built]\nsawn = \"sawn-planks.json\"\n");
        string template = Path.GetDirectoryName(before)!,
            record = Path.Combine(template, "sawn-planks.json");
        // A record of nothing, by the program's own hand, as the job must not name what is not there.
        File.WriteAllText(record, PlankFit.Reading.AsBuilt.SawnPlanksFile.Write([]));
        string whole = FolderState.Copy(template, temp.File("whole"));
        SmallJob.Run("sawn", Path.Combine(whole, "job.toml"), temp.File("unused"));
        string oldRecord = File.ReadAllText(record),
            newRecord = File.ReadAllText(Path.Combine(whole, "sawn-planks.json"));
        Assert.NotEqual(oldRecord, newRecord);
        int alive = 0;
        for (int kill = 0; alive < Kills && kill < 10 * Kills; kill++)
        {
            string folder = FolderState.Copy(template, temp.File($"killed{kill}"));
            string job = Path.Combine(folder, "job.toml"),
                of = Path.Combine(folder, "sawn-planks.json");
            using (Process run = Quiet(["sawn", job, "S1-02"]))
            {
                Thread.Sleep(TimeSpan.FromSeconds(2) * Random.Shared.NextDouble());
                alive += Killed(run) ? 1 : 0;
            }

            Assert.Contains(File.ReadAllText(of), new[] { oldRecord, newRecord });
            SmallJob.Run("sawn", job, temp.File("unused"));
            Assert.Equal(newRecord, File.ReadAllText(of));
        }

        Assert.Equal(Kills, alive);
    }

    /// <summary>Whether the kill is what ended it: one that comes after its end is none.</summary>
    private static bool Killed(Process run)
    {
        run.Kill();
        run.WaitForExit();
        return run.ExitCode == 128 + SigKill;
    }

    /// <summary>What a process that was killed is said to have ended with.</summary>
    private const int SigKill = 9;

    /// <summary>Whole as it is, or after the next run, whichever verb that is; and then nothing is there that does not belong there.</summary>
    private static void Check(string folder, string[] oldState, string[] newState, int kill)
    {
        bool moving = File.Exists(Path.Combine(folder, Stage, "journal"));
        if (!moving)
        {
            string[] shown =
            [
                .. FolderState
                    .Of(folder)
                    .Where(l => !l.StartsWith(Stage, StringComparison.Ordinal)),
            ];
            Assert.True(shown.SequenceEqual(oldState) || shown.SequenceEqual(newState));
        }

        if (kill == 0)
        {
            // A verb that writes nothing there, and ends with a fault, mends it as well.
            (int code, _, string errors) = BuiltProgram.Run([
                "explain",
                "/nowhere/job.toml",
                "S1-01",
                "--out",
                folder,
            ]);
            Assert.Equal(1, code);
            Assert.Equal(moving, errors.Contains("was cut off", StringComparison.Ordinal));
        }
        else
        {
            UnfinishedMove.Mend(folder);
        }

        string[] mended = FolderState.Of(folder);
        Assert.Equal(moving || mended.SequenceEqual(newState) ? newState : oldState, mended);
    }

    /// <summary>How many files the run has written so far, not moved yet.</summary>
    private static int Staged(string folder)
    {
        try
        {
            return Directory
                .EnumerateFiles(
                    Path.Combine(folder, Stage, "new"),
                    "*",
                    SearchOption.AllDirectories
                )
                .Count();
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private static Process Quiet(string[] arguments)
    {
        Process process = BuiltProgram.Start(arguments);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }
}
