using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Drafts;

/// <summary>[nest] as read, before the files that it names.</summary>
/// <param name="Spec">Without boards.</param>
/// <param name="Stock">Files of boards on hand.</param>
/// <param name="Buy">Files of what may be bought.</param>
public sealed record NestDraft(
    NestSpec Spec,
    ImmutableArray<(string Text, Place At)> Stock,
    ImmutableArray<(string Text, Place At)> Buy
)
{
    /// <summary>All files, in the order in which they are read.</summary>
    public IEnumerable<(string Text, Place At)> Files => Stock.Concat(Buy);
}
