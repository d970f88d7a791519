using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Export.Views;

/// <summary>The parameters of points that lie on a layer's surface: each search starts from the nearest of those already found.</summary>
internal sealed class UvFinder
{
    /// <summary>A point further off the surface than this was not on it, mm.</summary>
    private const double OffMm = 0.5;

    /// <summary>A start so near needs no better, mm.</summary>
    private const double NearMm = 60;

    private readonly ISurface surface;
    private readonly double toleranceMm;
    private readonly List<(Vec3 Point, Uv Uv)> found = [];
    private (Vec3 Point, Uv Uv) last;

    /// <param name="toleranceMm">How far from square a foot may be left.</param>
    public UvFinder(ISurface surface, ImmutableArray<StationOnHull> stations, double toleranceMm)
    {
        this.surface = surface;
        this.toleranceMm = toleranceMm;
        foreach (StationOnHull station in stations)
        {
            var uv = new Uv(station.U, 0);
            Vec3 p = surface.At(uv.U, uv.V).P;
            if (double.IsFinite(p.X + p.Y + p.Z))
            {
                found.Add((p, uv));
            }
        }

        last = found[^1];
    }

    /// <exception cref="InvalidOperationException">The point does not lie on the surface.</exception>
    public Uv Of(Vec3 point)
    {
        (Vec3 Point, Uv Uv) near =
            last.Point.ChordTo(point) < NearMm ? last : found.MinBy(f => f.Point.ChordTo(point));
        if (
            !ClosestPoint.TryFind(
                surface,
                point,
                near.Uv,
                toleranceMm,
                out ClosestPoint.Result foot
            )
            || Math.Abs(foot.HeightMm) > OffMm
        )
        {
            throw new InvalidOperationException($"{point} was not found on its layer's surface.");
        }

        last = (point, foot.Uv);
        if (near.Point.ChordTo(point) > NearMm)
        {
            found.Add(last);
        }

        return foot.Uv;
    }
}
