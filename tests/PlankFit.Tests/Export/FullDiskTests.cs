using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>A disk that fills, as a real one: a memory disk of one megabyte where it can be mounted (as root).</summary>
public class FullDiskTests
{
    [Fact]
    public void ADiskThatFillsLeavesTheEarlierRunWhole()
    {
        using var temp = new TempFolder();
        (int code, string _) = OutsideTool.Try(
            "mount",
            "mount",
            ["-t", "tmpfs", "-o", "size=1m", "plankfit-test", temp.Path]
        );
        Assert.SkipWhen(code != 0, "a small disk cannot be mounted here: run the tests as root");
        try
        {
            using (OutputFolder first = Begin(temp.Path))
            {
                first.Write("a", new byte[100_000]);
                first.Commit();
            }

            using (OutputFolder second = Begin(temp.Path))
            {
                second.Write("a", new byte[200_000]);
                OutputException full = Assert.Throws<OutputException>(() =>
                    second.Write("b", new byte[2_000_000])
                );
                Assert.Contains("disk is full", full.Message, StringComparison.Ordinal);
                Assert.Equal(temp.File("b"), full.Path);
            }

            Assert.Equal(100_000, new FileInfo(temp.File("a")).Length);
            Assert.Equal(2, Directory.EnumerateFileSystemEntries(temp.Path).Count());

            OutputException single = Assert.Throws<OutputException>(() =>
                WriteAtomic(temp.File("a"), s => s.Write(new byte[2_000_000]))
            );
            Assert.Contains("disk is full", single.Message, StringComparison.Ordinal);
            Assert.Equal(100_000, new FileInfo(temp.File("a")).Length);
            Assert.Equal(2, Directory.EnumerateFileSystemEntries(temp.Path).Count());

            OutsideTool.Run("mount", "mount", "-o", "remount,ro", temp.Path);
            OutputException readOnly = Assert.Throws<OutputException>(() => Begin(temp.Path));
            Assert.Contains("can only be read", readOnly.Message, StringComparison.Ordinal);
            Assert.Equal(100_000, new FileInfo(temp.File("a")).Length);
        }
        finally
        {
            OutsideTool.Run("umount", "mount", temp.Path);
        }
    }

    [Fact]
    public void ADeviceThatIsAlwaysFullIsRecognised()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "there is no /dev/full here");
        IOException failure = Assert.ThrowsAny<IOException>(() =>
        {
            using var full = new FileStream("/dev/full", FileMode.Open, FileAccess.Write);
            full.Write(new byte[100_000]);
            full.Flush();
        });
        Assert.Contains(
            "disk is full",
            OutputException.From(failure, "S1-07.dxf").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WantOfPermissionIsNotTakenForAFolderInTheWay()
    {
        using var temp = new TempFolder();
        var denied = new UnauthorizedAccessException("Access to the path is denied.");
        Assert.Contains(
            "no permission",
            OutputException.FromFolder(denied, temp.Path).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "folder of that name",
            OutputException.From(denied, temp.Path).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ASingleFileIsReplacedWholeOrNotAtAll()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("a"), "old");
        Assert.Throws<InvalidOperationException>(() =>
            WriteAtomic(
                temp.File("a"),
                s =>
                {
                    s.WriteByte(1);
                    throw new InvalidOperationException("a fault in a writer");
                }
            )
        );
        Assert.Equal("old", File.ReadAllText(temp.File("a")));
        WriteAtomic(temp.File("a"), s => s.Write("new"u8));
        Assert.Equal("new", File.ReadAllText(temp.File("a")));
        Assert.Single(Directory.EnumerateFileSystemEntries(temp.Path));

        OutputException missing = Assert.Throws<OutputException>(() =>
            WriteAtomic(temp.File("none/a"), s => s.Write("new"u8))
        );
        Assert.Contains("does not exist", missing.Message, StringComparison.Ordinal);
    }

    private static OutputFolder Begin(string folder) =>
        OutputFolder.Begin(folder, "lay", TestContext.Current.CancellationToken);

    private static void WriteAtomic(string path, Action<Stream> write) =>
        AtomicFile.Write(path, write, TestContext.Current.CancellationToken);
}
