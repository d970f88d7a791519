using PlankFit.Pages.Shelf;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>What the page is started with: a job, its folder, a folder of hulls, and what is none of these.</summary>
public sealed class JobShelfTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AFolderWithoutAJobOffersThoseOfItsFolders()
    {
        Directory.CreateDirectory(folder.File("punt"));
        File.WriteAllText(folder.File("punt/job.toml"), "[job]\n");
        string job = Path.Combine(folder.Path, "punt", "job.toml");
        Assert.Equal([job], JobShelf.Of(folder.Path, "/").Paths);
        Assert.Equal(folder.Path, JobShelf.Of(folder.Path, "/").NewOnesGoTo);
        var named = JobShelf.Of("punt", folder.Path);
        Assert.Equal([job], named.Paths);
        Assert.Null(named.NewOnesGoTo);
    }

    [Theory]
    [InlineData(NewHullTests.Table, "this looks like a table of offsets, not a job")]
    [InlineData("board,length,width,thickness\n", "this looks like a list of boards, not a job")]
    public void WhatIsNoJobIsRefusedWithWhatToDo(string text, string told)
    {
        File.WriteAllText(folder.File("it.csv"), text);
        InvalidDataException refused = Assert.Throws<InvalidDataException>(() =>
            JobShelf.Of("it.csv", folder.Path)
        );
        Assert.StartsWith($"it.csv: {told}", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>A job with a fault is shown, with its fault: it may be mended while the page is open.</summary>
    [Fact]
    public void AJobWithFaultsIsServed()
    {
        File.WriteAllText(folder.File("job.toml"), "[job\nname = 1\n");
        Assert.Single(JobShelf.Of("job.toml", folder.Path).Paths);
        Assert.Throws<FileNotFoundException>(() => JobShelf.Of("other.toml", folder.Path));
    }
}
