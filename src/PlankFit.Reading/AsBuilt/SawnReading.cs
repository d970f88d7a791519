using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Reading.AsBuilt;

/// <summary>What a record of sawn planks holds; or the finding that says why it is not taken, and then no plank.</summary>
/// <param name="Older">It was written before records had a checksum: only its figures vouch for it.</param>
public sealed record SawnReading(ImmutableArray<SawnPlank> Planks, Finding? Fault, bool Older)
{
    /// <summary>The boards that they came from, as far as the plan of cutting was at hand.</summary>
    public ImmutableArray<BoardSawnInto> Boards { get; init; } = [];

    public static SawnReading Refused(string where, string why) =>
        new([], new(Severity.Error, where, why), false);
}
