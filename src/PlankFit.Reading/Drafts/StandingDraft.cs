using System.Collections.Immutable;

namespace PlankFit.Reading;

/// <summary>[standing] as read, before the file that it names.</summary>
public sealed record StandingDraft(
    string? MeasuredPath,
    Place MeasuredAt,
    string? From,
    Place FromAt,
    string? CutPath,
    Place CutAt,
    ImmutableArray<(string Text, Place At)> Fitted
)
{
    public static readonly StandingDraft None = new(
        null,
        default,
        null,
        default,
        null,
        default,
        []
    );
}
