using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Jobs;

/// <summary>A board that planks on the record were sawn out of, by the plan of cutting that they were sawn by: it is in the rack no more, its offcuts are.</summary>
/// <param name="Board">B-04; B-04.2 for one of several.</param>
/// <param name="Planks">All that the plan had in it, sawn or not.</param>
public sealed record BoardSawnInto(
    string Board,
    ImmutableArray<PlankId> Planks,
    ImmutableArray<OffcutLeft> Offcuts
)
{
    /// <summary>The plan of cutting has it from what is to be bought, and not from the rack; the record says nothing of it.</summary>
    public bool ToBuy { get; init; }
}

/// <summary>What is left of a board, mm.</summary>
/// <param name="IsSheet">Of a sheet, whose grain may run across.</param>
public sealed record OffcutLeft(
    string Id,
    bool IsSheet,
    bool GrainAcross,
    double LengthMm,
    double WidthMm,
    double ThicknessMm,
    string? Species,
    string? Grade
);
