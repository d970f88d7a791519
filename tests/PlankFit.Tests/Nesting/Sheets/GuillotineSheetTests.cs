using System.Collections.Immutable;
using CsCheck;
using PlankFit.Tests.Nesting.Sheets.Guillotine;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting.Sheets;

/// <summary>Against a search through every cut at every whole millimetre, and by cases worked by hand.</summary>
public sealed class GuillotineSheetTests
{
    private static readonly Gen<(int L, int W, int Kerf, ImmutableArray<SheetItem> Items)> Small =
        Gen.Select(
                Gen.Int[6, 11],
                Gen.Int[4, 9],
                Gen.Int[0, 1],
                Gen.Select(Gen.Int[1, 7], Gen.Int[1, 5], Gen.Int[1, 30], Gen.Int[1, 3])
                    .Select((l, w, v, most) => new SheetItem(l, w, v, most))
                    .Array[1, 4]
            )
            .Select((l, w, k, items) => (l, w, k, items.ToImmutableArray()));

    [Fact]
    public void NoWayAtWholeMillimetresIsWorthMore() =>
        Small.Sample(
            s =>
            {
                SheetCutting cutting = Best(s.L, s.W, s.Items, s.Kerf);
                Assert.Empty(SheetLaws.Broken(s.L, s.W, s.Items, s.Kerf, cutting));
                Assert.True(cutting.Proved);
                Assert.Equal(new EveryCut(s.Items, s.Kerf).Best(s.L, s.W), cutting.Value);
            },
            iter: LongRuns.Of(75, 300)
        );

    [Fact]
    public void NoWayAtWholeMillimetresIsWorthMoreWhereAnyNumberMayBeCut() =>
        Small.Sample(
            s =>
            {
                ImmutableArray<SheetItem> any = [.. s.Items.Select(i => i with { Most = null })];
                SheetCutting cutting = Best(s.L, s.W, any, s.Kerf);
                Assert.Empty(SheetLaws.Broken(s.L, s.W, any, s.Kerf, cutting));
                Assert.True(cutting.Proved);
                Assert.Equal(EveryCut.AnyNumber(any, s.Kerf, s.L, s.W), cutting.Value);
            },
            iter: 300
        );

    /// <summary>Four of 600 in 2400 want three kerfs more; in inches, no part of a 64th is lost.</summary>
    [Theory]
    [InlineData(2409, 4)]
    [InlineData(2408.9999, 3)]
    public void KerfsAreBetweenAndNotAtTheEdges(double length, int pieces) =>
        Assert.Equal(
            pieces,
            Best(length, 100, [new SheetItem(600, 100, 1, null)], 3).Places.Length
        );

    [Fact]
    public void SixtyFourthsOfAnInchFitExactly()
    {
        const double Sixty4Th = 25.4 / 64;
        // 96 in: seven pieces of 13 39/64 and six kerfs of 1/8 are 96 1/64, of 13 38/64 are 95 58/64.
        ImmutableArray<SheetItem> Items(int sixtyFourths) =>
            [new SheetItem(sixtyFourths * Sixty4Th, 48 * 25.4, 1, null)];
        Assert.Equal(7, Best(96 * 25.4, 48 * 25.4, Items((13 * 64) + 38), 25.4 / 8).Places.Length);
        Assert.Equal(6, Best(96 * 25.4, 48 * 25.4, Items((13 * 64) + 39), 25.4 / 8).Places.Length);
        // 6144/64 less 48/64 of kerf, a seventh of it: 870 6/7. And exactly filled: 7 of 870/64 and 48/64 in 6138/64.
        Assert.Equal(
            7,
            Best(
                6138 * Sixty4Th,
                25.4,
                [new(870 * Sixty4Th, 25.4, 1, null)],
                8 * Sixty4Th
            ).Places.Length
        );
    }

    /// <summary>Round a hole in the middle five rectangles fill 3 by 3, and no cut from edge to edge parts them.</summary>
    [Fact]
    public void APinwheelIsNotCut()
    {
        ImmutableArray<SheetItem> items = [new(2, 1, 2, 2), new(1, 2, 2, 2), new(1, 1, 1, 1)];
        SheetCutting cutting = Best(3, 3, items, 0);
        Assert.Empty(SheetLaws.Broken(3, 3, items, 0, cutting));
        Assert.True(cutting.Proved);
        Assert.Equal(new EveryCut(items, 0).Best(3, 3), cutting.Value);
        Assert.True(cutting.Value < 9);
    }

    [Fact]
    public void WhatDoesNotFitOrIsWorthNothingIsLeftOut()
    {
        ImmutableArray<SheetItem> items =
        [
            new(101, 10, 5, null),
            new(10, 51, 5, 2),
            new(10, 10, 0, null),
            new(10, 10, -1, 3),
            new(10, 10, 3, 0),
        ];
        SheetCutting cutting = Best(100, 50, items, 3);
        Assert.Empty(cutting.Places);
        Assert.Equal(0, cutting.Value);
        Assert.True(cutting.Proved);
    }

    /// <summary>Many pieces, each wanted once, of lengths no two alike: more than can be gone through. The answer keeps the laws, and its bound holds.</summary>
    [Fact]
    public void ASheetOfManyPiecesGivesAnAnswerAndABound()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        ImmutableArray<SheetItem> items = Planks(Long.IsAsked ? 40 : 28);
        SheetCutting cutting = Best(2440, 1220, items, 3);
        Assert.Empty(SheetLaws.Broken(2440, 1220, items, 3, cutting));
        Assert.True(cutting.Value <= 2440 * 1220);
        Assert.True(
            cutting.Value > 0.92 * cutting.UpperBound,
            $"{cutting.Value} of at most {cutting.UpperBound}"
        );
        if (!Long.IsAsked)
        {
            return;
        }

        SheetCutting again = Best(2440, 1220, items, 3);
        Assert.Equal(cutting.Places.AsEnumerable(), again.Places);
        Assert.Equal(cutting.UpperBound, again.UpperBound);
    }

    [Fact]
    public void AStopGivesTheBestFound()
    {
        ImmutableArray<SheetItem> items = Planks(40);
        SheetCutting cutting = GuillotineSheet.Best(
            2440,
            1220,
            items,
            3,
            GuillotineSheet.UsualEffort,
            new CancellationToken(canceled: true)
        );
        Assert.Empty(SheetLaws.Broken(2440, 1220, items, 3, cutting));
        Assert.NotEmpty(cutting.Places);
    }

    [Theory]
    [InlineData(0, 10, 3, 5, 5, 1)]
    [InlineData(10, double.NaN, 3, 5, 5, 1)]
    [InlineData(10, 10, -1, 5, 5, 1)]
    [InlineData(10, 10, 3, -5, 5, 1)]
    [InlineData(10, 10, 3, 5, double.PositiveInfinity, 1)]
    [InlineData(10, 10, 3, 5, 5, double.NaN)]
    public void WhatIsNoLengthIsRefused(
        double length,
        double width,
        double kerf,
        double itemLength,
        double itemWidth,
        double value
    ) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Best(length, width, [new(itemLength, itemWidth, value, null)], kerf)
        );

    /// <summary>Worth their area, each once.</summary>
    private static ImmutableArray<SheetItem> Planks(int count) =>
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                {
                    double l = 612.3 + (17.171 * ((i * 7) % count)),
                        w = 120 + (1.37 * ((i * 11) % 23));
                    return new SheetItem(l, w, l * w, 1);
                }),
        ];

    private static SheetCutting Best(
        double length,
        double width,
        ImmutableArray<SheetItem> items,
        double kerf
    ) =>
        GuillotineSheet.Best(
            length,
            width,
            items,
            kerf,
            GuillotineSheet.UsualEffort,
            TestContext.Current.CancellationToken
        );
}
