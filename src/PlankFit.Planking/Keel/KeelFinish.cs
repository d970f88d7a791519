using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The finished bottom and the half-width at which it meets the finished keel.</summary>
internal sealed record KeelFinish(ISurface Bottom, KeelEdgeCurve HalfWidth);
