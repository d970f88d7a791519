using PlankFit.Draughting.Skia;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>Streams that are closed, full or read by nobody, and a disk that fills: no abort, exit 3, the earlier files whole, nothing left behind.</summary>
public sealed class FailingStreamsTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string job;

    public FailingStreamsTests() => job = SmallJob.In(temp.File("job"), 400);

    public void Dispose() => temp.Dispose();

    [Theory]
    [InlineData("2>&-")]
    [InlineData(">&- 2>&-")]
    [InlineData("<&- >&- 2>&-")]
    [InlineData(">&-", "--json")]
    public void ARunThatCannotSayAnythingDoesNothing(string redirections, string? option = null)
    {
        SmallJob.Run("keel", job, temp.File("out"));
        string[] before = FolderState.Of(temp.Path);
        (int code, _) = BuiltProgram.RunRedirected(
            redirections,
            [
                "keel",
                SmallJob.In(temp.File("other"), 320),
                "--out",
                temp.File("out"),
                .. option is null ? Array.Empty<string>() : [option],
            ]
        );
        Directory.Delete(temp.File("other"), recursive: true);
        Assert.Equal(3, code);
        Assert.Equal(before, FolderState.Of(temp.Path));
    }

    [Theory]
    [InlineData("2>/dev/full")]
    [InlineData(">/dev/full", "--json")]
    [InlineData("| true; exit ${PIPESTATUS[0]}", "--json")]
    public void ARunThatCannotSayWhatItDidEndsWith3AndItsFilesAreWhole(
        string redirections,
        string? option = null
    )
    {
        SmallJob.Run("keel", job, temp.File("wanted"));
        (int code, string text) = BuiltProgram.RunRedirected(
            redirections,
            [
                "keel",
                job,
                "--out",
                temp.File("out"),
                .. option is null ? Array.Empty<string>() : [option],
            ]
        );
        Assert.Equal(3, code);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.Equal(option is not null, text.Contains("standard output takes nothing"));
        Assert.Equal(FolderState.Of(temp.File("wanted")), FolderState.Of(temp.File("out")));
    }

    [Fact]
    public void MessagesAndResultInOneLogDoNotWriteOverEachOther()
    {
        string log = temp.File("log");
        BuiltProgram.RunRedirected(
            $"> {log} 2>&1; echo after >> {log}",
            "keel",
            job,
            "--out",
            temp.File("out"),
            "--json"
        );
        string text = File.ReadAllText(log);
        Assert.Contains("start with sheets/keel.pdf", text, StringComparison.Ordinal);
        Assert.Contains("\"schema\": \"plankfit-keel/1\"", text, StringComparison.Ordinal);
        Assert.EndsWith("}\nafter\n", text, StringComparison.Ordinal);
    }

    /// <summary>Lay and nest onto a disk with room for half of their files; the earlier run is untouched, and the stage is gone.</summary>
    [Fact]
    public void ADiskThatFillsWhileDrawingsAreWrittenEndsTheRunWith3()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        string disk = temp.File("disk");
        Directory.CreateDirectory(disk);
        (int mounted, _) = OutsideTool.Try(
            "mount",
            "mount",
            ["-t", "tmpfs", "-o", "size=1m", "plankfit-test", disk]
        );
        Assert.SkipWhen(mounted != 0, "a small disk cannot be mounted here: run the tests as root");
        try
        {
            SmallJob.Run("keel", job, disk);
            string[] before = FolderState.Of(disk);
            string filler = Path.Combine(disk, "filler");
            int refused = 0;
            foreach (int room in new[] { 0, 16, 400 })
            {
                // What lay writes takes more than a megabyte, what keel writes a fifth of one.
                File.WriteAllBytes(filler, []);
                FillButFor(filler, disk, room * 1024);
                string[] full = FolderState.Of(disk);
                string verb = room < 100 ? "keel" : "lay";
                (int code, _, string errors) = BuiltProgram.Run([verb, job, "--out", disk]);
                Assert.Equal(3, code);
                Assert.Contains("disk is full", errors, StringComparison.Ordinal);
                Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
                Assert.Equal(full, FolderState.Of(disk));
                refused++;
                File.Delete(filler);
            }

            Assert.Equal(3, refused);
            Assert.Equal(before, FolderState.Of(disk));
        }
        finally
        {
            OutsideTool.Run("umount", "mount", disk);
        }
    }

    [Fact]
    public void ADrawingWrittenToAStreamThatFailsThrowsAndDoesNotAbort()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "there is no /dev/full here");
        foreach (
            Action<Stream, Drawing> write in new Action<Stream, Drawing>[]
            {
                (s, d) => PdfWriter.Write(s, [d], "title"),
                (s, d) => PngWriter.Write(s, d, 100),
            }
        )
        {
            using var full = new FileStream(
                "/dev/full",
                FileMode.Open,
                FileAccess.Write,
                FileShare.ReadWrite,
                bufferSize: 0
            );
            Assert.ThrowsAny<IOException>(() => write(full, new Drawing("title", 100, 100, [])));
        }
    }

    private static void FillButFor(string filler, string disk, long room)
    {
        using FileStream file = File.OpenWrite(filler);
        long take = new DriveInfo(disk).AvailableFreeSpace - room;
        file.Write(new byte[Math.Max(0, take)]);
    }
}
