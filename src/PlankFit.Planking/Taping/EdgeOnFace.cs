using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Taping;

/// <summary>Keel's edge or chine as a curve on a face, by the hull's u; lengths are along it.</summary>
internal sealed class EdgeOnFace(LoftedSurface hull, ISurface face, Func<double, double> v)
{
    /// <summary>Chords between two stations: with their shortfall taken off by halving they are within 0.001 mm where the edge is fair.</summary>
    private const int ChordsABay = 16;

    private const double WithinMm = 1e-7;

    public Uv UvAt(double u) => new(u, v(u));

    /// <summary>From one u to another, mm; negative where the other lies forward.</summary>
    public double Length(double from, double to)
    {
        if (from == to)
        {
            return 0;
        }

        (double a, double b) = from < to ? (from, to) : (to, from);
        double[] knots = [a, .. hull.StationU.Where(k => k > a && k < b), b];
        double sum = 0;
        for (int i = 1; i < knots.Length; i++)
        {
            double fine = Chords(knots[i - 1], knots[i], ChordsABay),
                coarse = Chords(knots[i - 1], knots[i], ChordsABay / 2);
            sum += fine + ((fine - coarse) / 3);
        }

        return Math.Sign(to - from) * sum;
    }

    /// <summary>The place so far along from a u; null where the hull ends before.</summary>
    public Uv? At(double from, double mm)
    {
        double u = from,
            done = 0;
        for (int i = 0; i < 30; i++)
        {
            double left = mm - done;
            if (Math.Abs(left) < WithinMm)
            {
                return UvAt(u);
            }

            const double h = 1e-3;
            double speed = face.At(u + h, v(u + h)).P.ChordTo(face.At(u - h, v(u - h)).P) / (2 * h),
                next = Math.Clamp(
                    u + (left / speed),
                    hull.UFrom - MostBeyond,
                    hull.UTo + MostBeyond
                );
            done += Length(u, next);
            u = next;
        }

        return null;
    }

    /// <summary>A seam's mark may lie a little past the ends where its plank does, mm of u.</summary>
    private const double MostBeyond = 50;

    private double Chords(double a, double b, int n)
    {
        double sum = 0;
        Vec3 p = face.At(a, v(a)).P;
        for (int i = 1; i <= n; i++)
        {
            double u = a + ((b - a) * i / n);
            Vec3 q = face.At(u, v(u)).P;
            sum += p.ChordTo(q);
            p = q;
        }

        return sum;
    }
}
