using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

public sealed class PanelByRulingsTests
{
    private static FlatPanel Flat(SurfacePatch patch)
    {
        FlatPanel panel = PanelFlattening.Flatten(patch, PanelOptions.Usual);
        Assert.Equal(FlatteningMethod.ByRulings, panel.Method);
        Assert.True(panel.Verdict.Developable);
        return panel;
    }

    [Fact]
    public void AConeComesOutAsItsSector()
    {
        // A cone, to digits worked out outside the project. Seen from outside with the slant running away to the right, u grows
        // downwards: so the flat polar angle is taken with its sign changed.
        SurfacePatch patch = PanelSamples.Cone();
        FlatPanel panel = Flat(patch);
        double sin = Math.Sin(25 * PanelSamples.Deg);
        Vec2 Exact(double phi, double r) => new(r * Math.Cos(phi * sin), -r * Math.Sin(phi * sin));
        Assert.InRange(PanelSamples.WorstMiss(patch, panel.Map, Exact), 0, 1e-4);

        Vec2 Corner(double u, double t) => panel.Map.At(u, patch.V(u, t));
        Vec2 a1 = Corner(0.1, 0),
            a2 = Corner(1.2, 0),
            b1 = Corner(0.1, 1),
            b2 = Corner(1.2, 1);
        Assert.Equal(1388.107076, a1.ChordTo(b2), 1e-4);
        Func<Vec2, Vec2> onto = PanelSamples.Onto(
            a1,
            a2,
            new(1518.609508, -64.217448),
            new(1474.150110, -819.056029)
        );
        Assert.True(onto(a2).ChordTo(new(1474.150110, -819.056029)) < 1e-4);
        Assert.True(onto(b1).ChordTo(new(2994.323984, -126.620993)) < 1e-4);
        Assert.True(onto(b2).ChordTo(new(2244.781745, -1247.228494)) < 1e-4);
        Assert.Equal(770.3671698, panel.LowerEdge.SurfaceMm, 1e-6);
        Assert.Equal(770.3671698, panel.LowerEdge.FlatMm, 1e-5);
        Assert.Equal(1406.4460331, panel.UpperEdge.SurfaceMm, 1e-6);
        Assert.Equal(1406.4460331, panel.UpperEdge.FlatMm, 1e-5);
    }

    [Fact]
    public void TheTangentSurfaceOfAHelixLiesAboutACircleOfKnownRadius()
    {
        // The tangents of a helix: the edge of regression, radius (a² + b²)/a = 2320, lies flat as a circle; its tangents stay its tangents.
        SurfacePatch patch = new(new HelixTangentSurface(2000, 800), 0, 1, _ => 500, _ => 2500);
        double speed = Math.Sqrt((2000 * 2000) + (800 * 800));
        int hand = patch.Handedness;
        Vec2 Exact(double u, double v)
        {
            double angle = speed * u / 2320;
            Vec2 tangent = new(Math.Cos(angle), hand * Math.Sin(angle));
            Vec2 centre = 2320.0 * new Vec2(Math.Sin(angle), -hand * Math.Cos(angle));
            return centre + (v * tangent);
        }

        double plain = PanelSamples.WorstMiss(patch, Flat(patch).Map, Exact),
            mirrored = PanelSamples.WorstMiss(
                patch,
                Flat(patch).Map,
                (u, v) => Exact(u, v) with { Y = -Exact(u, v).Y }
            );
        Assert.InRange(Math.Min(plain, mirrored), 0, 1e-3);
        Assert.True(Math.Max(plain, mirrored) > 1, "the two hands of the flat must differ");
    }

    [Fact]
    public void ACylinderKeepsEveryLengthAndAngle()
    {
        SurfacePatch patch = new(
            new SwappedSurface(new CylinderSurface(2000)),
            0,
            1,
            u => 100 * Math.Sin(3 * u),
            u => 1200 + (50 * u * u)
        );
        // Seen from outside, with the axis up the page, the angle grows to the left or to the right: the handedness says.
        int hand = patch.Handedness;
        FlatPanel panel = Flat(patch);
        Assert.InRange(
            PanelSamples.WorstMiss(patch, panel.Map, (u, v) => new(2000 * u, hand * v)),
            0,
            1e-4
        );
    }

    [Fact]
    public void ABottomOfConstantDeadriseOnARockeredKeelDevelopsExactly()
    {
        // Constant deadrise on a rockered keel: along the rulings u = z sin b, across them v = the integral of sqrt(1 + z'² cos² b).
        SurfacePatch patch = PanelSamples.Rockered();
        FlatPanel panel = Flat(patch);
        Assert.Equal(6009.9850533125, panel.LowerEdge.SurfaceMm, 1e-6);
        Assert.Equal(6009.9850533125, panel.LowerEdge.FlatMm, 1e-4);
        Assert.Equal(6394451.1536058, panel.SurfaceAreaMm2, 1e-2);
        Assert.Equal(6394451.1536058, Area(panel), 5.0);
        Vec2 forward = panel.Map.At(0, 0),
            aft = panel.Map.At(6000, 0);
        Assert.Equal(
            Math.Sqrt((6008.8185630193 * 6008.8185630193) + (102.6060429977 * 102.6060429977)),
            forward.ChordTo(aft),
            1e-4
        );

        double cos = Math.Cos(20 * PanelSamples.Deg),
            sin = Math.Sin(20 * PanelSamples.Deg);
        double Across(double x)
        {
            // The integral of sqrt(1 + (c x)²) in closed form.
            double c = 600 * cos / 36e6,
                y = c * x;
            return ((y * Math.Sqrt(1 + (y * y))) + Math.Asinh(y)) / (2 * c);
        }

        // Outer side below: seen from there, with outboard up the page, aft is to the left.
        Vec2 Exact(double u, double v) => new(-Across(u), (300 * u * u / 36e6 * sin) + v);
        Assert.InRange(PanelSamples.WorstMiss(patch, panel.Map, Exact), 0, 1e-4);
        Assert.True(forward.X > aft.X, "forward to the right on a starboard bottom");
    }

    [Fact]
    public void APanelThatEndsInAPointIsLaidUpToThePoint()
    {
        SurfacePatch patch = new(
            new SwappedSurface(new CylinderSurface(2000)),
            0,
            1,
            _ => 0,
            u => 900 * u
        );
        int hand = patch.Handedness;
        FlatPanel panel = Flat(patch);
        Assert.InRange(
            PanelSamples.WorstMiss(patch, panel.Map, (u, v) => new(2000 * u, hand * v)),
            0,
            1e-3
        );
        Assert.Equal(0.5 * 2000 * 900, Area(panel), 20.0);
        Assert.All(panel.Outline, p => Assert.True(p.IsFinite));
    }

    [Fact]
    public void APlaneIsLaidAsItIs()
    {
        SurfacePatch patch = new(
            new PlaneSurface(new(5, 6, 7), new(1, 0, 0), new(0, 1, 0), -1),
            0,
            5000,
            u => 10 * Math.Sin(u / 500),
            u => 900 + (0.05 * u)
        );
        Assert.InRange(
            PanelSamples.WorstMiss(patch, Flat(patch).Map, (u, v) => new(-u, v)),
            0,
            1e-5
        );
    }

    internal static double Area(FlatPanel panel)
    {
        double twice = 0;
        for (int k = 0; k < panel.Outline.Length; k++)
        {
            twice += panel.Outline[k].Cross(panel.Outline[(k + 1) % panel.Outline.Length]);
        }

        return 0.5 * twice;
    }
}
