using BenchmarkDotNet.Attributes;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Benchmarks;

/// <summary>The kernel on the launch's inner layer: one point of the surface, one geodesic from keel to chine within 0.01 mm, one foot on a strip.</summary>
public class KernelBenchmarks
{
    private ISurface surface = null!;
    private Uv start;
    private Vec3 direction;
    private double length;
    private FermiStrip strip = null!;
    private Uv beside;
    private Vec3 point;

    [GlobalSetup]
    public void Setup()
    {
        HullSurface hull = Demo.Hull("survey-launch");
        surface = new ParallelSurface(hull.Surface, -14.5);
        start = new(hull.Surface.UTo / 2, 0);
        SurfacePoint p = surface.At(start.U, 0);
        direction = p.Du.Unit() + p.UnitTangent(p.Dv - (p.Dv.Dot(p.Du.Unit()) * p.Du.Unit()));
        Geodesic whole = GeodesicTracing.Trace(
            surface,
            start,
            direction,
            1,
            2500,
            1e-5,
            uv => uv.V < 1
        );
        length = whole.Crossing(uv => uv.V - 1, 0, whole.To);
        strip = new(whole);
        beside = strip.At(new(500, 75)).Uv;
        point = surface.At(beside.U, beside.V).P;
    }

    [Benchmark]
    public double Surface() => surface.At(start.U, 0.37).GaussCurvature;

    [Benchmark]
    public double GeodesicKeelToChine() =>
        GeodesicTracing.Trace(surface, start, direction, 0, length, 1e-4).To;

    [Benchmark]
    public double FootOnAStrip() => strip.Find(beside, point, new(505, 73), 1e-6).T;
}
