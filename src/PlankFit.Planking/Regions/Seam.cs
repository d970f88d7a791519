using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Regions;

/// <summary>Where a line crosses the boundary of a layer's region.</summary>
internal readonly record struct EdgeCrossing(double S, Uv Uv, PanelEdge Edge, double Lap);

/// <summary>A geodesic and the stretch of it that lies inside the region, inboard to outboard.</summary>
internal sealed record Seam(Geodesic Line, EdgeCrossing In, EdgeCrossing Out)
{
    public double LengthMm => Out.S - In.S;

    public double MiddleS => (In.S + Out.S) / 2;
}
