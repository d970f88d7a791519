using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>The job, or null where any finding is an error; and all that was found, faults of both files together.</summary>
public sealed record ReadResult(Job? Job, ImmutableArray<Finding> Findings)
{
    public bool HasFaults => Findings.Any(f => f.Severity == Severity.Error);
}
