using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Laws of strip coordinates that hold on every surface, checked by distances and by perpendiculars traced for themselves.</summary>
internal static class FermiLaws
{
    /// <summary>A place found again from its own point, to 1e-6 mm.</summary>
    public static void RoundTrip(FermiStrip strip, Fermi at, Fermi astray)
    {
        Uv uv = strip.At(at).Uv;
        Vec3 point = strip.Centre.Surface.At(uv.U, uv.V).P;
        Fermi found = strip.Find(uv, point, new(at.S + astray.S, at.T + astray.T), 1e-8);
        Assert.True(
            Math.Abs(found.S - at.S) < 1e-6 && Math.Abs(found.T - at.T) < 1e-6,
            $"{at} found again as {found}"
        );
    }

    /// <summary>
    /// The metric is g² ds² + dt² (Gauss's lemma; do Carmo 4-6, from memory): by differences in space the two directions are square, a mm of t is a mm, and a
    /// mm of s is g, where g'' = −K g along the perpendicular, g = 1 and g' = 0 on the centre line: the first Jacobi field of that perpendicular.
    /// </summary>
    public static void Metric(FermiStrip strip, Fermi at)
    {
        GeodesicPoint c = strip.Centre.At(at.S);
        Vec3 square = strip.Centre.Under(at.S).Left(c.Tangent);
        Geodesic across = GeodesicTracing.Trace(
            strip.Centre.Surface,
            c.Uv,
            Math.Sign(at.T) * square,
            0,
            Math.Abs(at.T),
            1e-9
        );
        double g = across.At(Math.Abs(at.T)).A;

        // Perpendiculars are shot in steps of up to 40 mm: what these are out by is a sixteenth with half of them.
        (Vec3 ds, Vec3 dt) = Slopes(strip, at);
        (Vec3 fineS, Vec3 fineT) = Slopes(new(strip.Centre, 20), at);
        Held("a mm of t", dt.Norm, fineT.Norm, 1, 1e-6);
        Held("a mm of s", ds.Norm, fineS.Norm, g, 3e-6);
        Held("their product", ds.Dot(dt), fineS.Dot(fineT), 0, 3e-6);

        void Held(string what, double value, double fine, double exact, double within)
        {
            double ofSteps = Math.Abs(value - fine);
            Assert.True(ofSteps < 1e-5, $"{what} at {at}: {value}, with finer steps {fine}");
            Assert.True(
                Math.Abs(value - exact) < within + (1.2 * ofSteps),
                $"{what} at {at}: {value} and not {exact}, with finer steps {fine}"
            );
        }
    }

    /// <summary>
    /// How far a place moves for a mm of s and of t. A chord of 2 mm alone falls short by (h k)²/6, 2e-6 at a radius of 0.29 m; with one of 4 mm what is left
    /// is (h k)⁴/30.
    /// </summary>
    private static (Vec3 S, Vec3 T) Slopes(FermiStrip strip, Fermi at)
    {
        ISurface surface = strip.Centre.Surface;
        Vec3 P(double s, double t)
        {
            Uv uv = strip.At(new(s, t)).Uv;
            return surface.At(uv.U, uv.V).P;
        }

        const double h = 1;
        Vec3 Slope(Func<double, Vec3> along) =>
            ((8 * (along(h) - along(-h))) - (along(2 * h) - along(-2 * h))) / (12 * h);
        return (Slope(d => P(at.S + d, at.T)), Slope(d => P(at.S, at.T + d)));
    }
}
