using System.IO.Compression;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Sessions;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Files that are written anew while somebody takes the old ones away: he gets all of them, and they are gone after.</summary>
public sealed class PaperFolderTests
{
    [Fact]
    public void AReaderKeepsAllFilesUntilHeIsDone()
    {
        using var folder = new TempFolder();
        string papers = Path.Combine(folder.Path, "papers");
        Directory.CreateDirectory(papers);
        File.WriteAllText(Path.Combine(papers, "a.txt"), "one");
        File.WriteAllText(Path.Combine(papers, "b.txt"), "two");
        var files = new PaperFolder(papers, ["a.txt", "b.txt"]);
        IDisposable reading = files.Read(),
            other = files.Read();
        files.GiveUp();
        using (FileStream packed = PaperZip.Of(files, CancellationToken.None))
        {
            using var zip = new ZipArchive(packed);
            Assert.Equal(["a.txt", "b.txt"], zip.Entries.Select(e => e.FullName));
        }

        reading.Dispose();
        reading.Dispose();
        Assert.True(File.Exists(Path.Combine(papers, "b.txt")));
        other.Dispose();
        Assert.False(Directory.Exists(papers));
    }

    [Fact]
    public void WhatNobodyReadsGoesAtOnce()
    {
        using var folder = new TempFolder();
        string papers = Path.Combine(folder.Path, "papers");
        Directory.CreateDirectory(papers);
        new PaperFolder(papers, []).GiveUp();
        Assert.False(Directory.Exists(papers));
    }
}
