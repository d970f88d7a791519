using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>
/// A bottom ruled between two straight lines, a hyperbolic paraboloid: keel (x, k, 0), chine (x, k + w, h), w and h growing evenly aft. The loft has it exactly.
/// In closed form S(x, v) = (x, k + v w, v h), normals and so all parallel surfaces as well.
/// </summary>
internal sealed record StraightRuled(double StemMm, double StemDeadriseDegrees)
{
    public const double KeelHalf = 30,
        Length = 6000,
        Aft = 900;

    private double WideRate => (Aft - StemMm) / Length;
    private double StemHigh => StemMm * Math.Tan(StemDeadriseDegrees * Math.PI / 180);
    private double HighRate => ((Aft * Math.Tan(14 * Math.PI / 180)) - StemHigh) / Length;

    /// <summary>One layer of planks, the table to its inside: the keel's inner face is the plane z = 0.</summary>
    public Job Job(double thicknessMm, KeelLayerSpec? keel, OffsetsAreTo to = OffsetsAreTo.Inside)
    {
        double[] x = [0, 1100, 2300, 4100, Length];
        OffsetLine Line(string name, double v) =>
            new(
                name,
                [],
                [.. x.Select(a => (double?)Table(a, v).Z)],
                [.. x.Select(a => (double?)Table(a, v).Y)]
            );
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. x.Select((a, i) => new Station($"{i}", a))],
                    [Line("keel", 0), Line("chine", 1)]
                ),
                new("keel", "chine", [], to, KeelSide.Plumb),
                [
                    PlankLayer.Of(
                        "skin",
                        thicknessMm,
                        140,
                        Heads.Aft,
                        50,
                        null,
                        Hold.Width,
                        7.5,
                        0.5,
                        null
                    ),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        )
        {
            Keel = keel is null ? KeelSpec.None : KeelSpec.None with { Layers = [keel] },
        };
    }

    public Vec3 Table(double x, double v) =>
        new(x, KeelHalf + (v * (StemMm + (WideRate * x))), v * (StemHigh + (HighRate * x)));

    /// <summary>The unit normal out of the hull, the cross product of (0, w, h) and (1, v w', v h').</summary>
    public Vec3 Normal(double x, double v)
    {
        double w = StemMm + (WideRate * x),
            h = StemHigh + (HighRate * x);
        Vec3 n = new Vec3(0, w, h).Cross(new(1, v * WideRate, v * HighRate)).Unit();
        return n.Z < 0 ? n : -n;
    }

    public Vec3 Parallel(double x, double v, double offsetMm) =>
        Table(x, v) + (offsetMm * Normal(x, v));

    /// <summary>The (x, v) whose normal comes through a place so far from the table's surface, by its plan alone.</summary>
    public (double X, double V) Foot(Vec3 place, double offsetMm) =>
        Root(
            place.X,
            (place.Y - KeelHalf) / (StemMm + (WideRate * place.X)),
            (x, v) =>
            {
                Vec3 p = Parallel(x, v, offsetMm);
                return (p.X - place.X, p.Y - place.Y);
            }
        );

    /// <summary>The half-breadth at which the surface so far out comes to a height at x.</summary>
    public double HalfBreadth(double x, double z, double offsetMm)
    {
        (double at, double v) = Root(
            x,
            0.1,
            (a, b) =>
            {
                Vec3 p = Parallel(a, b, offsetMm);
                return (p.X - x, p.Z - z);
            }
        );
        return Parallel(at, v, offsetMm).Y;
    }

    /// <summary>Newton in two unknowns by differences.</summary>
    private static (double X, double V) Root(
        double x,
        double v,
        Func<double, double, (double A, double B)> miss
    )
    {
        for (int i = 0; i < 50; i++)
        {
            const double dx = 1e-3,
                dv = 1e-6;
            (double a, double b) = miss(x, v);
            (double ax, double bx) = miss(x + dx, v);
            (double av, double bv) = miss(x, v + dv);
            (ax, bx, av, bv) = ((ax - a) / dx, (bx - b) / dx, (av - a) / dv, (bv - b) / dv);
            double det = (ax * bv) - (av * bx),
                stepX = ((a * bv) - (b * av)) / det,
                stepV = ((b * ax) - (a * bx)) / det;
            (x, v) = (x - stepX, v - stepV);
            if (Math.Abs(a) + Math.Abs(b) < 1e-9)
            {
                return (x, v);
            }
        }

        throw new InvalidOperationException("no such place on the ruled bottom");
    }
}
