using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>What the list of files does not name, or names otherwise than it is, is neither replaced nor deleted; links are not followed.</summary>
public sealed class NotOursTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string folder;

    public NotOursTests()
    {
        folder = temp.File("out");
        Lay(("a", "old a"), ("dxf/x", "old x"), ("stale", "old"));
        File.WriteAllText(temp.File("precious"), "mine");
        Directory.CreateDirectory(temp.File("elsewhere"));
        File.WriteAllText(temp.File("elsewhere/x"), "mine");
    }

    public void Dispose() => temp.Dispose();

    [Fact]
    public void AFileOfTheUsersOwnWithOurNameIsRefusedAndNamed()
    {
        File.WriteAllText(In("b"), "mine");
        File.WriteAllText(In("c"), "mine");
        string message = Refused("b", ("a", "new"), ("b", "new"), ("c", "new"));
        Assert.Contains("PlankFit did not write", message, StringComparison.Ordinal);
        Assert.Contains("Move or rename it", message, StringComparison.Ordinal);
        Assert.EndsWith("The same holds for c.", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileOfOursThatWasChangedIsRefusedWhetherItWouldBeReplacedOrRemoved()
    {
        File.WriteAllText(In("a"), "OLD A"); // of the same size
        Assert.Contains("was changed since", Refused("a", ("a", "new")), StringComparison.Ordinal);
        File.WriteAllText(In("a"), "old a");
        File.WriteAllText(In("stale"), "worked on");
        string message = Refused("stale", ("a", "new"));
        Assert.Contains("Move it away to keep it", message, StringComparison.Ordinal);
        File.Delete(In("stale"));
        Lay(("a", "new"));
        Assert.Equal("new", File.ReadAllText(In("a")));
    }

    [Fact]
    public void WithoutItsListAFolderIsTheUsersOwn()
    {
        File.Delete(In("files.txt"));
        Refused("a", ("a", "new"), ("dxf/x", "new"));
    }

    [Theory]
    [InlineData("my own list\n")]
    [InlineData("")]
    public void AListOfFilesThatIsNotOursIsRefused(string theirs)
    {
        File.WriteAllText(In("files.txt"), theirs);
        Refused("files.txt", ("new", "new"));
    }

    [Fact]
    public void TheListThatEarlierVersionsWroteIsUnderstood()
    {
        File.WriteAllText(
            In("files.txt"),
            "# Written here by PlankFit, a command and a file a line. The next run of a command removes what it no longer makes.\nlay\ta\nlay\tstale\n"
        );
        File.Delete(In("dxf/x"));
        Lay(("a", "new"));
        Assert.Equal("new", File.ReadAllText(In("a")));
        Assert.False(File.Exists(In("stale")));
    }

    [Theory]
    [InlineData("a", "../precious")]
    [InlineData("a", "nowhere")]
    [InlineData("b", "../precious")]
    [InlineData("b", "nowhere")]
    [InlineData("files.txt", "../precious")]
    public void ALinkInThePlaceOfAFileIsNeitherFollowedNorReplaced(string name, string target)
    {
        File.Delete(In(name));
        File.CreateSymbolicLink(In(name), target);
        Refused(name, ("a", "new"), ("b", "new"));
    }

    [Fact]
    public void ALinkInThePlaceOfAFolderIsNotFollowed()
    {
        File.Delete(In("dxf/x"));
        Directory.Delete(In("dxf"));
        Directory.CreateSymbolicLink(In("dxf"), "../elsewhere");
        Assert.Contains(
            "dxf is a symbolic link",
            Refused("dxf/x", ("dxf/x", "new")),
            StringComparison.Ordinal
        );
        // What is no longer made is not looked for behind it either.
        Lay(("a", "new"));
        Assert.Equal("mine", File.ReadAllText(temp.File("elsewhere/x")));
        Assert.True(InTheWay.IsLink(In("dxf")));
    }

    [Theory]
    [InlineData(".plankfit-writing", "../elsewhere")]
    [InlineData(".plankfit-writing/lock", "../../precious")]
    public void ALinkInThePlaceOfTheStageIsNotFollowed(string name, string target)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(In(name))!);
        File.CreateSymbolicLink(In(name), target);
        Assert.Contains("symbolic link", Refused(name, ("a", "new")), StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatIsALinkItselfIsToBeNamedByWhatItLeadsTo()
    {
        Directory.CreateSymbolicLink(temp.File("link"), "elsewhere");
        OutputException refused = Assert.Throws<OutputException>(() =>
            OutputFolder.Begin(temp.File("link"), "lay", TestContext.Current.CancellationToken)
        );
        Assert.Contains("symbolic link", refused.Message, StringComparison.Ordinal);
        Assert.Equal(
            ["x"],
            Directory.EnumerateFiles(temp.File("elsewhere")).Select(Path.GetFileName)
        );
    }

    [Fact]
    public void AFolderOrAFileInTheWayIsNamedBeforeAnythingIsMoved()
    {
        Directory.CreateDirectory(In("m"));
        File.WriteAllText(In("f"), "mine");
        Assert.Contains("a folder of that name", Refused("m", ("m", "")), StringComparison.Ordinal);
        Assert.Contains(
            "f is a file, not a folder",
            Refused("f/g/h", ("f/g/h", "")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void APipeInThePlaceOfAFileOrOfTheListDoesNotHoldTheRunUp()
    {
        foreach (string name in new[] { "a", "files.txt" })
        {
            File.Delete(In(name));
            OutsideTool.Run("mkfifo", "coreutils", In(name));
            OutputException refused = Assert.Throws<OutputException>(() => Lay(("a", "new")));
            Assert.Equal(In(name), refused.Path);
        }
    }

    [Fact]
    public void FoldersMadeOnTheWayToAFolderThatGetsNothingAreRemovedAgain()
    {
        using (OutputFolder run = Begin(temp.File("x/y/z")))
        {
            run.Write("a", "new"u8.ToArray());
        }

        Assert.False(Directory.Exists(temp.File("x")));
    }

    /// <summary>The run is refused, says so of that path, and not a byte has changed.</summary>
    private string Refused(string name, params (string Name, string Content)[] files)
    {
        string[] before = FolderState.Of(temp.Path);
        OutputException refused = Assert.Throws<OutputException>(() => Lay(files));
        Assert.Equal(In(name), refused.Path);
        Assert.False(refused.HalfDone);
        Assert.Equal(before, FolderState.Of(temp.Path));
        return refused.Message;
    }

    private string In(string name) => Path.Combine(folder, name);

    private void Lay(params (string Name, string Content)[] files)
    {
        using OutputFolder run = Begin(folder);
        foreach ((string name, string content) in files)
        {
            run.Write(name, Encoding.UTF8.GetBytes(content));
        }

        run.Commit();
    }

    private static OutputFolder Begin(string folder) =>
        OutputFolder.Begin(folder, "lay", TestContext.Current.CancellationToken);
}
