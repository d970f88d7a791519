using System.Diagnostics;
using PlankFit.App.Laying;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The record of sawn planks on the disk: two at once lose nothing, a link stays a link, a mode stays a mode, and there is always one whole record and one before it.</summary>
public sealed class SawnRecordTests : IDisposable
{
    private readonly TempFolder folder = new();

    public SawnRecordTests()
    {
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(Path.Combine(DemoTables.Folder("tender"), file), folder.File(file));
        }

        File.AppendAllText(folder.File("job.toml"), "\n[as-built]\nsawn = \"sawn-planks.json\"\n");
        File.WriteAllText(Record, SawnPlanksFile.Write([]));
    }

    public void Dispose() => folder.Dispose();

    private string Record => folder.File("sawn-planks.json");

    private string Backup => SawnPlanksFile.BackupOf(Record);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task ManyAtOnceLoseNothing()
    {
        string[] ids = ["S1-05", "P1-17", "S2-08", "P3-11"];
        await Task.WhenAll(
            ids.Select(id => Task.Run(() => Assert.Equal(ExitCode.Done, Cut(id).Exit), Stop))
        );
        Assert.Equal(ids.Order(StringComparer.Ordinal), Recorded(Record));
        Assert.Equal(ids.Length - 1, Recorded(Backup).Length);
        Assert.Empty(Strangers());
    }

    /// <summary>The same with processes of their own, marking and forgetting.</summary>
    [Fact]
    public async Task ProcessesAtOnceLoseNothing()
    {
        // Five starts of the program; by default threads stand for them (ManyAtOnceLoseNothing).
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.Equal(ExitCode.Done, Cut("S1-20..S1-22").Exit);
        string[][] runs =
        [
            ["S1-05..S1-07"],
            ["P1-09"],
            ["S1-21", "--forget"],
            ["S2-08"],
        ];
        int[] codes = await Task.WhenAll(runs.Select(r => Task.Run(() => ExitOf(r), Stop)));
        Assert.Equal(new int[runs.Length], codes);
        Assert.Equal(
            ["P1-09", "S1-05", "S1-06", "S1-07", "S1-20", "S1-22", "S2-08"],
            Recorded(Record)
        );
        Assert.Empty(Strangers());
    }

    /// <summary>Killed at any moment, most of them while it writes: the record is whole, as it was or as it was to be, and the next run finds nothing in its way.</summary>
    [Fact]
    public void AKilledRunLeavesAWholeRecord()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Assert.Equal(ExitCode.Done, Cut("S1-20").Exit);
        int kills = Environment.GetEnvironmentVariable("PLANKFIT_LONG") is "1" ? 20 : 2;
        for (int i = 0; i < kills; i++)
        {
            string[] before = Recorded(Record);
            string id = $"S1-{i + 2:00}";
            using Process process = Started([id]);
            string sign = folder.File(
                i % 2 == 0 ? ".sawn-planks.json.writing" : ".sawn-planks.json.lock"
            );
            SpinWait.SpinUntil(() => process.HasExited || File.Exists(sign));
            for (int spin = 0; spin < i * 997 && i % 4 > 1; spin++)
            {
                Thread.Yield();
            }

            process.Kill();
            process.WaitForExit();
            string[] after = Recorded(Record);
            Assert.True(after.SequenceEqual(before) || after.Except(before).Single() == id);
        }

        Assert.Equal(ExitCode.Done, Cut("S1-23").Exit);
        Assert.Contains("S1-23", Recorded(Record));
        Assert.Empty(Strangers());
    }

    [Fact]
    public void WhoeverWaitsTooLongIsRefused()
    {
        using FileStream held = RecordHeld();
        OutputException refused = Assert.Throws<OutputException>(() =>
            SawnRun.Run(Request, ["S1-05"], new Silent(), new Timings(), Stop, mostWaits: 1)
        );
        Assert.Contains("another `plankfit sawn`", refused.Message, StringComparison.Ordinal);
        Assert.Empty(Recorded(Record));
    }

    /// <summary>One that does not know of locks, an editor or a program that keeps folders alike, changes the record while the planks are worked out.</summary>
    [Fact]
    public void WhatAnotherWroteMeanwhileIsNotOverwritten()
    {
        bool done = false;
        var meanwhile = new Reporting(_ =>
        {
            if (!done)
            {
                done = true;
                File.WriteAllText(
                    Record,
                    SawnPlanksFile.Write([RecordsOfSawn.Of(DemoPlans.Of("tender"), "S1-11")])
                );
            }
        });
        OutputException refused = Assert.Throws<OutputException>(() =>
            SawnRun.Run(Request, ["S1-05"], meanwhile, new Timings(), Stop)
        );
        Assert.Contains("was changed while", refused.Message, StringComparison.Ordinal);
        Assert.Equal(["S1-11"], Recorded(Record));
    }

    [Fact]
    public void ALinkStaysALinkAndItsFileIsReplaced()
    {
        Directory.CreateDirectory(folder.File("kept"));
        string real = folder.File("kept/tender.json");
        File.Move(Record, real);
        File.CreateSymbolicLink(Record, "kept/tender.json");
        Assert.Equal(ExitCode.Done, Cut("S1-05").Exit);
        Assert.Equal(ExitCode.Done, Cut("S1-06").Exit);
        Assert.Equal("kept/tender.json", new FileInfo(Record).LinkTarget);
        Assert.Equal(["S1-05", "S1-06"], Recorded(real));
        Assert.Equal(["S1-05"], Recorded(SawnPlanksFile.BackupOf(real)));
        Assert.False(File.Exists(Backup));

        File.Delete(real);
        Assert.Equal(ExitCode.JobHasFaults, Cut("S1-07").Exit);
        Assert.Equal("kept/tender.json", new FileInfo(Record).LinkTarget);
    }

    [Fact]
    public void WhoMayReadItStaysWhoMayReadIt()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        const UnixFileMode mode =
            UnixFileMode.UserRead
            | UnixFileMode.UserWrite
            | UnixFileMode.GroupRead
            | UnixFileMode.GroupWrite;
        File.SetUnixFileMode(Record, mode);
        Assert.Equal(ExitCode.Done, Cut("S1-05").Exit);
        Assert.Equal(mode, File.GetUnixFileMode(Record));

        File.SetUnixFileMode(Record, UnixFileMode.UserRead);
        OutputException refused = Assert.Throws<OutputException>(() => Cut("S1-06"));
        Assert.Contains("read only", refused.Message, StringComparison.Ordinal);
        Assert.Equal(["S1-05"], Recorded(Record));
    }

    /// <summary>Damaged, it is refused before anything is planned, and the backup named; put back, it is what was there before the last change.</summary>
    [Fact]
    public void ADamagedRecordIsRefusedAndTheBackupServes()
    {
        Cut("S1-05", "S1-06");
        Cut("S1-07");
        byte[] bytes = File.ReadAllBytes(Record);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(Record, bytes);
        foreach (
            RunReport report in new[]
            {
                Cut("S1-08"),
                SawnRun.Forget(Request, ["S1-05"], new Silent(), Stop),
            }
        )
        {
            Assert.Equal(ExitCode.JobHasFaults, report.Exit);
            Finding told = Assert.Single(report.Findings, f => f.Severity == Severity.Error);
            Assert.Equal("sawn-planks.json", told.Where.Split(',')[0]);
            Assert.Contains("sawn-planks.json.bak", told.Message, StringComparison.Ordinal);
        }

        Assert.Equal(bytes, File.ReadAllBytes(Record));
        File.Copy(Backup, Record, overwrite: true);
        Assert.Equal(["S1-05", "S1-06"], Recorded(Record));
        Assert.Equal(ExitCode.Done, Cut("S1-08").Exit);
    }

    [Fact]
    public void AFileOfTheUsersOwnIsNoBackup()
    {
        File.WriteAllText(Backup, "mine");
        OutputException refused = Assert.Throws<OutputException>(() => Cut("S1-05"));
        Assert.Contains("Move it away", refused.Message, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Backup));
        Assert.Empty(Recorded(Record));
    }

    /// <summary>A record of before there was a checksum is taken, told, and written anew with one.</summary>
    [Fact]
    public void AnOlderRecordIsToldAndWrittenAnew()
    {
        File.WriteAllText(
            Record,
            PlankFit.Tests.Reading.SpoiledRecordTests.Older(
                SawnPlanksFile.Write([RecordsOfSawn.Of(DemoPlans.Of("tender"), "S1-11")])
            )
        );
        ReadResult read = JobReader.Read(Request.JobPath);
        Assert.Contains(
            read.Findings,
            f => f.Severity == Severity.Note && f.Message.Contains("earlier PlankFit")
        );
        Assert.Equal(ExitCode.Done, Cut("S1-05").Exit);
        Assert.Equal(["S1-05", "S1-11"], Recorded(Record));
        Assert.Contains(SawnPlanksFile.Schema, File.ReadAllText(Record), StringComparison.Ordinal);
    }

    /// <summary>A layer put in below: planks go with their layer, by its name, and the new numbers are told.</summary>
    [Fact]
    public void PlanksGoWithTheirLayer()
    {
        Cut("S1-12", "S2-09");
        string job = File.ReadAllText(folder.File("job.toml"));
        int at = job.IndexOf("[[layer]]", StringComparison.Ordinal);
        File.WriteAllText(
            folder.File("job.toml"),
            job.Insert(
                at,
                "[[layer]]\nname = \"lining\"\nthickness = 3\nwidth = 80\nheads = \"forward\"\nangle = 45\n\n"
            )
        );
        ReadResult read = JobReader.Read(Request.JobPath);
        Assert.Equal(["S2-12", "S3-09"], read.Job!.AsBuilt.Sawn.Select(c => c.Id.ToString()));
        Assert.Equal(
            2,
            read.Findings.Count(f => f.Message.Contains("write the new numbers on them"))
        );
        Assert.Equal(ExitCode.Done, Cut("S1-10").Exit);
        Assert.Equal(["S1-10", "S2-12", "S3-09"], Recorded(Record));
    }

    /// <summary>The whole way from the table to the files, for the changes with which it once ended in a fault of the program.</summary>
    [Theory]
    [InlineData("thickness = 4", "thickness = 5")]
    [InlineData("chine,height,400,371.5,339.5,306,273.5", "chine,height,400,371.5,339.5,306,278.5")]
    public void AChangeAfterTenPlanksAreSawnStillGivesEveryFile(string was, string now)
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Assert.Equal(ExitCode.Done, Cut("S1-08..S1-17").Exit);
        bool inTable = was.StartsWith("chine", StringComparison.Ordinal);
        string file = folder.File(inTable ? "offsets.csv" : "job.toml"),
            text = File.ReadAllText(file);
        int at = text.IndexOf(was, StringComparison.Ordinal);
        Assert.True(at >= 0);
        File.WriteAllText(file, text.Remove(at, was.Length).Insert(at, now));
        RunReport report = LayRun.Run(Request, new Silent(), new Timings(), Stop);
        Assert.Equal(ExitCode.Done, report.Exit);
        using var standing = System.Text.Json.JsonDocument.Parse(
            File.ReadAllBytes(folder.File("out/as-built.json"))
        );
        double[] longer =
        [
            .. standing
                .RootElement.GetProperty("cut")
                .EnumerateArray()
                .Select(c => c.GetProperty("longerAfterMm").GetDouble()),
        ];
        Assert.Equal(10, longer.Length);
        Assert.Contains(longer, mm => Math.Abs(mm) > 0.25);
        if (!inTable)
        {
            Assert.Equal(
                10,
                report.Findings.Count(f =>
                    f.Message.Contains("4 mm thick where its layer now has 5 mm")
                )
            );
        }
    }

    private RunReport Cut(params string[] planks) =>
        SawnRun.Run(Request, planks, new Silent(), new Timings(), Stop);

    private RunRequest Request => new(folder.File("job.toml"), folder.File("out"), false);

    /// <summary>Another process at work on the record.</summary>
    private FileStream RecordHeld() =>
        new(
            folder.File(".sawn-planks.json.lock"),
            FileMode.OpenOrCreate,
            FileAccess.ReadWrite,
            FileShare.None
        );

    private int ExitOf(string[] planks)
    {
        using Process process = Started(planks);
        process.StandardOutput.ReadToEnd();
        string said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, said);
        return process.ExitCode;
    }

    private Process Started(string[] planks) =>
        Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [
                    Path.Combine(AppContext.BaseDirectory, "plankfit.dll"),
                    "sawn",
                    folder.File("job.toml"),
                    .. planks,
                ]
            )
            {
                RedirectStandardError = true,
                RedirectStandardOutput = true,
            }
        )!;

    private static string[] Recorded(string record)
    {
        SawnReading read = SawnPlanksFile.Read(File.ReadAllText(record), record);
        Assert.Null(read.Fault);
        return [.. read.Planks.Select(p => p.Id.ToString())];
    }

    /// <summary>Files that are neither the job's nor the record nor its backup.</summary>
    private IEnumerable<string> Strangers() =>
        Directory
            .EnumerateFiles(folder.Path)
            .Select(f => Path.GetFileName(f)!)
            .Except(["job.toml", "offsets.csv", "sawn-planks.json", "sawn-planks.json.bak"]);

    private sealed class Silent : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) { }
    }

    private sealed class Reporting(Action<PlanProgress> told) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => told(value);
    }
}
