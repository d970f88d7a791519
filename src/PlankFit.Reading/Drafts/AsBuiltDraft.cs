using System.Collections.Immutable;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Drafts;

/// <summary>[as-built] as read, before the file that it names.</summary>
public sealed record AsBuiltDraft(
    string? MeasuredPath,
    Place MeasuredAt,
    string? From,
    Place FromAt,
    string? SawnPath,
    Place SawnAt,
    ImmutableArray<(string Text, Place At)> Fitted
)
{
    /// <summary>Cells that may move as far as the readings have them, and where the job says so.</summary>
    public ImmutableArray<(string Text, Place At)> AsMeasured { get; init; } = [];

    /// <summary>The job names no record of sawn planks, and one with the usual name lies beside it.</summary>
    public bool SawnFound { get; init; }

    public static readonly AsBuiltDraft None = new(null, default, null, default, null, default, []);
}
