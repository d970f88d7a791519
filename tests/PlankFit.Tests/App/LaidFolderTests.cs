using System.Text.RegularExpressions;
using MiniExcelLibs;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>What `lay` leaves: little that one must look through, and the rest where it is asked for.</summary>
public sealed class LaidFolderTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void TheFolderHasFewNamesAndNothingThatWasNotAskedFor()
    {
        Lay(OneLayerTender.In(folder, "paper = \"A4\""));
        Assert.Equal(
            [
                "before-you-saw.pdf",
                "bench-book.pdf",
                "drawings",
                "dxf",
                "files.txt",
                "full-size",
                "planking.json",
                "summary.txt",
                "tables",
            ],
            Names(folder.File("out"), "*")
        );
        Assert.Equal(
            ["drawings", "dxf", "full-size", "tables"],
            Directory
                .EnumerateDirectories(folder.File("out"), "*", SearchOption.AllDirectories)
                .Select(d => Path.GetRelativePath(folder.File("out"), d))
                .Order(StringComparer.Ordinal)
        );
        Assert.All(Names(folder.File("out/drawings"), "*"), n => Assert.EndsWith(".svg", n));
        Assert.StartsWith("999", File.ReadAllText(folder.File("out/dxf/S1-05.dxf")));
        Assert.Contains("AC1015", File.ReadAllText(folder.File("out/dxf/S1-05.dxf")));
    }

    [Fact]
    public void WhatAJobAsksForIsThereAndGoesWhenItAsksNoMore()
    {
        string job = OneLayerTender.In(
            folder,
            "dxf = \"both\"\nsheets = \"book-and-single\"\ndrawings = \"svg-png\""
        );
        Lay(job);
        string cards = folder.File("out/sheets/plank-cards.pdf"),
            picture = folder.File("out/drawings/plan-layer-1.png"),
            old = folder.File("out/dxf/r12/S1-05.dxf");
        Assert.All([cards, picture, old], f => Assert.True(File.Exists(f), f));
        Assert.Contains("AC1009", File.ReadAllText(old), StringComparison.Ordinal);
        Assert.Contains(
            "AC1015",
            File.ReadAllText(folder.File("out/dxf/S1-05.dxf")),
            StringComparison.Ordinal
        );
        File.WriteAllText(folder.File("out/mine.txt"), "mine");
        File.WriteAllText(
            job,
            Regex.Replace(File.ReadAllText(job), @"(?s)\[output\].*", "[output]\ndxf = \"R12\"\n")
        );
        Lay(job);
        Assert.All([cards, picture, old], f => Assert.False(File.Exists(f), f));
        Assert.False(Directory.Exists(folder.File("out/sheets")));
        Assert.True(File.Exists(folder.File("out/mine.txt")));
        Assert.Contains(
            "AC1009",
            File.ReadAllText(folder.File("out/dxf/S1-05.dxf")),
            StringComparison.Ordinal
        );
    }

    /// <summary>Files of names that are no longer made, as an earlier program listed them, are gone after the next run.</summary>
    [Fact]
    public void FilesOfAnEarlierSchemeAreRemovedByTheList()
    {
        string[] old =
        [
            "plank-cards.pdf",
            "plank-list.csv",
            "patterns/layer-1-port.pdf",
            "dxf/r2000/S1-05.dxf",
            "setting-up/frames.csv",
        ];
        using (
            var before = OutputFolder.Begin(
                folder.File("out"),
                "lay",
                TestContext.Current.CancellationToken
            )
        )
        {
            foreach (string name in old)
            {
                before.Write(name, "old"u8.ToArray());
            }

            before.Commit();
        }

        Lay(OneLayerTender.In(folder, "paper = \"A4\""));
        Assert.All(old, n => Assert.False(File.Exists(folder.File("out/" + n)), n));
        Assert.False(Directory.Exists(folder.File("out/patterns")));
    }

    /// <summary>Contents, outline and the numbers on the pages agree; sections stand in the order of the work; every plank is found by its name.</summary>
    [Fact]
    public void TheBenchBookIsFoundThroughByContentsOutlineAndPageNumbers()
    {
        Lay(OneLayerTender.In(folder, "paper = \"A4\""));
        using var book = new BoundBook(folder.File("out"));
        Assert.Equal(
            [
                "Contents",
                "Before you saw",
                "Check before sawing",
                "Plans and shell expansions",
                "The bottom laid flat",
                "Plank list",
                "Plank cards",
            ],
            book.Sections.Select(s => s.Name)
        );
        string contents = book.Page(1).Text;
        foreach ((string name, int page) in book.Sections.Skip(1))
        {
            Assert.Contains($"{name}{page}", contents, StringComparison.Ordinal);
        }

        for (int page = 1; page <= book.Pages; page++)
        {
            Assert.Contains(
                $"bench book, page {page} of {book.Pages}",
                string.Join(' ', book.Page(page).GetWords().Select(w => w.Text)),
                StringComparison.Ordinal
            );
        }

        foreach (string plank in Names(folder.File("out/dxf"), "?1-*.dxf").Select(n => n[..5]))
        {
            (_, int page) = book.Marks.Single(m => m.Name.Split(", ").Contains(plank));
            Assert.Contains(plank, book.Page(page).Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void TheWorkbookHasASheetForEveryTable()
    {
        Lay(OneLayerTender.In(folder, "paper = \"A4\""));
        List<string> sheets = MiniExcel.GetSheetNames(folder.File("out/tables/tables.xlsx"));
        Assert.Equal(sheets.Count, sheets.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(Names(folder.File("out/tables"), "*.csv").Length, sheets.Count);
    }

    private static string[] Names(string folder, string which) =>
        [
            .. Directory
                .EnumerateFileSystemEntries(folder, which)
                .Select(f => Path.GetFileName(f))
                .Order(StringComparer.Ordinal),
        ];

    private void Lay(string job) =>
        Assert.Equal(
            ExitCode.Done,
            LayRun
                .Run(
                    new(job, folder.File("out"), false),
                    new Progress<PlanProgress>(),
                    new(),
                    TestContext.Current.CancellationToken
                )
                .Exit
        );
}
