using System.Collections.Immutable;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <param name="Begin">Rows to begin with.</param>
/// <param name="Start">Prices to begin with, of a like problem; by area where there are none.</param>
/// <param name="Bounded">What the bound is for: how many of each item, no more than are asked for, out of which boards.</param>
/// <param name="Rounds">Stop after so many.</param>
/// <param name="Below">Of plans that cost no less none is wanted.</param>
/// <param name="Slack">Rows near to be worth while are added: this part of what the mix is below that.</param>
/// <param name="Fine">Go on until mix and bound are very near each other.</param>
/// <param name="OnlyMix">The bound is of no use beyond the search, and no effort is spent on it or on more than a few rows near to be worth while.</param>
internal sealed record ColumnTask(
    IEnumerable<Row> Begin,
    MasterPrices? Start,
    Share Bounded,
    int Rounds,
    double Below,
    double Slack = 0,
    bool Fine = false,
    bool OnlyMix = false
);

/// <param name="Centre">Prices at which the bound was found.</param>
/// <param name="Prices">Of the mix.</param>
/// <param name="Bound">No mix of what it is for costs less, in fractions or whole; noughts where none was found.</param>
/// <param name="Whole">The search came to its end.</param>
internal sealed record ColumnResult(
    MasterMix Mix,
    MasterPrices Centre,
    MasterPrices Prices,
    Bounds Bound,
    bool Whole
)
{
    /// <summary>Boards that are in the bound only and yield more than they cost, the dearest first: with them the mix would be cheaper.</summary>
    public ImmutableArray<BoardType> Paying { get; init; } = [];
}
