using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Holds a surface's derivatives against differences of its positions and normals, in mm whatever its parameters are.</summary>
internal static class Differences
{
    /// <summary>Steps of 0.1 mm each way: differences of positions are then good to about 1e-9, of normals to about 1e-9 a mm.</summary>
    private const double StepMm = 0.1;

    public static void Hold(ISurface surface, Uv at)
    {
        SurfacePoint p = surface.At(at.U, at.V);
        Uv hu = new(StepMm / p.Du.Norm, 0),
            hv = new(0, StepMm / p.Dv.Norm);
        (Vec3 du, Vec3 nu) = Central(surface, at, hu);
        (Vec3 dv, Vec3 nv) = Central(surface, at, hv);
        Vec3 eu = p.Du.Unit(),
            ev = p.Dv.Unit();
        string where = $"at u = {at.U}, v = {at.V}";
        Assert.True(du.ChordTo(eu) < 1e-7, $"Du {where}: {du.ChordTo(eu)}");
        Assert.True(dv.ChordTo(ev) < 1e-7, $"Dv {where}: {dv.ChordTo(ev)}");
        Assert.Equal(1, p.Normal.Norm, 1e-12);
        Assert.Equal(0, p.Normal.Dot(eu), 1e-12);
        Assert.Equal(0, p.Normal.Dot(ev), 1e-12);

        // Weingarten: II(a, b) = -a . dn(b), here on unit vectors, 1/mm.
        const double bend = 2e-9;
        Assert.True(Math.Abs((p.L / p.E) + eu.Dot(nu)) < bend, $"L {where}");
        Assert.True(Math.Abs((p.M / p.Du.Norm / p.Dv.Norm) + eu.Dot(nv)) < bend, $"M {where}");
        Assert.True(Math.Abs((p.M / p.Du.Norm / p.Dv.Norm) + ev.Dot(nu)) < bend, $"M' {where}");
        Assert.True(Math.Abs((p.N / p.G) + ev.Dot(nv)) < bend, $"N {where}");
    }

    private static (Vec3 Position, Vec3 Normal) Central(ISurface surface, Uv at, Uv h)
    {
        SurfacePoint a = surface.At(at.U - h.U, at.V - h.V),
            b = surface.At(at.U + h.U, at.V + h.V);
        return ((b.P - a.P) / (2 * StepMm), (b.Normal - a.Normal) / (2 * StepMm));
    }
}
