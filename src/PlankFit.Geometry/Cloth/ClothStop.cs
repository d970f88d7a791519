using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>Where a net could not be carried further.</summary>
/// <param name="ShearDegrees">The shear there, beyond what any cloth gives; null where two threads no longer met.</param>
public sealed record ClothStop(Uv At, Vec3 P, double? ShearDegrees);
