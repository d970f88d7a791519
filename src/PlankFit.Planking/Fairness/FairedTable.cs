using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Fairness;

/// <summary>A table after fairing, with every change that was made to it.</summary>
/// <param name="Moves">In the table's order; empty where nothing had to move.</param>
/// <param name="Findings">Rows left as they were, and why.</param>
public sealed record FairedTable(
    OffsetTable Table,
    ImmutableArray<FairingMove> Moves,
    ImmutableArray<Finding> Findings
);

/// <summary>One cell that fairing changed.</summary>
/// <param name="Station">The station's name; StationIndex its place in the table.</param>
public sealed record FairingMove(
    string Line,
    Measure Measure,
    string Station,
    int StationIndex,
    double OldMm,
    double NewMm
)
{
    public double MoveMm => NewMm - OldMm;
}
