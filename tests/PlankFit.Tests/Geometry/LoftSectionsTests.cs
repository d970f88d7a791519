using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Sections of two to seven points, with and without a stem apex: through every point, plane, C2, and with true derivatives.</summary>
public sealed class LoftSectionsTests
{
    private static readonly double[] Stations = [0, 350, 800, 1400, 2100, 3000, 4100, 5300];

    public static TheoryData<int, bool> Kinds()
    {
        var kinds = new TheoryData<int, bool>();
        for (int points = 2; points <= Loft.MostPoints; points++)
        {
            kinds.Add(points, false);
            kinds.Add(points, true);
        }

        return kinds;
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void EveryPointIsOnTheSurface(int points, bool apex)
    {
        LoftedSurface loft = Made(points, apex);
        for (int i = 0; i < Stations.Length; i++)
        {
            IReadOnlyList<Vec3> section = Section(points, apex, Stations[i]);
            double[] chord = [.. section.Skip(1).Zip(section, (b, a) => a.ChordTo(b))];
            double u = loft.StationU[i];
            for (int j = 0; j < section.Count; j++)
            {
                double part = apex && i == 0 ? 0 : chord.Take(j).Sum() / chord.Sum();
                double miss = loft.At(u, part * loft.UpperV(u)).P.ChordTo(section[j]);
                Assert.True(miss < 1e-9, $"station {i}, point {j}: {miss} mm");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void SectionsBetweenStationsArePlaneToo(int points, bool apex)
    {
        LoftedSurface loft = Made(points, apex);
        for (double u = loft.UFrom; u <= loft.UTo; u += 37.3)
        {
            double x = loft.At(u, 0).P.X;
            for (int k = -1; k <= 6; k++)
            {
                Assert.Equal(x, loft.At(u, k / 5.0 * loft.UpperV(u)).P.X, 1e-9);
            }
        }
    }

    /// <summary>The second form changes by no more across a knot than it does over as long a way beside it; a spline of lower order would jump.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void CurvatureGoesThroughTheStations(int points, bool apex)
    {
        LoftedSurface loft = Made(points, apex);
        const double e = 1e-6;
        for (int i = 1; i + 1 < loft.StationU.Count; i++)
        {
            double u = loft.StationU[i],
                v = 0.43 * loft.UpperV(u);
            SurfacePoint before = loft.At(u - e, v),
                after = loft.At(u + e, v);
            double unit = 1e-9 / 1000;
            Assert.Equal(before.L / before.E, after.L / after.E, unit);
            Assert.Equal(
                before.M / before.Du.Norm / before.Dv.Norm,
                after.M / after.Du.Norm / after.Dv.Norm,
                unit
            );
            Assert.Equal(before.N / before.G, after.N / after.G, unit);
            Assert.True(before.Normal.ChordTo(after.Normal) < 1e-8);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void DerivativesAreThoseOfThePositions(int points, bool apex)
    {
        LoftedSurface loft = Made(points, apex);
        for (int i = 1; i < 60; i++)
        {
            double u = loft.UFrom + ((loft.UTo - loft.UFrom) * i / 60.13),
                v = loft.UpperV(u) * (-0.1 + (1.2 * (i % 7) / 6));
            Differences.Hold(loft, new(u, v));
        }
    }

    /// <summary>
    /// Where keel and chine meet, every ray out of the point has its own limit of curvature, and it is reached: nothing blows up and nothing switches.
    /// (Of two or three points all rays have the same one.)
    /// </summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(7)]
    public void AlongEveryRayCurvatureHasItsLimitAtTheApex(int points)
    {
        LoftedSurface loft = Made(points, apex: true);
        foreach (double t in new[] { 0.05, 0.3, 0.5, 0.9 })
        {
            (double Greater, double Lesser) At(double s) =>
                loft.At(loft.UFrom + s, t * s).PrincipalCurvatures;
            foreach (double s in new[] { 1e-2, 1e-4, 1e-6 })
            {
                // Curvature is smooth along the ray: its change is at most what s over the first bay would make of it, generously.
                double allowed = 20 * s / 350 * 1e-3;
                Assert.Equal(At(1e-7).Greater, At(s).Greater, allowed + 1e-12);
                Assert.Equal(At(1e-7).Lesser, At(s).Lesser, allowed + 1e-12);
            }

            Assert.True(Math.Abs(At(1e-7).Greater) + Math.Abs(At(1e-7).Lesser) < 0.01);
        }
    }

    /// <summary>Keel and chine are alike to the loft: sections given the other way round make the same surface.</summary>
    [Fact]
    public void KeelAndChineMayChangePlaces()
    {
        LoftedSurface one = Made(4, apex: false),
            other = Loft.Through(
                [
                    .. Stations.Select(x =>
                        (IReadOnlyList<Vec3>)[.. Section(4, apex: false, x).Reverse()]
                    ),
                ],
                -Vec3.UnitZ,
                0.01
            );
        for (double u = 20; u < one.UTo; u += 97)
        {
            SurfacePoint a = one.At(u, 0.3),
                b = other.At(u, 0.7);
            Assert.True(a.P.ChordTo(b.P) < 1e-9);
            Assert.True(a.Normal.ChordTo(b.Normal) < 1e-12);
            Assert.Equal(a.GaussCurvature, b.GaussCurvature, 1e-18);
        }
    }

    [Fact]
    public void TheNormalIsOnTheSideAskedFor()
    {
        foreach (Vec3 outer in new[] { Vec3.UnitZ, -Vec3.UnitZ })
        {
            foreach (bool apex in new[] { false, true })
            {
                LoftedSurface loft = Made(4, apex, outer);
                for (double u = 500; u < loft.UTo; u += 500)
                {
                    Assert.True(loft.At(u, 0.5 * loft.UpperV(u)).Normal.Dot(outer) > 0);
                }
            }
        }
    }

    [Fact]
    public void SectionsThatCannotBeAreRefused()
    {
        Vec3[] one = [Vec3.Zero];
        Vec3[] two = [Vec3.Zero, new(0, 1, 0)];
        Vec3[] eight = [.. Enumerable.Range(0, 8).Select(j => new Vec3(0, j, 0))];
        Assert.Throws<ArgumentException>(() => Loft.Through([two], Vec3.UnitZ, 0.01));
        Assert.Throws<ArgumentException>(() => Loft.Through([two, one], Vec3.UnitZ, 0.01));
        Assert.Throws<ArgumentException>(() => Loft.Through([two, eight], Vec3.UnitZ, 0.01));
        Assert.Throws<ArgumentException>(() => Loft.Through([two, two], Vec3.UnitZ, 0.01));
        Assert.Throws<ArgumentException>(() =>
            Loft.Through([two, [new(9, 0, 0), new(9, 0, 0)]], Vec3.UnitZ, 0.01)
        );
    }

    private static LoftedSurface Made(int points, bool apex, Vec3? outer = null) =>
        Loft.Through(
            [.. Stations.Select(x => Section(points, apex, x))],
            outer ?? -Vec3.UnitZ,
            0.01
        );

    /// <summary>A bottom of our own: rockered keel, chine sweeping out and flattening, camber that grows with the square of the distance from the stem.</summary>
    private static Vec3[] Section(int points, bool apex, double x)
    {
        double part = x / 5300,
            reach = apex ? part : 0.15 + (0.85 * part);
        Vec3 keel = new(x, 0, 260 * (1 - part) * (1 - part)),
            chine =
                new(
                    x,
                    1000 * reach * (1.45 - (0.45 * part)),
                    keel.Z + (reach * (620 - (330 * part)))
                );
        double camber = 30 * reach * reach;
        return
        [
            .. Enumerable
                .Range(0, points)
                .Select(j =>
                {
                    // Unevenly spaced, as diagonals are.
                    double t = Math.Pow((double)j / (points - 1), 1.1);
                    return keel
                        + (t * (chine - keel))
                        + (camber * 4 * t * (1 - t) * (1 + (0.4 * t)) * -Vec3.UnitZ);
                }),
        ];
    }
}
