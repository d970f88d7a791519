using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Panels whose rulings are bowed in u and v, so that a point lies several strips away from where its u says, on either side.</summary>
public sealed class BowedRowsTests
{
    private const double Radius = 2000,
        Width = 1200;

    /// <summary>A cylinder, its rulings bowed by up to 0.1 rad, seven strips: inside, where the bow stays on the panel, it lies flat as itself.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(-0.1)]
    public void ACylinderLiesFlatAllTheSame(double bow)
    {
        double Lead(double v) => 4 * bow * v * (Width - v) / (Width * Width);
        SurfacePatch patch = new(
            new Bowed(new SwappedSurface(new CylinderSurface(Radius)), 4 * bow / Width / Width),
            0,
            1,
            _ => 0,
            _ => Width
        );
        RulingSet rulings = Rulings.Find(patch);
        Assert.True(rulings.AllFound);
        Assert.All(rulings.Rulings, r => Assert.Equal(r.P, r.Q, 1e-9));
        var map = new RulingMap(patch, rulings);
        Vec2 Exact(double u, double v) => new(Radius * (u + Lead(v)), patch.Handedness * v);
        Func<Vec2, Vec2> onto = PanelSamples.Onto(
            map.At(0.2, 0),
            map.At(0.8, 0),
            Exact(0.2, 0),
            Exact(0.8, 0)
        );
        for (double u = 0.12; u < 0.88; u += 0.019)
        {
            for (double v = 0; v <= Width; v += 100)
            {
                Assert.InRange(onto(map.At(u, v)).ChordTo(Exact(u, v)), 0, 1e-4);
            }
        }
    }

    /// <summary>P(u, v) = Q(u + k v (w - v), v), w the width: the same surface, its u lines bowed.</summary>
    private sealed record Bowed(ISurface Surface, double K) : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            double lead = K * v * (Width - v),
                rate = K * (Width - (2 * v));
            SurfacePoint s = Surface.At(u + lead, v);
            return s with
            {
                Dv = s.Dv + (rate * s.Du),
                M = s.M + (rate * s.L),
                N = s.N + (2 * rate * s.M) + (rate * rate * s.L),
            };
        }
    }
}
