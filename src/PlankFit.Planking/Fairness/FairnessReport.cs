using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>How fair a table of offsets is.</summary>
/// <param name="Rows">Every row that was judged, in the table's order.</param>
/// <param name="Suspicions">Cells that do not lie fair, the worst first.</param>
/// <param name="NotJudged">Rows that could not be judged, and why.</param>
public sealed record FairnessReport(
    ImmutableArray<JudgedRow> Rows,
    ImmutableArray<Suspicion> Suspicions,
    ImmutableArray<Finding> NotJudged
)
{
    /// <summary>All that a person should know, suspicions first.</summary>
    public ImmutableArray<Finding> Findings(LengthUnit unit) =>
        [.. Suspicions.Select(s => s.ToFinding(unit)), .. NotJudged];
}

/// <summary>A row with what its picture needs.</summary>
/// <param name="SecondDifferences">At each inner point, 1/mm; two fewer than points.</param>
/// <param name="Suspicions">The row's own, the worst first.</param>
public sealed record JudgedRow(
    OffsetRow Row,
    ImmutableArray<double> SecondDifferences,
    ImmutableArray<Suspicion> Suspicions
);
