using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Rulings follow one another along both edges: those of a fan, those that are found, and those that are only kept from the start.</summary>
public sealed class RulingOrderTests
{
    /// <summary>Between two skew lines hardly one is found; those that are kept from the start advance along both edges without a leap.</summary>
    [Fact]
    public void RulingsThatAreNotFoundAreKeptInOrder()
    {
        RulingSet set = Rulings.Find(PanelSamples.Warped());
        Assert.True(set.Rulings.Count(r => !r.Found) > 100);
        // Between the fans at the two corners, where the start's staircase is cut off.
        for (int k = 14; k < set.Rulings.Length - 13; k++)
        {
            Assert.True(set.Rulings[k].P >= set.Rulings[k - 1].P);
            Assert.InRange(set.Rulings[k].Q - set.Rulings[k - 1].Q, -1e-6, 500);
        }
    }

    /// <summary>
    /// Two parabolas, y = x² below and y = -x² above: tangents at p and q are parallel where q = -p, and nowhere else do they lie in one plane with the
    /// ruling. All these rulings meet in one point halfway up, so that no panel can have two of them, whatever the unit of u.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(1000)]
    [InlineData(1e-4)]
    public void RulingsThatCrossAreNotTaken(double unit)
    {
        SurfacePatch patch = new(new TwistedRows(unit), -unit, unit, _ => 0, _ => 1);
        RulingSet set = Rulings.Find(patch);
        Assert.False(set.AllFound);
        Ruling? before = null;
        foreach (Ruling ruling in set.Rulings.Where(r => r.Found))
        {
            Assert.True(!(ruling.Q < before?.Q - (1e-8 * unit)), $"{before} and {ruling}");
            before = ruling;
        }

        Assert.InRange(set.FoundShare, 0, 0.5);
    }

    /// <summary>A corner's fan is cut into twelve equal parts, and each is judged by the ruling in its middle.</summary>
    [Fact]
    public void AFanIsJudgedInTheMiddleOfItsParts()
    {
        const double shear = 5e-5,
            fan = shear * 1300 / 12;
        SurfacePatch patch = new(
            new ShearedSurface(new ConeSurface(25 * PanelSamples.Deg), shear),
            0.1,
            1.2,
            _ => 1500,
            _ => 2800
        );
        RulingSet set = Rulings.Find(patch);
        for (int k = 0; k < 12; k++)
        {
            Ruling first = set.Rulings[k],
                last = set.Rulings[^(12 - k)];
            Assert.Equal(0.1, first.Q, 1e-9);
            Assert.Equal(0.1 + ((k + 0.5) * fan), first.P, 1e-9);
            Assert.Equal(1.2, last.P, 1e-9);
            Assert.Equal(1.2 - ((11.5 - k) * fan), last.Q, 1e-9);
        }
    }

    /// <summary>At a point of the panel the rulings begin, or end, a thousandth of its length inside, and no fan is laid there.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AtAPointTheRulingsBeginJustInside(bool aft)
    {
        SurfacePatch patch = new(
            new SwappedSurface(new CylinderSurface(2000)),
            0,
            2,
            _ => 0,
            u => 900 * (aft ? 2 - u : u)
        );
        RulingSet set = Rulings.Find(patch);
        Assert.True(set.AllFound);
        Ruling point = aft ? set.Rulings[^1] : set.Rulings[0],
            broad = aft ? set.Rulings[0] : set.Rulings[^1];
        Assert.Equal(aft ? 1.998 : 0.002, point.P, 1e-12);
        Assert.Equal(point.P, point.Q, 1e-9);
        Assert.Equal(aft ? 0 : 2, broad.P, 1e-12);
        Assert.Equal(72, set.Segments.Length);
    }

    /// <summary>P = (1000 x, 1000 x² (1 - 2 v), 800 v), x = u / unit.</summary>
    private sealed record TwistedRows(double Unit) : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            double x = u / Unit,
                rate = 1000 / Unit;
            return AnalyticSurfaces.Point(
                new(1000 * x, 1000 * x * x * (1 - (2 * v)), 800 * v),
                new(rate, 2 * rate * x * (1 - (2 * v)), 0),
                new(0, -2000 * x * x, 800),
                new(0, 2 * rate / Unit * (1 - (2 * v)), 0),
                new(0, -4 * rate * x, 0),
                Vec3.Zero,
                1
            );
        }
    }
}
