using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Geometry;

/// <summary>The lofted surface: through its points, C2, with true derivatives, and with its limits at a stem apex.</summary>
public sealed class LoftTests
{
    public static TheoryData<string> Hulls => new("survey-launch", "pilot-skiff", "tender");

    [Theory]
    [MemberData(nameof(Hulls))]
    public void EveryGivenPointIsOnTheSurface(string hull)
    {
        Job job = Demo(hull);
        LoftedSurface surface = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        string[] names = [.. job.Hull.Panel.Lines];
        for (int i = 0; i < job.Offsets.Stations.Length; i++)
        {
            double u = surface.StationU[i];
            Vec3[] points = [.. names.Select(n => Point(job.Offsets, job.Offsets.Find(n)!, i))];
            Assert.True(surface.At(u, 0).P.ChordTo(points[0]) < 1e-9);
            Assert.True(surface.At(u, surface.UpperV(u)).P.ChordTo(points[^1]) < 1e-9);
            if (points.Length == 3)
            {
                double v =
                    points[0].ChordTo(points[1])
                    / (points[0].ChordTo(points[1]) + points[1].ChordTo(points[2]));
                Assert.True(surface.At(u, v).P.ChordTo(points[1]) < 1e-9);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void DerivativesAreThoseOfThePositions(string hull)
    {
        Job job = Demo(hull);
        LoftedSurface surface = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        const double h = 0.05;
        for (int i = 1; i < 40; i++)
        {
            double u = surface.UFrom + ((surface.UTo - surface.UFrom) * i / 40.37),
                chine = surface.UpperV(u),
                v = chine * (0.1 + (0.8 * (i % 7) / 6));
            double k = h * Math.Max(chine / 1000, 1e-3);
            SurfacePoint p = surface.At(u, v);
            Vec3 du = (surface.At(u + h, v).P - surface.At(u - h, v).P) / (2 * h),
                dv = (surface.At(u, v + k).P - surface.At(u, v - k).P) / (2 * k);
            Assert.True(p.Du.ChordTo(du) < 1e-6 * p.Du.Norm, $"Du at {u}, {v}");
            Assert.True(p.Dv.ChordTo(dv) < 1e-5 * p.Dv.Norm, $"Dv at {u}, {v}");
            Vec3 nu = (surface.At(u + h, v).Normal - surface.At(u - h, v).Normal) / (2 * h);
            Vec3 nv = (surface.At(u, v + k).Normal - surface.At(u, v - k).Normal) / (2 * k);

            // Weingarten: L = -Du . nu, M = -Du . nv = -Dv . nu, N = -Dv . nv.
            double scale = 1e-6 * p.Du.Norm;
            Assert.Equal(-p.Du.Dot(nu), p.L, scale);
            Assert.Equal(-p.Dv.Dot(nu), p.M, 1e-6 * p.Dv.Norm);
            Assert.Equal(-p.Dv.Dot(nv), p.N, 1e-5 * p.Dv.NormSquared / 1000);
        }
    }

    [Fact]
    public void AtStationsTheSecondDerivativesDoNotJump()
    {
        Job job = Demo("survey-launch");
        LoftedSurface surface = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        for (int i = 1; i + 1 < surface.StationU.Count; i++)
        {
            double u = surface.StationU[i];
            SurfacePoint a = surface.At(u - 1e-7, 0.4),
                b = surface.At(u + 1e-7, 0.4);
            Assert.Equal(a.L, b.L, 1e-10);
            Assert.Equal(a.M, b.M, 1e-7);
        }
    }

    [Fact]
    public void SectionsOfOneStationStayPlane()
    {
        Job job = Demo("pilot-skiff");
        LoftedSurface surface = HullLoft.Build(job.Offsets, job.Hull.Panel).Surface;
        for (int i = 0; i <= 60; i++)
        {
            double u = surface.UFrom + ((surface.UTo - surface.UFrom) * i / 60),
                x = surface.At(u, 0).P.X;
            Assert.All(
                Enumerable.Range(1, 5),
                k => Assert.Equal(x, surface.At(u, k / 5.0).P.X, 1e-9)
            );
        }
    }

    /// <summary>A hyperbolic paraboloid has straight sections and straight edges: the loft is exact, and so are its curvatures.</summary>
    [Fact]
    public void AHyparIsLoftedExactlyWithItsCurvatures()
    {
        const double twist = 1e-4,
            slope = 0.2;
        double[] stations = [0, 500, 1300, 2000, 3100, 4200, 5000, 6000];
        LoftedSurface loft = Loft.Through(
            [
                .. stations.Select(x =>
                    (IReadOnlyList<Vec3>)[new(x, 0, 0), new(x, 1000, 1000 * (slope + (twist * x)))]
                ),
            ],
            -Vec3.UnitZ,
            0.01
        );
        foreach (double u in new[] { 0, 777, 3000, 5900.0 })
        {
            foreach (double v in new[] { 0, 0.3, 1 })
            {
                SurfacePoint p = loft.At(u * loft.UTo / 6000, v);
                double y = p.P.Y,
                    w2 = 1 + (twist * twist * y * y) + Math.Pow(slope + (twist * p.P.X), 2);
                Assert.Equal(p.P.Y * (slope + (twist * p.P.X)), p.P.Z, 1e-9);
                double exact = -twist * twist / (w2 * w2);
                Assert.Equal(exact, p.GaussCurvature, 1e-9 * Math.Abs(exact) * 10);
            }
        }
    }

    /// <summary>Points of a circular cone with its apex as the stem: K = 0 up to the apex, and the normal has its limit there.</summary>
    [Fact]
    public void AConeComesOutFlatUpToItsApex()
    {
        double[] slant = [0, 300, 700, 1200, 1800, 2500, 3300];
        Vec3 a = new(Math.Cos(0.3), Math.Sin(0.3) * 0.5, Math.Sin(0.3)),
            b = new(Math.Cos(0.5), Math.Sin(0.5), Math.Sin(0.5) * 0.8);
        LoftedSurface loft = Loft.Through(
            [.. slant.Select(s => (IReadOnlyList<Vec3>)[s * a, s * b])],
            -Vec3.UnitZ,
            0.01
        );
        Vec3 normal = loft.At(1000, 500).Normal;
        foreach (double s in new[] { 1e-6, 1e-3, 1, 100, 3000 })
        {
            SurfacePoint p = loft.At(s, s / 2);
            Assert.True(Math.Abs(p.GaussCurvature) < 1e-15);
            Assert.True(p.Normal.ChordTo(normal) < 1e-9);
        }
    }

    [Fact]
    public void CurvatureConvergesTowardsAStemApex()
    {
        LoftedSurface surface = HullLoft
            .Build(Demo("tender").Offsets, Demo("tender").Hull.Panel)
            .Surface;
        double K(double s) => surface.At(surface.UFrom + s, s / 2).GaussCurvature;
        double limit = K(1e-4);
        Assert.True(double.IsFinite(limit));
        Assert.True(Math.Abs(K(1) - limit) < 0.02 * Math.Abs(limit) + 1e-12);
        Assert.True(Math.Abs(K(0.01) - limit) < 1e-3 * Math.Abs(limit) + 1e-12);
    }

    [Fact]
    public void CamberAtAnApexStaysBounded()
    {
        IReadOnlyList<Vec3> Section(double s) =>
            s == 0
                ? [Vec3.Zero, Vec3.Zero]
                :
                [
                    new(s, 0, 0),
                    new(s, 0.15 * s, (0.05 * s) - (1e-5 * s * s)),
                    new(s, 0.3 * s, 0.12 * s),
                ];
        LoftedSurface loft = Loft.Through(
            [.. new double[] { 0, 200, 450, 800, 1300, 2000, 2900 }.Select(Section)],
            -Vec3.UnitZ,
            0.01
        );
        double far = loft.At(1000, 500).GaussCurvature,
            near = loft.At(0.01, 0.005).GaussCurvature,
            at = loft.At(1e-7, 5e-8).GaussCurvature;
        Assert.True(Math.Abs(near) < 100 * Math.Abs(far) + 1e-7, $"{near} against {far}");
        Assert.True(Math.Abs(at - near) < 0.01 * Math.Abs(near) + 1e-9);
    }

    private static Vec3 Point(OffsetTable table, OffsetLine line, int station) =>
        new(
            OffsetRow.PositionMm(table, line, station),
            line.HalfBreadthsMm[station]!.Value,
            line.HeightsMm[station]!.Value
        );

    internal static Job Demo(string hull) =>
        JobReader.Read(Path.Combine(DemoTables.Folder(hull), "job.toml")).Job!;
}
