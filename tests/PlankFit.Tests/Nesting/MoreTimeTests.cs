using System.Collections.Immutable;
using PlankFit.Export.Stock;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Nesting;

/// <summary>What a search that was ended early says of more time. No clock is in it: time is over when it has been asked for so many times.</summary>
public sealed class MoreTimeTests
{
    /// <summary>Three of 1300 in boards of 2400: three boards, though their area would go into two; a search that is let be proves it, one that is ended at once says what is worth trying.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(int.MaxValue, false)]
    public void OnlyASearchThatWasEndedAsksForMore(int looks, bool asks)
    {
        NestSpec spec = SawPieces.Spec(SawPieces.Board("B-01", 2400, 100) with { Count = 3 }) with
        {
            Rounds = null,
            Seconds = 10,
        };
        using var patience = new CountedPatience(looks);
        NestPlan plan = NestPlanner.Until(
            spec,
            [.. Enumerable.Range(1, 3).Select(i => SawPieces.Rectangle($"S1-0{i}", 1300, 100))],
            LengthUnit.Millimetre,
            new ClassicalCases.Nowhere(),
            patience
        );
        NestedMaterial material = Assert.Single(plan.Materials);
        Assert.Equal(3, plan.Boards.Length);
        Assert.Equal(asks, material.MoreMayHelp);
        Assert.Equal(
            asks ? $"gap {NestWords.AtMost(material.GapPercent)}: 30 s more is worth trying" : "",
            NestWords.More(spec, material)
        );
    }

    /// <summary>Three times what it had, to the next ten, and ten at the least: 3 times 7 are 21, which is 30.</summary>
    [Theory]
    [InlineData(0.5, 100, "gap 10.0 %: 10 s more is worth trying")]
    [InlineData(3, 100, "gap 10.0 %: 10 s more is worth trying")]
    [InlineData(7, 100, "gap 10.0 %: 30 s more is worth trying")]
    [InlineData(10, 100, "gap 10.0 %: 30 s more is worth trying")]
    [InlineData(60, 100, "gap 10.0 %: 180 s more is worth trying")]
    [InlineData(60, 0, "180 s more is worth trying")]
    [InlineData(60, 110, "")]
    public void SoMuchMore(double seconds, double bound, string told)
    {
        NestSpec spec = NestSpec.Usual with { Seconds = seconds, Rounds = null };
        NestedMaterial material = new("9 mm", [], 110, bound, null, null, 0) { MoreMayHelp = true };
        Assert.Equal(told, NestWords.More(spec, material));
        Assert.Equal("", NestWords.More(spec, material with { MoreMayHelp = false }));
        Assert.Equal(
            told.Length == 0 ? ""
                : bound == 0 ? "more rounds are worth trying"
                : "gap 10.0 %: more rounds are worth trying",
            NestWords.More(spec with { Rounds = 5 }, material)
        );
    }

    /// <summary>
    /// Six thousand boards, ten things: all eighteen orders are a million looks, and are tried whether time is over or not. With a thousand things one order is
    /// six million, and there is no second: the best of some orders is told as that.
    /// </summary>
    [Theory]
    [InlineData(10, true)]
    [InlineData(1000, false)]
    public void SquareCutsEndWhenTimeIsOver(int pieces, bool whole)
    {
        NestSpec spec = SawPieces.Spec([
            .. Enumerable
                .Range(1, 6000)
                .Select(i =>
                    SawPieces.Board(
                        FormattableString.Invariant($"B-{i:0000}"),
                        1000 + (i % 100),
                        100
                    )
                ),
        ]);
        ImmutableArray<SawPiece> asked =
        [
            .. Enumerable
                .Range(1, pieces)
                .Select(i =>
                    SawPieces.Rectangle(FormattableString.Invariant($"S1-{i:00}"), 900, 100)
                ),
        ];
        using var patience = new CountedPatience(1);
        SquareCutting cutting = SquareCuts.Of(spec, asked, spec.CostOf, patience);
        Assert.Equal(whole, cutting.IsWhole);
        Assert.Empty(cutting.LeftOut);
        Assert.Equal(pieces, cutting.Boards.Length);
    }
}
