using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.Jobs;

/// <summary>The job, or null where any finding is an error; and all that was found, faults of both files together.</summary>
public sealed record ReadResult(Job? Job, ImmutableArray<Finding> Findings)
{
    /// <summary>Where the table of offsets stands on the disk; null where the job was read from memory.</summary>
    public string? OffsetsPath { get; init; }

    /// <summary>The table's name as the job has it; null where the job was read from memory.</summary>
    public string? OffsetsFile { get; init; }

    /// <summary>The table's text as it was read; null where the job was read from memory.</summary>
    public string? OffsetsText { get; init; }

    /// <summary>Where the job file says what.</summary>
    public JobPlaces Places { get; init; } = JobPlaces.None;

    /// <summary>What was found later of the job, with the places in its file.</summary>
    public ImmutableArray<Finding> Placed(ImmutableArray<Finding> findings) =>
        [.. findings.Select(Places.Placed)];

    public bool HasFaults => Findings.Any(f => f.Severity == Severity.Error);
}
