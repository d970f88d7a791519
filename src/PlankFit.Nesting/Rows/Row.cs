using System.Collections.Immutable;

namespace PlankFit.Nesting.Rows;

/// <summary>Things in order along a strip, each in its pose.</summary>
/// <param name="Items">From the strip's beginning.</param>
/// <param name="Parts">The items of single pieces that these are made of.</param>
/// <param name="FromMm">Least x of each.</param>
/// <param name="HeightMm">Of the highest.</param>
internal sealed record Row(
    ImmutableArray<int> Items,
    ImmutableArray<int> Parts,
    ImmutableArray<int> Poses,
    ImmutableArray<double> FromMm,
    double LengthMm,
    double HeightMm
)
{
    /// <summary>Of each, the poses that its ends are turned to; none where all lie as they are asked for.</summary>
    public ImmutableArray<TurnedTo> Turned { get; init; } = [];

    /// <summary>The same things in whatever order.</summary>
    public string Key { get; } = KeyOf(Items);

    /// <summary>Of no part are there more than a number of it.</summary>
    public bool IsWithin(IReadOnlyList<int> numbers)
    {
        foreach (int part in Parts)
        {
            if (Parts.Count(p => p == part) > numbers[part])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>What its parts are worth together.</summary>
    public double Worth(double[] worths) => Parts.Sum(p => worths[p]);

    public static string KeyOf(IEnumerable<int> items) =>
        string.Concat(items.Order().Select(i => (char)(i + 1)));
}

/// <summary>The poses before and after a thing in a row to whose ends its own are turned, by their numbers in <see cref="EndTable"/>; null where an end is as it is.</summary>
internal readonly record struct TurnedTo(int? Before, int? After);
