using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>H2: z = y (0.2 + x/10 m), x 0 to 6 m, y 0 to 1 m, as a job and in closed form, mm.</summary>
internal static class Hypar
{
    private const double K = 1e-4;

    public static Job Job(double thicknessMm)
    {
        double[] x = [.. Enumerable.Range(0, 7).Select(i => 1000.0 * i)];
        OffsetLine Line(string name, double y) =>
            new(name, [], [.. x.Select(a => (double?)Z(a, y))], [.. x.Select(_ => (double?)y)]);
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. x.Select((a, i) => new Station($"{i}", a))],
                    [Line("keel", 0), Line("chine", 1000)]
                ),
                new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
                [
                    PlankLayer.Of(
                        "one",
                        thicknessMm,
                        150,
                        Heads.Aft,
                        45,
                        null,
                        Hold.Width,
                        30,
                        0.5,
                        null
                    ),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        );
    }

    public static double Z(double x, double y) => y * (0.2 + (K * x));

    /// <summary>Area of the surface over area in plan.</summary>
    public static double W(double x, double y) =>
        Math.Sqrt(1 + (K * y * K * y) + ((0.2 + (K * x)) * (0.2 + (K * x))));

    /// <summary>Normal curvature along a direction in plan (dx, dy): II = 2 k dx dy/W over I.</summary>
    public static double NormalCurvature(double x, double y, double dx, double dy)
    {
        double dz = (K * y * dx) + ((0.2 + (K * x)) * dy);
        return 2 * K * dx * dy / W(x, y) / ((dx * dx) + (dy * dy) + (dz * dz));
    }

    public static double Gauss(double x, double y) => -K * K / Math.Pow(W(x, y), 4);

    /// <summary>By Simpson's rule.</summary>
    public static Vec3 CentreOfAll()
    {
        const int n = 600,
            m = 100;
        double area = 0;
        Vec3 moment = Vec3.Zero;
        for (int i = 0; i <= n; i++)
        {
            for (int j = 0; j <= m; j++)
            {
                double x = 6000.0 * i / n,
                    y = 1000.0 * j / m,
                    share = Simpson(i, n) * Simpson(j, m) * W(x, y);
                area += share;
                moment += share * new Vec3(x, y, Z(x, y));
            }
        }

        return moment / area;
    }

    /// <summary>Area and centre of the surface over a polygon in plan: triangles from its first corner, signed, each cut into 16 × 16 with the mid-side rule.</summary>
    public static (double Area, Vec3 Centre) Within(IReadOnlyList<Vec2> polygon)
    {
        double area = 0;
        Vec3 moment = Vec3.Zero;
        for (int i = 1; i < polygon.Count - 1; i++)
        {
            Vec2 a = polygon[0],
                b = polygon[i] - a,
                c = polygon[i + 1] - a;
            double twice = b.Cross(c);
            const int n = 16;
            for (int p = 0; p < n; p++)
            {
                for (int q = 0; q < n - p; q++)
                {
                    Add(p, q, 1);
                    if (q < n - p - 1)
                    {
                        Add(p + 1, q + 1, -1);
                    }
                }
            }

            void Add(int p, int q, int turn)
            {
                Vec2 At(double s, double t) => a + ((s / n) * b) + ((t / n) * c);
                Vec2[] sides =
                [
                    At(p + (turn * 0.5), q),
                    At(p, q + (turn * 0.5)),
                    At(p + (turn * 0.5), q + (turn * 0.5)),
                ];
                foreach (Vec2 at in sides)
                {
                    double share = twice / 2 / (n * n) / 3 * W(at.X, at.Y);
                    area += share;
                    moment += share * new Vec3(at.X, at.Y, Z(at.X, at.Y));
                }
            }
        }

        return (area, moment / area);
    }

    private static double Simpson(int i, int n) =>
        i == 0 || i == n ? 1
        : i % 2 == 1 ? 4
        : 2;
}
