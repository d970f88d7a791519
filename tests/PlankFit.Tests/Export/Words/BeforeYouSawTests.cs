using PlankFit.Export.Summary;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Words;

/// <summary>What is told, and in which order: by what it costs, and nothing is left out.</summary>
public sealed class BeforeYouSawTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build();

    [Fact]
    public void WhatCostsMostIsToldFirstWhateverTheOrderOfTheWork()
    {
        Finding[] found =
        [
            new(Severity.Note, "hull", "a note"),
            new(Severity.Warning, "chine, 0", "a corner") { Rank = Rank.Know },
            new(Severity.Warning, "keel", "off its mitre"),
            new(Severity.Warning, "S1-07", "is refused") { Rank = Rank.DoNotSaw },
            new(Severity.Error, "S1-02", "is no shape"),
        ];
        Assert.Equal(
            ["S1-02", "S1-07", "keel", "S1-18", "chine, 0", "hull"],
            BeforeYouSaw.All(Plan with { Findings = [.. found] }).Select(f => f.Where)
        );
    }

    [Fact]
    public void TheTerminalTellsTheFirstSevenAndCountsTheRest()
    {
        Finding[] found =
        [
            .. Enumerable.Range(0, 5).Select(i => new Finding(Severity.Note, "", $"note {i}")),
            .. Enumerable
                .Range(0, 4)
                .Select(i => new Finding(Severity.Warning, $"S1-0{i}", $"look {i}")),
            new(Severity.Warning, "S1-09", "refused") { Rank = Rank.DoNotSaw },
        ];
        Assert.Equal(
            [
                "DO NOT SAW",
                "  S1-09: refused",
                "SAW ONLY AFTER",
                "  S1-00: look 0",
                "  S1-01: look 1",
                "  S1-02: look 2",
                "  S1-03: look 3",
                "KNOW",
                "  note 0",
                "  note 1",
                "and 3 more, in before-you-saw.pdf: 3 to know",
            ],
            FindingsText.Ranked(found, FindingsText.ToldFirst, "before-you-saw.pdf")
        );
    }

    [Fact]
    public void AMasterThatIsSawnIsNotToBeMarkedAnyMore() =>
        Assert.DoesNotContain(
            BeforeYouSaw.All(
                Plan with
                {
                    Layers =
                    [
                        .. Plan.PlankLayers.Select(l =>
                            l with
                            {
                                Starboard =
                                [
                                    .. l.Starboard.Select(p => p with { IsFitted = true }),
                                ],
                            }
                        ),
                    ],
                }
            ),
            f => f.Message.Contains("master", StringComparison.Ordinal)
        );

    /// <summary>However many and however long, each stands on a page, whole and legible.</summary>
    [Fact]
    public void EveryFindingStandsOnThePages()
    {
        string words = string.Join(' ', Enumerable.Repeat("look at the planks and mend them", 20));
        BottomPlan plan = Plan with
        {
            Findings =
            [
                .. Enumerable
                    .Range(0, 60)
                    .Select(i => new Finding(
                        (Severity)(i % 3),
                        $"place{i}",
                        i % 7 == 0 ? words : "short"
                    )),
            ],
        };
        IReadOnlyList<Drawing> pages = BeforeYouSawPages.Of(plan);
        Assert.Empty(pages.SelectMany(p => SheetCheck.Faults(p)));
        string[] letters =
        [
            .. pages.SelectMany(p => p.Shapes.OfType<Lettering>()).Select(l => l.Text),
        ];
        Assert.All(Enumerable.Range(0, 60), i => Assert.Contains($"place{i}", letters));
        Assert.Equal(3, letters.Count(l => l is "DO NOT SAW" or "SAW ONLY AFTER" or "KNOW"));
    }
}
