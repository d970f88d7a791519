using System.Collections.Immutable;

namespace PlankFit.Export.Checks;

/// <summary>
/// Finds the blank that something was read in. One seam may be asked for twice, as what to tape first and in its layer's turn, and should then read otherwise: by the hull that is
/// thought likeliest in the one, by the marks of what is laid in the other.
/// </summary>
public sealed class BlankSearch(IEnumerable<BlankGroup> sheet)
{
    private readonly ImmutableDictionary<BlankId, ImmutableArray<CheckBlank>> all = sheet
        .SelectMany(g => g.Blanks)
        .GroupBy(b => b.Id)
        .ToImmutableDictionary(g => g.Key, g => g.ToImmutableArray());

    /// <param name="id">Whichever reading of it.</param>
    /// <param name="shouldMm">What it should have said; null where that is not known, for the first of the sheet.</param>
    /// <returns>The one that should say the nearest to that; null where the sheet asks for no such thing.</returns>
    public CheckBlank? Of(BlankId id, double? shouldMm) =>
        all.TryGetValue(id with { Time = 1 }, out ImmutableArray<CheckBlank> same)
            ? same.MinBy(b => shouldMm is { } then ? Math.Abs(b.ShouldMm - then) : 0)! with
            {
                // A row of the file is of both.
                IsTakenUp = same.Any(b => b.IsTakenUp),
            }
            : null;
}
