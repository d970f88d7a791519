using System.Collections.Immutable;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Structure;

/// <summary>Wood at an angle to its grain, and a beam of wood and steel, as they are published or follow from what is.</summary>
public sealed class PublishedWoodTests
{
    /// <summary>
    /// ET 0.050, GLT 0.078 and ν 0.449 of what is along the grain (Wood Handbook's ratios of Douglas-fir, second hand): by the ply's own axes and by Hankinson's rule with
    /// n = 2; and its compression of 49.9 MPa along and 5.5 across.
    /// </summary>
    [Theory]
    [InlineData(0, 1, 1, 49.9)]
    [InlineData(15, 0.58637, 0.43999, 32.386)]
    [InlineData(30, 0.24704, 0.17391, 16.533)]
    [InlineData(45, 0.12150, 0.09524, 9.908)]
    [InlineData(60, 0.07381, 0.06557, 7.073)]
    [InlineData(90, 0.05, 0.05, 5.5)]
    public void AtAnAngleToItsGrain(
        double degrees,
        double byAxes,
        double byHankinson,
        double compression
    )
    {
        PlyMaterial fir = new(1, 0.050, 0.078, 0.449);
        foreach (double turned in new[] { degrees, -degrees, 180 - degrees, 180 + degrees })
        {
            Assert.Equal(byAxes, fir.ModulusAt(turned), 5e-6);
            Assert.Equal(byHankinson, GrainAngle.Hankinson(1, 0.050, turned), 5e-6);
            Assert.Equal(compression, GrainAngle.Hankinson(49.9, 5.5, turned), 5e-4);
        }
    }

    /// <summary>With n of 1 it is the mean of what gives way: by hand at 30 degrees 0.05/(0.5 + 0.05·0.8660254).</summary>
    [Fact]
    public void AnotherPower() =>
        Assert.Equal(0.0920303, GrainAngle.Hankinson(1, 0.05, 30, 1), 1e-6);

    /// <summary>
    /// A textbook's beam: wood of 140 by 400 mm and 12.5 GPa under a steel plate of 200 by 8 and 200 GPa, 30 kN m. Its neutral axis is 264.0 mm above the bottom;
    /// published stresses are 5.36 MPa of tension and 2.76 of compression in the wood and 46.8 in the steel.
    /// </summary>
    [Fact]
    public void WoodUnderSteel()
    {
        const double Width = 140,
            Moment = 30e6;
        var beam = new Laminate([
            new(new(12500, 12500, 12500, 0), 400, 0),
            new(new(200000.0 * 200 / Width, 200000, 200000, 0), 8, 0),
        ]);
        double axis = (beam.ThicknessMm / 2) + (beam.B(1, 1) / beam.A(1, 1)),
            curve = Moment / (Width * beam.FreeStripAlong);
        Assert.Equal(264.0, axis, 0.05);
        Assert.Equal(5.3588, 12500 * curve * axis, 5e-5);
        Assert.Equal(2.7606, 12500 * curve * (400 - axis), 5e-5);
        Assert.Equal(46.7678, 200000 * curve * (408 - axis), 5e-5);
    }

    /// <summary>Faces of a solid moved apart: stiffness by its stress at the outside is strength, 3.5 and 9.25 times (printed 3.5 and 9.2).</summary>
    [Theory]
    [InlineData(2, 3.5)]
    [InlineData(4, 9.25)]
    [InlineData(8, 21.125)]
    public void StrengthOfASandwich(double depths, double ratio)
    {
        PlyMaterial face = new(70000, 70000, 26000, 0.0),
            core = new(1e-6, 1e-6, 1e-6, 0);
        var solid = new Laminate([new(face, 1, 0)]);
        var apart = new Laminate([new(face, 0.5, 0), new(core, depths - 1, 0), new(face, 0.5, 0)]);
        double Strength(Laminate of) => of.FreeStripAlong / (of.ThicknessMm / 2);
        Assert.Equal(ratio, Strength(apart) / Strength(solid), 1e-6);
    }

    /// <summary>A strip of 8 mm by 50 on 400 mm, 12000 MPa: 4 mm under 76.8 N, by hand; and every board of the launch by its own angle.</summary>
    [Fact]
    public void AStripOfABoard()
    {
        Assert.Equal(76.8, Deflections.StripNewtons(12000, 8, 50, 400, 4), 1e-9);
        Assert.Equal(4, Deflections.CouponMm(76.8, 400, 50, 12000 * Math.Pow(8, 3) / 12), 1e-9);
        StationStiffness least = GluedLaunch.Plan.Structure!.Governing!;
        Assert.Equal(
            GluedLaunch.Plan.PlankLayers.Select(l => l.Planks.Name),
            least.Boards.Select(b => b.Layer)
        );
        Assert.Equal(least.Angles, least.Boards.Select(b => b.Ply.Degrees).ToImmutableArray());
        Assert.All(least.Boards, b => Assert.InRange(b.ByHankinsonMPa, 1, b.ByAxesMPa));
    }
}
