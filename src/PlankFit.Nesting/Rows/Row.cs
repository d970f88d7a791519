using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>Things in order along a strip, each in its pose.</summary>
/// <param name="Items">From the strip's beginning.</param>
/// <param name="FromMm">Least x of each.</param>
/// <param name="HeightMm">Of the highest.</param>
internal sealed record Row(
    ImmutableArray<int> Items,
    ImmutableArray<int> Poses,
    ImmutableArray<double> FromMm,
    double LengthMm,
    double HeightMm
)
{
    /// <summary>The same things in whatever order.</summary>
    public string Key { get; } = KeyOf(Items);

    public static string KeyOf(IEnumerable<int> items) =>
        string.Concat(items.Order().Select(i => (char)(i + 1)));
}
