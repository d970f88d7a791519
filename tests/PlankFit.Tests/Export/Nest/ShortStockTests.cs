using PlankFit.Export.Stock;
using PlankFit.Export.Summary;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Where the stock is merely short nothing is spoiled, and wood is bought: no page says DO NOT SAW of it.</summary>
public sealed class ShortStockTests
{
    /// <summary>A board of 2 m, and planks of 1.5 and 2.5 m.</summary>
    private static NestPlan Short()
    {
        NestSpec spec = SawPieces.Spec(SawPieces.Board("B-01", 2000, 150)) with { Rounds = 0 };
        return NestPlanner.Of(
            spec,
            [SawPieces.Rectangle("S1-01", 1500, 150), SawPieces.Rectangle("S1-02", 2500, 150)],
            LengthUnit.Foot,
            new Progress<NestProgress>(),
            CancellationToken.None
        );
    }

    [Fact]
    public void APlankWithoutABoardIsToBuyForAndSpoilsNothing()
    {
        Finding found = Assert.Single(Short().Findings, f => f.Where == "S1-02");
        Assert.Equal("BUY FIRST", FindingsText.Of(found.Rank));
        BottomPlan plan = PrismaticPlan.Build() with
        {
            Findings =
            [
                new(Severity.Warning, "S1-07", "is refused") { Rank = Rank.DoNotSaw },
                new(Severity.Warning, "keel", "off its mitre"),
                found,
            ],
        };
        Assert.Equal(
            ["S1-07", "S1-02", "keel"],
            BeforeYouSaw.All(plan).Take(3).Select(f => f.Where)
        );
        string[] page =
        [
            .. BeforeYouSawPages
                .Of(plan)
                .SelectMany(d => d.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
        Assert.Contains("BUY FIRST", page);
        Assert.Contains(
            page,
            l => l.StartsWith("Nothing is spoiled by these: the planks", StringComparison.Ordinal)
        );
    }

    /// <summary>On the list of what to buy and on the cut sheets nothing stands above what is missing: how many pieces, and how many boards of which size would serve.</summary>
    [Fact]
    public void WhatIsMissingStandsFirstOnShoppingListAndCutSheets()
    {
        NestPlan nest = Short();
        BottomPlan plan = PrismaticPlan.Build() with { Nest = nest };
        const string Told =
            "MISSING: 1 piece of 9 mm finds no board: S1-02. 1 more board of 2500 × 150 × 9 mm would serve, sawn square;";
        foreach (
            Drawing first in new[] { ShoppingPages.Of(plan, nest)[0], CutSheets.Of(plan, nest)[0] }
        )
        {
            Lettering[] words = [.. first.Shapes.OfType<Lettering>()];
            Lettering missing = words.First(l =>
                l.Text.StartsWith("MISSING: ", StringComparison.Ordinal)
            );
            Assert.StartsWith(
                Told,
                string.Join(' ', words.SkipWhile(l => l != missing).Select(l => l.Text)),
                StringComparison.Ordinal
            );
            // But for the sheet's own head and margin, which stand in the frame's title block below.
            Assert.DoesNotContain(words, l => l.At.Y > missing.At.Y + 0.1);
            Assert.DoesNotContain(
                words,
                l => l.Text.Contains("the rack serves", StringComparison.Ordinal)
            );
        }

        Assert.Equal("1|2500|150|missing: in no list", Row(NestTables.ToBuy(plan, nest).Rows[0]));

        static string Row(System.Collections.Immutable.ImmutableArray<TableCell> cells) =>
            $"{cells[0].Number}|{cells[10].Number}|{cells[11].Number}|{cells[7].Text}";
    }

    /// <summary>A wrong figure may be what makes a plank longer than any board.</summary>
    [Fact]
    public void WhatMayBeTheCauseOfAShortageIsStillNotToBeSawnBy()
    {
        Finding cause = new(Severity.Warning, "offsets.csv", "a figure") { IsCause = true };
        Assert.Equal(
            Rank.DoNotSaw,
            Finding.CausesRaised([cause, .. Short().Findings]).First(f => f.IsCause).Rank
        );
    }
}
