using System.Collections.Immutable;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Hulls;

/// <summary>The starboard bottom as lofted: the table's surface, u growing aft along the hull, v from keel to chine.</summary>
/// <param name="Surface">The lofted surface; its normal points out of the hull.</param>
/// <param name="Stations">The stations of the bottom and the u at which each stands.</param>
public sealed record HullSurface(LoftedSurface Surface, ImmutableArray<StationOnHull> Stations);

public sealed record StationOnHull(string Name, double PositionMm, double U);
