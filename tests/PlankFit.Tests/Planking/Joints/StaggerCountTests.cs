using System.Collections.Immutable;
using PlankFit.Planking.Joints;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>
/// How many ways there are to butt a few planks of 4.0 m from stock of 2.4 m, one butt each on a grid of 0.1 m: the exact counts were found by brute force outside
/// this code, in another language. Here every choice is enumerated and put to the planner's own rule check.
/// </summary>
public sealed class StaggerCountTests
{
    [Theory]
    [InlineData(0.6, 0.3, 2, 12)]
    [InlineData(0.6, 0.3, 3, 0)]
    [InlineData(0.6, 0.2, 3, 4)]
    [InlineData(0.6, 0.2, 4, 2)]
    [InlineData(0.6, 0.2, 5, 0)]
    [InlineData(0.6, 0, 3, 28)]
    [InlineData(0.6, 0, 4, 62)]
    [InlineData(0.6, 0, 5, 140)]
    [InlineData(0.4, 0.2, 2, 30)]
    [InlineData(0.4, 0.2, 3, 42)]
    [InlineData(0.4, 0.2, 4, 58)]
    [InlineData(0.4, 0.2, 5, 62)]
    public void WaysAreAsManyAsBruteForceFound(
        double nextM,
        double oneBetweenM,
        int planks,
        int ways
    )
    {
        ImmutableArray<JointRule> rules = Rules(nextM, oneBetweenM);
        ImmutableArray<JointScheme> each = Each();
        Assert.Equal(9, each.Length);
        Assert.Equal(ways, (int)Count(each, rules, planks, []));

        SchemeChoice choice = SchemeSearch.Least(
            [.. Enumerable.Repeat(each, planks)],
            rules,
            TestContext.Current.CancellationToken
        );
        Assert.True(choice.Complete);
        Assert.Equal(ways > 0, choice.Found);
    }

    /// <summary>Where there is no way the first plank without a place is the one whose addition leaves none: the third at 0.6 and 0.3 m, the fifth at 0.6 and 0.2.</summary>
    [Theory]
    [InlineData(0.6, 0.3, 3, 2)]
    [InlineData(0.6, 0.2, 5, 4)]
    [InlineData(0.6, 0.2, 8, 4)]
    public void TheFirstPlankWithoutAPlaceIsNamed(
        double nextM,
        double oneBetweenM,
        int planks,
        int stuck
    )
    {
        SchemeChoice choice = SchemeSearch.Least(
            [.. Enumerable.Repeat(Each(), planks)],
            Rules(nextM, oneBetweenM),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(stuck, choice.Stuck);
        Assert.Empty(choice.Ways);
    }

    /// <summary>Of the 62 ways at 0.4 and 0.2 m the least uneven is found; its unevenness is what enumeration gives.</summary>
    [Fact]
    public void TheWayOfLeastWasteIsTheOneThatEnumerationFinds()
    {
        ImmutableArray<JointRule> rules = Rules(0.4, 0.2);
        ImmutableArray<JointScheme> each = Each();
        double least = double.PositiveInfinity;
        foreach (ImmutableArray<JointScheme> all in All(each, rules, 5, []))
        {
            // Two pieces of a and 4000 - a: each is off their mean by |a - 2000|.
            least = Math.Min(least, all.Sum(w => 2 * Math.Abs(w.Joints[0].AtMm - 2000)));
        }

        SchemeChoice choice = SchemeSearch.Least(
            [.. Enumerable.Repeat(each, 5)],
            rules,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(10, choice.Pieces);
        Assert.Equal(least, choice.WasteMm, 6);
    }

    private static ImmutableArray<JointScheme> Each()
    {
        JointStock stock = new(2400, 1600, JointKind.Butt, 8, ButtCut.Square, [], null, 0, 100, []);
        ImmutableArray<JointPlace> grid =
        [
            .. Enumerable
                .Range(1, 39)
                .Select(k => new JointPlace(100 * k, 90, 100 * k, 100 * k, null, false)),
        ];
        return [.. PlankSchemes.Of(new(grid, 0, 4000, true), stock, 1)];
    }

    private static ImmutableArray<JointRule> Rules(double nextM, double oneBetweenM) =>
        [
            new(JointRuleKind.NextPlank, 1000 * nextM, null, "test"),
            .. oneBetweenM > 0
                ? new[]
                {
                    new JointRule(JointRuleKind.OneBetween, 1000 * oneBetweenM, null, "test"),
                }
                : [],
        ];

    private static long Count(
        ImmutableArray<JointScheme> each,
        ImmutableArray<JointRule> rules,
        int planks,
        ImmutableArray<JointScheme> taken
    ) => All(each, rules, planks, taken).LongCount();

    private static IEnumerable<ImmutableArray<JointScheme>> All(
        ImmutableArray<JointScheme> each,
        ImmutableArray<JointRule> rules,
        int planks,
        ImmutableArray<JointScheme> taken
    )
    {
        if (taken.Length == planks)
        {
            return Enumerable
                .Range(0, planks)
                .All(i =>
                    Enumerable
                        .Range(0, i)
                        .All(j => JointRuleCheck.Allows(rules, taken[j], taken[i], i - j))
                )
                ? [taken]
                : [];
        }

        return each.SelectMany(w => All(each, rules, planks, taken.Add(w)));
    }
}
