namespace PlankFit.Planking;

/// <summary>A sawn plank by its id, and how it fits.</summary>
public sealed record CutRow(PlankId Id, CutFit Fit);
