using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>One mesh of a net that is laid: four threads of the same length between its corners.</summary>
/// <param name="Middle">Of it, on the cloth laid flat.</param>
/// <param name="At">Of it, in the ground's parameters.</param>
/// <param name="ShearDegrees">How far its threads are from square: more than nought where the cloth gathers along the roll, less where it draws out. It belongs to the middle.</param>
/// <param name="TurningDegrees">Of the shear, what comes of the first line's turning in the surface.</param>
/// <param name="BulgeDegrees">Of the shear, what comes of the curvature of the ground itself. The sum of the two is the shear, within what the mesh's size leaves.</param>
public readonly record struct ClothMesh(
    Vec2 Middle,
    Uv At,
    Vec3 P,
    double ShearDegrees,
    double TurningDegrees,
    double BulgeDegrees
);

/// <summary>How far a cloth is sheared at a place, degrees, and what comes of its first line's turning and what of the ground's curvature.</summary>
public readonly record struct ClothShear(double Degrees, double Turning, double Bulge);
