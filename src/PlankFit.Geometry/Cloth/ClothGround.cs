using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>A part of a surface that cloth is laid on.</summary>
/// <param name="OutMm">How far outside the part a place lies, mm, negative inside; right to first order near its edges. The surface goes on a few meshes past them.</param>
public sealed record ClothGround(ISurface Surface, Func<Uv, double> OutMm);
