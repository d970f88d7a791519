using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Laying;

/// <summary>A sawn plank by its id, and how it fits.</summary>
public sealed record SawnRow(PlankId Id, SawnFit Fit);
