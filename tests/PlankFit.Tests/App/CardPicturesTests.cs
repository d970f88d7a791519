using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>Cards as pictures, where the job asks for them.</summary>
public sealed class CardPicturesTests
{
    [Fact]
    public void EachPlankGetsItsCardAsSvgAndPng()
    {
        using var folder = new TempFolder();
        string job = OneLayerTender.In(folder, "cards = \"pdf-svg-png\"");
        RunReport report = LayRun.Run(
            new(job, folder.File("out"), false),
            new Progress<PlanProgress>(),
            new(),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ExitCode.Done, report.Exit);
        string[] svg =
        [
            .. Directory
                .EnumerateFiles(folder.File("out/cards"), "*.svg")
                .Select(f => Path.GetFileNameWithoutExtension(f)),
        ];
        string[] dxf =
        [
            .. Directory
                .EnumerateFiles(folder.File("out/dxf"), "?1-*.dxf")
                .Select(f => Path.GetFileNameWithoutExtension(f)),
        ];
        // A card of starboard is its port twin's too, and says so; what has no twin has a card of its own.
        Assert.All(
            dxf.Except(svg),
            port =>
                Assert.Contains(
                    $"and {port}",
                    File.ReadAllText(folder.File($"out/cards/S{port[1..]}.svg")),
                    StringComparison.Ordinal
                )
        );
        Assert.Empty(svg.Except(dxf));
        Assert.All(dxf.Where(p => p[0] == 'S'), p => Assert.Contains(p, svg));
        Assert.Contains(
            "S1-05",
            File.ReadAllText(folder.File("out/cards/S1-05.svg")),
            StringComparison.Ordinal
        );
        Assert.True(new FileInfo(folder.File("out/cards/S1-05.png")).Length > 5000);
    }
}
