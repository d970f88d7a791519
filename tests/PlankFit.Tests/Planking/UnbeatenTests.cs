using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Comparing;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>What nothing beats, against the definition asked of every pair.</summary>
public sealed class UnbeatenTests
{
    private static bool Beats(ImmutableArray<double> a, ImmutableArray<double> b) =>
        a.Zip(b).All(p => p.First <= p.Second) && a.Zip(b).Any(p => p.First < p.Second);

    /// <summary>Few different values, so that there are ties of every kind.</summary>
    [Fact]
    public void WhatIsLeftIsWhatNoneOfAllTheOthersBeats() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[0, 40])
            .SelectMany(size =>
                Gen.Int[0, 4]
                    .Select(i => i == 4 ? double.PositiveInfinity : i)
                    .Array[size.Item1]
                    .Select(a => a.ToImmutableArray())
                    .Array[size.Item2]
            )
            .Sample(
                things =>
                    Assert.Equal(
                        Enumerable
                            .Range(0, things.Length)
                            .Where(i => !things.Any(other => Beats(other, things[i]))),
                        Unbeaten.Of(things)
                    ),
                iter: LongRuns.Of(300, 20_000)
            );

    [Fact]
    public void OfThingsThatAreAlikeNoneBeatsAnother() =>
        Assert.Equal(
            [0, 1, 3],
            Unbeaten.Of([
                [1, 2],
                [1, 2],
                [1, 3],
                [0, 9],
            ])
        );

    [Fact]
    public void OfNothingNothingIsLeft() => Assert.Empty(Unbeaten.Of([]));

    [Fact]
    public void WhatIsNoNumberIsRefused() =>
        Assert.Contains(
            "number 2",
            Assert
                .Throws<ArgumentException>(() =>
                    Unbeaten.Of([
                        [1],
                        [double.NaN],
                    ])
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void ThingsOfAnotherKindAreRefused() =>
        Assert.Throws<ArgumentException>(() =>
            Unbeaten.Of([
                [1],
                [1, 2],
            ])
        );
}
