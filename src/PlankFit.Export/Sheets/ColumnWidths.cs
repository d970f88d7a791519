using System.Collections.Immutable;

namespace PlankFit.Export.Sheets;

/// <summary>How a list's columns share the page.</summary>
internal static class ColumnWidths
{
    /// <summary>
    /// By their shares, but that none is narrower than its widest word, so that no figure is broken: what one lacks comes from those that have more than they need, each
    /// by its part of what all have over. Where all words together are wider than the page the shares stand.
    /// </summary>
    /// <param name="least">What the widest word of each takes, mm.</param>
    public static ImmutableArray<double> Of(
        IReadOnlyList<double> shares,
        IReadOnlyList<double> least,
        double width
    )
    {
        double whole = shares.Sum();
        ImmutableArray<double> byShare = [.. shares.Select(s => s / whole * width)];
        double lacking = byShare.Zip(least, (have, needs) => Math.Max(0, needs - have)).Sum(),
            over = byShare.Zip(least, (have, needs) => Math.Max(0, have - needs)).Sum();
        return lacking == 0 || lacking > over
            ? byShare
            :
            [
                .. byShare.Zip(
                    least,
                    (have, needs) =>
                        have < needs ? needs : have - ((have - needs) * (lacking / over))
                ),
            ];
    }
}
