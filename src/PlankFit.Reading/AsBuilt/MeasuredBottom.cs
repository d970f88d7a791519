using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.AsBuilt;

/// <summary>The bottom that was measured.</summary>
/// <param name="IsTrusted">The job has [trust]: the hull is adjusted to whatever a tape can read, each as often as it was read.</param>
public sealed record MeasuredBottom(Panel Panel, bool IsTrusted);
