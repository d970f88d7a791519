using PlankFit.App.Comparing;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Comparing;

/// <summary>Chart, pictures and advice where there are many lay-outs; their figures are drawn by chance, and nothing is laid for it.</summary>
public sealed class ComparedOnPaperTests : IDisposable
{
    private readonly TempFolder folder = new();

    /// <summary>No number lies on a point, a square, a line to another number or another number, however close they stand; lines of the grid are kept off where there is room.</summary>
    [Fact]
    public void NumbersOnTheChartAreClear()
    {
        Comparison laid = Laid();
        Random random = new(11);
        int told = 0,
            asked = 0;
        for (int round = 0; round < (LongRuns.Asked ? 200 : 6); round++)
        {
            Comparison c = ByChance(laid, random, 10 + random.Next(90));
            Drawing chart = CompareChart.Of(c);
            string faults = string.Join(
                "\n",
                SheetCheck
                    .Faults(chart)
                    .Concat(SheetCheck.Ringed(chart))
                    .Concat(SheetCheck.Struck(chart, _ => true))
            );
            Assert.True(faults.Length == 0, $"round {round}: {faults}");
            asked += c.Unbeaten.Count;
            told += c.Unbeaten.Count(n =>
                chart
                    .Shapes.OfType<Lettering>()
                    .Any(l => l.Text.Split(" · ").Contains(n == 0 ? "as it stands" : $"{n}"))
            );
        }

        // Those that find no room stand in the list; most do find it.
        Assert.InRange(told, 0.8 * asked, asked);
    }

    /// <summary>As many pictures on a page as can be read: no page but the last has room for another row.</summary>
    [Theory]
    [InlineData(3, 1)]
    [InlineData(25, 2)]
    [InlineData(60, 4)]
    public void PicturesShareTheirPages(int count, int pages)
    {
        Comparison laid = Laid();
        Layout one = laid.Layouts[0];
        var c = new Comparison(
            laid.Job,
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i =>
                        one with
                        {
                            Number = i,
                            Name = $"angle {40 + i}°, width 152.4 mm",
                        }
                    ),
            ],
            count,
            [Measure.Planks]
        );
        Drawing[] pictures =
        [
            .. CompareSheets
                .Of(c)
                .Where(s =>
                    s.Shapes.OfType<Lettering>()
                        .Any(l => l.Text.StartsWith("pictures:", StringComparison.Ordinal))
                ),
        ];
        Assert.InRange(pictures.Length, 1, pages);
        Assert.Equal(
            count - 1,
            pictures.Sum(p =>
                p.Shapes.OfType<Lettering>()
                    .Count(l => l.Bold && l.Text.Contains(": angle", StringComparison.Ordinal))
            )
        );
        Assert.All(pictures, p => Assert.Empty(SheetCheck.Faults(p)));
    }

    /// <summary>Where each is best in something, the figures are named that leave the fewest, counted by hand here.</summary>
    [Fact]
    public void FewerFiguresAreAdvisedWhereMostAreLeft()
    {
        Comparison laid = Laid();
        LaidFigures f = laid.Layouts[0].Figures!;
        // Ten that trade planks for tapers, one for one; the first of them has least waste as well.
        var c = new Comparison(
            laid.Job,
            [
                .. Enumerable
                    .Range(0, 10)
                    .Select(i => new Layout(
                        i,
                        $"lay-out {i}",
                        [],
                        f with
                        {
                            Planks = 40 + i,
                            Tapered = 20 - i,
                            WasteMm2 = 1e6 + (1e5 * i),
                        },
                        []
                    )),
            ],
            10,
            [Measure.Planks, Measure.Waste, Measure.Tapers, Measure.Bend]
        );
        Assert.Equal(10, c.Unbeaten.Count);
        string advice = CompareWords.Fewer(c, "--by")!;
        Assert.EndsWith(" --by planks,waste leaves 1.", advice, StringComparison.Ordinal);
        Assert.Null(CompareWords.Fewer(c.Seen([Measure.Planks, Measure.Waste], null), "--by"));
    }

    [Theory]
    [InlineData(60, 1, 5, 2, "about 2 min left, ")]
    [InlineData(60, 3, 5, 2, "about 30 s left, ")]
    [InlineData(300, 11, 31, 1, "about 10 min left, ")]
    [InlineData(2, 5, 10, 2, "")]
    [InlineData(60, 5, 5, 2, "")]
    public void WhatIsLeftIsTold(int seconds, int done, int all, int atOnce, string words) =>
        Assert.Equal(words, TimeLeft.Words(TimeSpan.FromSeconds(seconds), done, all, atOnce));

    private Comparison Laid() =>
        ComparedJobs.Laid(ComparedJobs.Prism(folder), new() { Angle = "44" });

    private static Comparison ByChance(Comparison laid, Random random, int count)
    {
        Job job = laid.Job;
        LaidFigures f = laid.Layouts[0].Figures!;
        int few = 5 + random.Next(40);
        return new(
            job,
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i => new Layout(
                        i,
                        $"lay-out {i}",
                        [],
                        f with
                        {
                            Planks = 100 + random.Next(few),
                            WasteMm2 = 1e6 * random.Next(1, few),
                            Tapered = random.Next(20),
                        },
                        []
                    )),
            ],
            count,
            [Measure.Planks, Measure.Waste, Measure.Tapers]
        );
    }

    public void Dispose() => folder.Dispose();
}
