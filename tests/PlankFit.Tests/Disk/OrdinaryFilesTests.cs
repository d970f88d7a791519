using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>Only ordinary files are opened: a pipe, a device, a folder or a link to one is refused at once, by its path and with the reason, whichever file it stands for.</summary>
public sealed class OrdinaryFilesTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string job;

    public OrdinaryFilesTests()
    {
        job = SmallJob.In(temp.File("job"), 400);
        File.AppendAllText(
            job,
            "\n[as-built]\nmeasured = \"measured.csv\"\nsawn = \"sawn-planks.json\"\n"
        );
    }

    public void Dispose() => temp.Dispose();

    public static TheoryData<string, string, string> Everything()
    {
        var all = new TheoryData<string, string, string>();
        foreach (
            string file in new[]
            {
                "job.toml",
                "offsets.csv",
                "stock.csv",
                "measured.csv",
                "sawn-planks.json",
            }
        )
        {
            all.Add(file, "pipe", "is a pipe");
            all.Add(file, "link to a pipe", "is a pipe");
            all.Add(file, "/dev/zero", "is a device");
            all.Add(file, "folder", "is a folder");
            all.Add(file, "link to nothing", "no such file");
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void WhatIsNoOrdinaryFileIsRefusedAtOnce(string file, string what, string says)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs mkfifo and Linux's devices");
        string path = Path.Combine(Path.GetDirectoryName(job)!, file);
        File.Delete(path);
        switch (what)
        {
            case "pipe":
                OutsideTool.Run("mkfifo", "coreutils", path);
                break;
            case "link to a pipe":
                OutsideTool.Run("mkfifo", "coreutils", temp.File("a pipe"));
                File.CreateSymbolicLink(path, temp.File("a pipe"));
                break;
            case "folder":
                Directory.CreateDirectory(path);
                break;
            case "link to nothing":
                File.CreateSymbolicLink(path, "nowhere");
                break;
            default:
                File.CreateSymbolicLink(path, what);
                break;
        }

        Finding refused = JobReader.Read(job).Findings.First(f => f.Where == file);
        Assert.Equal(Severity.Error, refused.Severity);
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALinkToAnOrdinaryFileIsRead()
    {
        string table = Path.Combine(Path.GetDirectoryName(job)!, "offsets.csv");
        File.Move(table, temp.File("elsewhere.csv"));
        File.CreateSymbolicLink(table, temp.File("elsewhere.csv"));
        Assert.DoesNotContain(JobReader.Read(job).Findings, f => f.Where == "offsets.csv");
    }

    [Fact]
    public void TheProgramEndsWith1AtAPipe()
    {
        File.Delete(job);
        OutsideTool.Run("mkfifo", "coreutils", job);
        (int code, _, string errors) = BuiltProgram.Run(["check", job, "--out", temp.File("out")]);
        Assert.Equal(1, code);
        Assert.Contains($"is a pipe ({job})", errors, StringComparison.Ordinal);
    }
}
