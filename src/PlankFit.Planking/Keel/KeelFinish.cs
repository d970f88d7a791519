using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Keel;

/// <summary>The finished bottom and the half-width at which it meets the finished keel.</summary>
internal sealed record KeelFinish(ISurface Bottom, KeelEdgeCurve HalfWidth);
