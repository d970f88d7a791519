using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

public class OutputFolderTests
{
    [Fact]
    public void ARunAppearsAllAtOnceAndLeavesNothingElseBehind()
    {
        using var temp = new TempFolder();
        string folder = temp.File("out");
        using (OutputFolder run = Begin(folder, "lay"))
        {
            run.Write("planking.json", Text("{}"));
            run.Write("dxf/S1-01.dxf", Text("a plank"));
            Assert.False(File.Exists(Path.Combine(folder, "planking.json")));
            Assert.Equal(["dxf/S1-01.dxf", "planking.json"], run.Commit());
        }

        Assert.Equal(["dxf/S1-01.dxf", "files.txt", "planking.json"], Everything(folder));
        Assert.Equal("a plank", File.ReadAllText(Path.Combine(folder, "dxf", "S1-01.dxf")));
    }

    [Fact]
    public void ARunThatIsNotCommittedLeavesTheEarlierOneWhole()
    {
        using var temp = new TempFolder();
        Lay(temp.Path, ("a", "old a"), ("b", "old b"));
        using (OutputFolder run = Begin(temp.Path, "lay"))
        {
            run.Write("a", Text("new a"));
        }

        Assert.Equal("old a", File.ReadAllText(temp.File("a")));
        Assert.Equal(["a", "b", "files.txt"], Everything(temp.Path));
    }

    [Fact]
    public void WhatARunNoLongerMakesIsRemovedAndNothingElse()
    {
        using var temp = new TempFolder();
        Lay(temp.Path, ("dxf/S1-39", "x"), ("dxf/S1-40", "x"), ("old/gone", "x"), ("kept", "x"));
        using (OutputFolder check = Begin(temp.Path, "check"))
        {
            check.Write("lines.svg", Text("lines"));
            check.Commit();
        }

        File.WriteAllText(temp.File("my notes"), "mine");
        Lay(temp.Path, ("dxf/S1-39", "y"), ("kept", "y"));
        Assert.Equal(
            ["dxf/S1-39", "files.txt", "kept", "lines.svg", "my notes"],
            Everything(temp.Path)
        );
        Assert.False(Directory.Exists(temp.File("old")));
    }

    [Fact]
    public void AnIndexThatWasMeddledWithReachesNothingOutside()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("precious"), "mine");
        string folder = temp.File("out");
        Lay(folder, ("a", "x"));
        File.AppendAllText(
            Path.Combine(folder, "files.txt"),
            $"lay\t../precious\nlay\t{temp.File("precious")}\nlay\ta/../../precious\n"
        );
        Lay(folder, ("b", "x"));
        Assert.True(File.Exists(temp.File("precious")));
        Assert.Equal(["b", "files.txt"], Everything(folder));
    }

    [Fact]
    public void ACommitThatFailsHalfWayIsTakenBack()
    {
        using var temp = new TempFolder();
        Lay(temp.Path, ("a", "old a"), ("stale", "old"));
        Directory.CreateDirectory(temp.File("m"));
        using (OutputFolder run = Begin(temp.Path, "lay"))
        {
            run.Write("a", Text("new a"));
            run.Write("f/new", Text("new"));
            run.Write("m", Text("in the place of a folder"));
            OutputException refused = Assert.Throws<OutputException>(() => run.Commit());
            Assert.Equal(temp.File("m"), refused.Path);
            Assert.Contains("folder of that name", refused.Message, StringComparison.Ordinal);
        }

        Assert.Equal("old a", File.ReadAllText(temp.File("a")));
        Assert.Equal(["a", "files.txt", "stale"], Everything(temp.Path));
        Assert.False(Directory.Exists(temp.File("f")));
    }

    [Fact]
    public void WhatAKilledRunLeftBehindIsClearedAway()
    {
        using var temp = new TempFolder();
        Directory.CreateDirectory(temp.File(".plankfit-writing/new/dxf"));
        File.WriteAllText(temp.File(".plankfit-writing/new/dxf/half"), "half");
        Lay(temp.Path, ("a", "x"));
        Assert.Equal(["a", "files.txt"], Everything(temp.Path));
    }

    [Fact]
    public void TwoRunsDoNotWriteIntoOneFolderAtOnce()
    {
        using var temp = new TempFolder();
        using OutputFolder first = Begin(temp.Path, "lay");
        first.Write("a", Text("first"));
        OutputException refused = Assert.Throws<OutputException>(() => Begin(temp.Path, "lay"));
        Assert.Contains("another run", refused.Message, StringComparison.Ordinal);
        first.Commit();
        Assert.Equal("first", File.ReadAllText(temp.File("a")));
    }

    [Fact]
    public void ARunThatIsStoppedWritesNothing()
    {
        using var temp = new TempFolder();
        using var stop = new CancellationTokenSource();
        string folder = temp.File("out");
        using (var run = OutputFolder.Begin(folder, "lay", stop.Token))
        {
            run.Write("a", Text("x"));
            stop.Cancel();
            Assert.Throws<OperationCanceledException>(() => run.Write("b", Text("x")));
            Assert.Throws<OperationCanceledException>(() => run.Commit());
        }

        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void ANameThatLeavesTheFolderOrComesTwiceIsABug()
    {
        using var temp = new TempFolder();
        using OutputFolder run = Begin(temp.Path, "lay");
        run.Write("a", Text("x"));
        string[] wrong = ["a", "../b", "/b", "", "c//d", "files.txt", ".plankfit-writing/new/x"];
        Assert.All(
            wrong,
            name => Assert.Throws<ArgumentException>(() => run.Write(name, Text("x")))
        );
    }

    [Fact]
    public void AFileInThePlaceOfTheFolderOrOfItsParentIsNamed()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("out"), "a file");
        OutputException taken = Assert.Throws<OutputException>(() =>
            Begin(temp.File("out"), "lay")
        );
        Assert.Contains("is a file, not a folder", taken.Message, StringComparison.Ordinal);
        OutputException below = Assert.Throws<OutputException>(() =>
            Begin(temp.File("out/deeper"), "lay")
        );
        Assert.Contains(temp.File("out/deeper"), below.Message, StringComparison.Ordinal);
        Assert.Equal("a file", File.ReadAllText(temp.File("out")));
    }

    [Fact]
    public void APlaceThatCannotBeWrittenIsSaidSo()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs Linux's /proc, which nobody can write");
        OutputException refused = Assert.Throws<OutputException>(() =>
            Begin("/proc/plankfit", "lay")
        );
        Assert.Contains("/proc/plankfit", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", refused.Message, StringComparison.Ordinal);
    }

    private static OutputFolder Begin(string folder, string command) =>
        OutputFolder.Begin(folder, command, TestContext.Current.CancellationToken);

    private static void Lay(string folder, params (string Name, string Content)[] files)
    {
        using OutputFolder run = Begin(folder, "lay");
        foreach ((string? name, string? content) in files)
        {
            run.Write(name, Text(content));
        }

        run.Commit();
    }

    private static string[] Everything(string folder) =>
        [
            .. Directory
                .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    private static ReadOnlyMemory<byte> Text(string text) => Encoding.UTF8.GetBytes(text);
}
