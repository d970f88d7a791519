using PlankFit.Geometry.Development;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

public sealed class RulingsTests
{
    [Fact]
    public void OnAConeEveryRulingIsFoundAndJoinsEqualAngles()
    {
        // On a cone the rulings are its own lines.
        RulingSet rulings = Rulings.Find(PanelSamples.Cone());
        Assert.True(rulings.AllFound);
        Assert.All(rulings.Rulings, r => Assert.Equal(r.P, r.Q, 1e-11));
        Assert.InRange(rulings.Worst.WarpDegrees, 0, 1e-9);
        Assert.InRange(rulings.DepartureMm, 0, 1e-8);
    }

    [Fact]
    public void WhereTheEdgesAreNumberedOutOfStepTheRulingsAreSoughtAndFound()
    {
        // The same cone with u sheared by 0.0001 v: the ruling at angle phi joins p = phi - 0.0001 rA to q = phi - 0.0001 rB,
        // some 0.13 rad apart, and both ends of the panel are left with a corner that no ruling spans.
        const double shear = 1e-4;
        SurfacePatch patch = new(
            new ShearedSurface(new ConeSurface(25 * PanelSamples.Deg), shear),
            0.1,
            1.2,
            _ => 1500,
            _ => 2800
        );
        RulingSet rulings = Rulings.Find(patch);
        Ruling[] inner = [.. rulings.Rulings.Where(r => r.P > 0.24 && r.P < 1.19)];
        Assert.True(inner.Length > 100);
        Assert.All(inner, r => Assert.Equal(r.P - (shear * 1300), r.Q, 1e-9));
        Assert.All(inner, r => Assert.True(r.Found && r.WarpDegrees < 1e-6));
    }

    [Fact]
    public void TwoSkewLinesAreRefusedWithTheirWarp()
    {
        // No ruling between two skew lines satisfies the condition; and no exception either.
        RulingSet rulings = Rulings.Find(PanelSamples.Warped());
        Assert.False(rulings.AllFound);
        Assert.True(double.IsPositiveInfinity(rulings.DepartureMm));
        Assert.True(rulings.Worst.WarpDegrees > 1);
        Assert.All(rulings.Rulings, r => Assert.True(double.IsFinite(r.WarpDegrees)));
    }

    [Fact]
    public void OnASphereRulingsExistButLeaveTheSurface()
    {
        // Between two parallels the ruled surface is a cone: a developable, but the sphere stands off it by about
        // R (1 - cos(half the arc between)), the sagitta of the section.
        SurfacePatch patch = new(new SphereSurface(3000), 0, 1, _ => 0.2, _ => 0.5);
        RulingSet rulings = Rulings.Find(patch);
        Assert.True(rulings.AllFound);
        Assert.Equal(3000 * (1 - Math.Cos(0.15)), rulings.DepartureMm, 0.01);
    }
}

/// <summary>P(u, v) = Q(u + k v, v): the same surface, its u lines leaning.</summary>
internal sealed record ShearedSurface(ISurface Surface, double K) : ISurface
{
    public SurfacePoint At(double u, double v)
    {
        SurfacePoint s = Surface.At(u + (K * v), v);
        return s with
        {
            Dv = s.Dv + (K * s.Du),
            M = s.M + (K * s.L),
            N = s.N + (2 * K * s.M) + (K * K * s.L),
        };
    }
}
