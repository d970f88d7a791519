using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Geometry;

public sealed class PanelByLeastStrainTests
{
    private static FlatPanel Flat(SurfacePatch patch)
    {
        FlatPanel panel = PanelFlattening.Flatten(patch, PanelOptions.Usual);
        Assert.Equal(FlatteningMethod.ByLeastStrain, panel.Method);
        Assert.False(panel.Verdict.Developable);
        Assert.True(panel.Accuracy.Settled);
        return panel;
    }

    private static FlatPanel Elastic(SurfacePatch patch) =>
        PanelFlattening.ByLeastStrain(patch, Rulings.Find(patch), PanelOptions.Usual);

    [Fact]
    public void AHyperbolicParaboloidIsSaidNotToBeDevelopableWithItsWarp()
    {
        // The hyperbolic paraboloid. The normal is (-k y, -(0.2 + k x), 1): from keel to chine it turns by
        // atan(k b / sqrt(1 + m²)), most at the forward end, where m = 0.2.
        FlatPanel panel = Flat(PanelSamples.Warped());
        Assert.Equal(
            Math.Atan(0.1 / Math.Sqrt(1.04)) / PanelSamples.Deg,
            panel.Verdict.Section.Degrees,
            1e-9
        );
        Assert.Equal(0, panel.Verdict.Section.AtU, 1e-9);
        Assert.Equal(6029.9253726725, panel.UpperEdge.SurfaceMm, 1e-6);
        Assert.Equal(6781475.1681071, panel.SurfaceAreaMm2, 1e-3);
        Assert.False(panel.Verdict.AnotherDevelopableFitsTheEdges);

        // Gauss and Bonnet: a quadrilateral of four straight lines, so the sum of K is that of the corner angles less 2 pi.
        double Corner(Vec3 a, Vec3 b) => Math.Acos(a.Unit().Dot(b.Unit()));
        SurfacePatch patch = panel.Patch;
        SurfacePoint s00 = patch.At(0, 0),
            s60 = patch.At(6000, 0),
            s61 = patch.At(6000, 1),
            s01 = patch.At(0, 1);
        double angles =
            Corner(s00.Du, s00.Dv)
            + Corner(-s60.Du, s60.Dv)
            + Corner(-s61.Du, -s61.Dv)
            + Corner(s01.Du, -s01.Dv);
        Assert.Equal(
            (angles - (2 * Math.PI)) / PanelSamples.Deg,
            panel.Verdict.GaussTurnDegrees,
            1e-6
        );
    }

    [Fact]
    public void ALongStripOfASphereShowsTheStrainOfTheStripFormula()
    {
        // K w²/12 crowded at the edges, half of it stretched along the middle; a finite-element flat
        // there gave -5.830e-4 and +2.840e-4.
        FlatPanel panel = Flat(PanelSamples.SphereStrip());
        double Along(double t)
        {
            StrainSample s = StrainField.At(panel.Patch, panel.Map, 0, panel.Patch.V(0, t));
            return Math.Abs(s.Direction.X) > 0.7 ? s.Leading : double.NaN;
        }

        Assert.Equal(-5.787e-4, Along(0), 0.06e-4);
        Assert.Equal(-5.787e-4, Along(1), 0.06e-4);
        Assert.Equal(2.894e-4, Along(0.5), 0.06e-4);
        // The whole mid-line, not only points of it: it must come out shorter in the flat than on the sphere.
        double flat = panel.Map.At(-0.5, 0).ChordTo(panel.Map.At(0.5, 0));
        Assert.InRange(flat / 3000, 1 - 2.95e-4, 1 - 2.6e-4);
        Assert.True(panel.LowerEdge.FlatMm > panel.LowerEdge.SurfaceMm);
    }

    [Fact]
    public void AnElasticDiscOnASphereHasTheStrainOfThePlateTheory()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        // hoop stress at the rim -E K a²/8, alone there, so that is the strain too; at the centre E K a²/16 in
        // every direction, strain (1 - nu) K a²/16. Good to (a/R)², here a quarter of a percent.
        const double a = 150,
            radius = 3000;
        SurfacePatch patch = new(new DiscOnSphere(radius, a), -1, 1, _ => -1, _ => 1);
        FlatPanel panel = PanelFlattening.ByLeastStrain(
            patch,
            Rulings.Find(patch),
            PanelOptions.Usual with
            {
                LeastStrain = new(48, 48),
            }
        );
        double unit = a * a / (radius * radius);
        foreach ((double u, double v) in new[] { (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0) })
        {
            StrainSample rim = StrainField.At(patch, panel.Map, u, v);
            Assert.Equal(-unit / 8, rim.Leading, 0.005 * unit / 8);
            Assert.Equal(0.3 * unit / 8, rim.Greatest, 0.01 * unit / 8);
        }

        StrainSample centre = StrainField.At(patch, panel.Map, 0, 0);
        Assert.Equal(0.7 * unit / 16, centre.Greatest, 0.005 * unit / 16);
        Assert.Equal(0.7 * unit / 16, centre.Least, 0.005 * unit / 16);
    }

    [Fact]
    public void OnDevelopablesItAgreesWithTheExactFlatAndShowsNoStrain()
    {
        double sin = Math.Sin(25 * PanelSamples.Deg);
        FlatPanel cone = Elastic(PanelSamples.Cone());
        Assert.InRange(
            PanelSamples.WorstMiss(
                cone.Patch,
                cone.Map,
                (u, r) => new(r * Math.Cos(u * sin), -r * Math.Sin(u * sin))
            ),
            0,
            0.002
        );
        Assert.InRange(Math.Abs(cone.Worst.Leading), 0, 1e-5);

        // Rulings along the panel, which the strip between the two edges cannot use.
        FlatPanel along = Flat(new(new CylinderSurface(2000), 0, 4000, _ => 0, _ => 0.5));
        int hand = along.Patch.Handedness;
        Assert.InRange(
            PanelSamples.WorstMiss(along.Patch, along.Map, (u, v) => new(u, hand * 2000 * v)),
            0,
            1e-6
        );
        Assert.True(along.Verdict.AnotherDevelopableFitsTheEdges);
    }

    [Fact]
    public void AWarpedPanelThatEndsInAPointSettles()
    {
        FlatPanel panel = Flat(
            new(new HyparSurface(1e-4, 0.1, -1), 0, 4000, _ => 0, u => 0.25 * u)
        );
        Assert.All(
            panel.Strain.Samples,
            s => Assert.True(double.IsFinite(s.Leading) && s.Flat.IsFinite)
        );
        Assert.InRange(Math.Abs(panel.Worst.Leading), 1e-5, 5e-3);
        Assert.InRange(panel.Accuracy.PositionMm, 0, 0.05);
        Assert.Equal(
            panel.SurfaceAreaMm2,
            PanelByRulingsTests.Area(panel),
            2e-4 * panel.SurfaceAreaMm2
        );
    }

    [Fact]
    public void TheStatedErrorCoversWhatAFourTimesFinerSheetSays()
    {
        // Where long runs are asked for or faults are planted, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        FlatPanel panel = Flat(PanelSamples.Launch());
        FlatPanel finer = PanelFlattening.Flatten(
            PanelSamples.Launch(),
            PanelOptions.Usual with
            {
                LeastStrain = new(160, 24),
            }
        );
        for (int i = 0; i <= 40; i++)
        {
            for (int j = 0; j <= 8; j++)
            {
                double u = i * 200,
                    v = panel.Patch.V(u, j / 8.0);
                Assert.InRange(
                    panel.Map.At(u, v).ChordTo(finer.Map.At(u, v)),
                    0,
                    panel.Accuracy.PositionMm
                );
            }
        }

        Assert.InRange(panel.Accuracy.PositionMm, 0, 0.02);
        Assert.Equal(
            Math.Abs(finer.Worst.Leading),
            Math.Abs(panel.Worst.Leading),
            panel.Accuracy.Strain + 1e-6
        );
    }

    [Fact]
    public void InteriorDistancesKeepWithinTheLargestStrain()
    {
        foreach (
            SurfacePatch patch in (SurfacePatch[])
                [PanelSamples.Launch(), PanelSamples.Warped(), PanelSamples.SphereStrip()]
        )
        {
            FlatPanel panel = Flat(patch);
            double most = Math.Abs(panel.Worst.Leading) + panel.Accuracy.Strain;
            Random random = new(20261125);
            for (int k = 0; k < 60; k++)
            {
                (double u0, double t0, double u1, double t1) = (
                    random.NextDouble(),
                    random.NextDouble(),
                    random.NextDouble(),
                    random.NextDouble()
                );
                double surface = 0,
                    flat = 0;
                (Vec3 S, Vec2 F)? before = null;
                for (int i = 0; i <= 400; i++)
                {
                    double u = patch.UFrom + (patch.URange * (u0 + ((u1 - u0) * i / 400))),
                        v = patch.V(u, t0 + ((t1 - t0) * i / 400));
                    (Vec3 S, Vec2 F) now = (patch.Surface.At(u, v).P, panel.Map.At(u, v));
                    surface += before?.S.ChordTo(now.S) ?? 0;
                    flat += before?.F.ChordTo(now.F) ?? 0;
                    before = now;
                }

                Assert.InRange(Math.Abs((surface / flat) - 1), 0, most + 2e-6);
            }
        }
    }

    [Fact]
    public void TurningShiftingAndMirroringTheHullChangesNothingButTheHand()
    {
        SurfacePatch patch = PanelSamples.Launch();
        FlatPanel panel = Flat(patch),
            moved = Flat(
                patch with
                {
                    Surface = MovedSurface.Turned(
                        patch.Surface,
                        new(1, -2, 0.5),
                        2.1,
                        new(4000, -90, 7)
                    ),
                }
            ),
            port = Flat(patch with { Surface = MovedSurface.Mirrored(patch.Surface) });
        double width = panel.Map.At(patch.UFrom, patch.Lower(patch.UFrom)).X;
        for (int i = 0; i <= 20; i++)
        {
            double u = i * 400,
                v = patch.V(u, i % 5 / 4.0);
            Vec2 here = panel.Map.At(u, v),
                mirrored = port.Map.At(u, v);
            Assert.InRange(here.ChordTo(moved.Map.At(u, v)), 0, 1e-5);
            Assert.InRange(here.ChordTo(new(width - mirrored.X, mirrored.Y)), 0, 1e-5);
        }

        Assert.Equal(panel.Worst.Leading, port.Worst.Leading, 1e-9);
    }

    [Fact]
    public void NeitherDirectionOfUNorItsUnitMatters()
    {
        SurfacePatch patch = PanelSamples.Warped();
        FlatPanel panel = Flat(patch);
        SurfacePatch reversed = new(
            new Backwards(patch.Surface, 6000, 1000),
            0,
            6,
            _ => 0,
            _ => 1000
        );
        FlatPanel again = Flat(reversed);
        Assert.InRange(panel.Map.At(1500, 700).ChordTo(again.Map.At(4.5, 700)), 0, 1e-5);
        Assert.InRange(panel.Map.At(6000, 1000).ChordTo(again.Map.At(0, 1000)), 0, 1e-5);
    }

    [Fact]
    public void TheOutlineRunsCounterClockwiseAndHoldsTheWholePanel()
    {
        FlatPanel panel = Flat(PanelSamples.Launch());
        Assert.Equal(
            panel.SurfaceAreaMm2,
            PanelByRulingsTests.Area(panel),
            5e-4 * panel.SurfaceAreaMm2
        );
        for (int k = 0; k < panel.Outline.Length; k++)
        {
            Assert.True(
                panel.Outline[k].ChordTo(panel.Outline[(k + 1) % panel.Outline.Length]) > 1e-6
            );
        }
    }

    private sealed record Backwards(ISurface Surface, double Length, double Unit) : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            SurfacePoint s = Surface.At(Length - (Unit * u), v);
            return s with { Du = -Unit * s.Du, L = Unit * Unit * s.L, M = -Unit * s.M };
        }
    }

    /// <summary>A square, -1 to 1 both ways, drawn onto a disc of radius a, which is laid on a sphere; singular in its four corners only.</summary>
    private sealed record DiscOnSphere(double Radius, double Rim) : ISurface
    {
        public SurfacePoint At(double u, double v)
        {
            double qu = Math.Sqrt(1 - (0.5 * u * u)),
                qv = Math.Sqrt(1 - (0.5 * v * v));
            double x = Rim * u * qv,
                y = Rim * v * qu,
                z = Math.Sqrt((Radius * Radius) - (x * x) - (y * y));
            double xu = Rim * qv,
                xv = -0.5 * Rim * u * v / qv,
                yu = -0.5 * Rim * u * v / qu,
                yv = Rim * qu;
            Vec3 du = new(xu, yu, -((x * xu) + (y * yu)) / z),
                dv = new(xv, yv, -((x * xv) + (y * yv)) / z);
            Vec3 n = new Vec3(x, y, z) / Radius;
            return new(
                new(x, y, z),
                du,
                dv,
                n,
                -du.Dot(du) / Radius,
                -du.Dot(dv) / Radius,
                -dv.Dot(dv) / Radius
            );
        }
    }
}
