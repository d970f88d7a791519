using CsCheck;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Laws of the kernel on hull-like surfaces by chance, and on parallels of them: a failure prints its seed and its recipe.</summary>
public sealed class RandomLoftTests
{
    private const int Hulls = 1000;

    [Fact]
    public void DerivativesAreThoseOfThePositions() =>
        RandomLoft.Gen.Sample(
            recipe =>
            {
                (LoftedSurface table, ISurface layer) = Made(recipe);
                foreach (double part in new[] { 0.03, 0.21, 0.5, 0.77, 0.99 })
                {
                    double u = table.UFrom + (part * (table.UTo - table.UFrom));
                    foreach (double t in new[] { 0.05, 0.5, 1 })
                    {
                        Uv at = new(u, t * table.UpperV(u));
                        Differences.Hold(table, at);
                        Differences.Hold(layer, at);
                    }
                }
            },
            iter: Hulls
        );

    [Fact]
    public void GeodesicsAreThoseOfAStepperInSpace() =>
        RandomLoft.Gen.Sample(
            recipe =>
            {
                (LoftedSurface table, ISurface layer) = Made(recipe);
                foreach ((double part, double degrees) in new[] { (0.3, 45.0), (0.6, 120) })
                {
                    (Geodesic g, Uv start, Vec3 d) = AcrossTheBottom(table, layer, part, degrees);
                    Vec3 coarse = SpaceStepper.Walk(layer, start, d, g.To, 8).P,
                        fine = SpaceStepper.Walk(layer, start, d, g.To, 4).P;
                    double miss = g.Under(g.To).P.ChordTo(fine + ((fine - coarse) / 3));
                    Assert.True(miss < 0.01, $"{miss} mm from the stepper's end");
                }
            },
            iter: Hulls
        );

    [Fact]
    public void StripsMeasureWhatLiesOnTheHull() =>
        RandomLoft.Gen.Sample(
            recipe =>
            {
                (LoftedSurface table, ISurface layer) = Made(recipe);
                (Geodesic g, _, _) = AcrossTheBottom(table, layer, 0.5, 45);
                var strip = new FermiStrip(g);
                foreach (double part in new[] { 0.1, 0.5, 0.9 })
                {
                    foreach (double t in new[] { -75.0, 45, 75 })
                    {
                        Fermi at = new(part * g.To, t);
                        FermiLaws.RoundTrip(strip, at, new(7, -5));
                        FermiLaws.Metric(strip, at);
                    }
                }
            },
            iter: Hulls
        );

    [Fact]
    public void ThereAndBackIsTheSameLine() =>
        RandomLoft.Gen.Sample(
            recipe =>
            {
                (LoftedSurface table, ISurface layer) = Made(recipe);
                (Geodesic g, Uv start, _) = AcrossTheBottom(table, layer, 0.4, 50);
                Geodesic back = GeodesicTracing.Trace(
                    layer,
                    g.UvAt(g.To),
                    -g.At(g.To).Tangent,
                    0,
                    g.To,
                    1e-5
                );
                Vec3 home = back.Under(g.To).P;
                Assert.True(home.ChordTo(layer.At(start.U, start.V).P) < 0.01);

                // What b says one way it says the other (reciprocity of the Jacobi field that is zero at the start).
                Assert.Equal(g.At(g.To).B, back.At(g.To).B, 0.02);
            },
            iter: Hulls
        );

    private static (LoftedSurface Table, ISurface Layer) Made(RandomLoft.Recipe recipe)
    {
        LoftedSurface table = recipe.Build();
        return (table, new ParallelSurface(table, recipe.Offset));
    }

    /// <summary>From near the keel to near the chine, or 1.5 m of it.</summary>
    private static (Geodesic Line, Uv Start, Vec3 Direction) AcrossTheBottom(
        LoftedSurface table,
        ISurface layer,
        double part,
        double degrees
    )
    {
        double u = table.UFrom + (part * (table.UTo - table.UFrom)),
            angle = degrees * Math.PI / 180;
        var start = new Uv(u, 0.03 * table.UpperV(u));
        SurfacePoint p = layer.At(start.U, start.V);
        Vec3 along = p.Du.Unit(),
            across = (p.Dv - (p.Dv.Dot(along) * along)).Unit(),
            d = (Math.Cos(angle) * along) + (Math.Sin(angle) * across);
        double Past(Uv uv) => uv.V - (0.97 * table.UpperV(uv.U));
        Geodesic whole = GeodesicTracing.Trace(layer, start, d, 0, 1500, 1e-5, uv => Past(uv) < 0);
        double to = Past(whole.UvAt(whole.To)) > 0 ? whole.Crossing(Past, 0, whole.To) : whole.To;
        return (GeodesicTracing.Trace(layer, start, d, 0, to, 1e-5), start, d);
    }
}
