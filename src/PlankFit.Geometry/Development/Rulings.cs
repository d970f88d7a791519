using MathNet.Numerics.RootFinding;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>
/// Finds the rulings of the developable between a panel's two edges: a start by the strip of triangles that bends least,
/// then the exact condition solved ruling by ruling, with fans at the corners. Where no root is found, or q would run
/// backwards, the ruling is kept as the start gave it, marked as not found, with its warp.
/// </summary>
public static class Rulings
{
    private const int Samples = 72;

    /// <param name="patch">The panel.</param>
    /// <param name="pointMm">Edges nearer to each other than this meet in a point.</param>
    public static RulingSet Find(SurfacePatch patch, double pointMm = 0.01)
    {
        RulingCondition condition = new(patch);
        double U(int i) => patch.UFrom + (patch.URange * i / Samples);
        Vec3[] a = [.. Enumerable.Range(0, Samples + 1).Select(i => patch.OnLower(U(i)).P)];
        Vec3[] b = [.. Enumerable.Range(0, Samples + 1).Select(i => patch.OnUpper(U(i)).P)];
        List<(int I, int J)> path = RulingStart.Path(a, b);
        StartLine line = new(path, U);

        (double ps, double qs) = RulingEnds.Find(patch, condition, line, atStart: true, pointMm);
        (double pe, double qe) = RulingEnds.Find(patch, condition, line, atStart: false, pointMm);

        List<RulingSegment> segments = [];
        List<Ruling> rulings = [];
        if (!patch.ClosesAt(patch.UFrom, pointMm))
        {
            RulingFans.Add(condition, patch.UFrom, patch.UFrom, ps, qs, segments, rulings);
        }

        if (pe > ps && qe > qs)
        {
            Between(patch, condition, line, (ps, qs), (pe, qe), segments, rulings);
        }
        else
        {
            // Two fans that meet: the crease between them is a ruling like any other.
            rulings.Add(Judge(condition, pe, qs, 1));
        }

        if (!patch.ClosesAt(patch.UTo, pointMm))
        {
            RulingFans.Add(condition, pe, qe, patch.UTo, patch.UTo, segments, rulings);
        }

        Ruling worst = rulings.MaxBy(r => r.WarpDegrees);
        double share = rulings.Count(r => r.Found) / (double)rulings.Count;
        (double departure, Uv where) =
            share >= 1
                ? RulingDeparture.Greatest(patch, rulings)
                : (double.PositiveInfinity, default);
        return new([.. segments], [.. rulings], worst, share, departure, where);
    }

    private static void Between(
        SurfacePatch patch,
        RulingCondition condition,
        StartLine line,
        (double P, double Q) start,
        (double P, double Q) end,
        List<RulingSegment> segments,
        List<Ruling> rulings
    )
    {
        int n = 2 * Samples;
        double[] p = new double[n + 1],
            q = new double[n + 1];
        bool[] found = new bool[n + 1];
        for (int i = 0; i <= n; i++)
        {
            p[i] = i == n ? end.P : start.P + ((end.P - start.P) * i / n);
            double guess = i switch
            {
                0 => start.Q,
                _ when i == n => end.Q,
                >= 2 when found[i - 1] && found[i - 2] => (2 * q[i - 1]) - q[i - 2],
                _ => line.QAt(p[i]),
            };
            (q[i], found[i]) =
                i == 0 || i == n
                    ? (guess, Math.Abs(condition.At(p[i], guess)) < 1e-9)
                    : Solve(patch, condition, p[i], guess);
            if (!found[i] && i > 0 && i < n)
            {
                (q[i], found[i]) = Solve(patch, condition, p[i], line.QAt(p[i]));
            }

            // The last as it is: a rounding more, and the edge would be asked past its end.
            double even =
                i == n
                    ? end.Q
                    : start.Q + ((end.Q - start.Q) * (p[i] - start.P) / (end.P - start.P));
            if (AnyServes(patch, condition, p[i], even))
            {
                (q[i], found[i]) = (even, true);
            }

            bool backwards = i > 0 && q[i] < q[i - 1] - (1e-9 * patch.URange);
            found[i] &= !backwards;
            rulings.Add(Judge(condition, p[i], q[i], found[i] ? 0 : 1));
        }

        double dp = (end.P - start.P) / Samples;
        for (int i = 0; i < n; i += 2)
        {
            double[] slopes =
            [
                ((-3 * q[i]) + (4 * q[i + 1]) - q[i + 2]) / dp,
                (q[i + 2] - q[i]) / dp,
                ((3 * q[i + 2]) - (4 * q[i + 1]) + q[i]) / dp,
            ];
            RulingNode Node(int k) => new(p[i + k], q[i + k], dp, dp * (Rate(i + k) ?? slopes[k]));
            double? Rate(int k) => found[k] ? condition.Advance(p[k], q[k]) : null;
            segments.Add(new(Node(0), Node(1), Node(2)));
        }
    }

    /// <param name="open">1 where the condition is not met, 0 where it is.</param>
    private static Ruling Judge(RulingCondition condition, double p, double q, int open)
    {
        double warp = condition.Warp(p, q) * 180 / Math.PI;
        return new(p, q, open == 0, warp, condition.Length(p, q));
    }

    /// <summary>Parallel tangents, or a plane: the condition is met by any ruling hereabouts.</summary>
    private static bool AnyServes(SurfacePatch patch, RulingCondition condition, double p, double q)
    {
        bool Met(double x) =>
            Math.Abs(condition.At(p, Math.Clamp(x, patch.UFrom, patch.UTo)))
            < RulingCondition.Nought;
        double step = patch.URange / 200;
        return Met(q) && Met(q - step) && Met(q + step);
    }

    /// <summary>The root of the condition in q nearest to the guess, within a tenth of the panel's length.</summary>
    internal static (double Q, bool Found) Solve(
        SurfacePatch patch,
        RulingCondition condition,
        double p,
        double guess
    ) => Solve(patch, q => condition.At(p, q), guess);

    internal static (double X, bool Found) Solve(
        SurfacePatch patch,
        Func<double, double> f,
        double guess
    )
    {
        double step = patch.URange / 400;
        double Clamp(double x) => Math.Clamp(x, patch.UFrom, patch.UTo);
        double x0 = Clamp(guess),
            f0 = f(x0);
        if (f0 == 0)
        {
            return (x0, true);
        }

        double left = x0,
            right = x0,
            fLeft = f0,
            fRight = f0,
            greatest = Math.Abs(f0);
        for (int k = 1; k <= 40; k++)
        {
            double nextRight = Clamp(x0 + (k * step)),
                nextLeft = Clamp(x0 - (k * step));
            double fr = f(nextRight),
                fl = f(nextLeft);
            greatest = Math.Max(greatest, Math.Max(Math.Abs(fr), Math.Abs(fl)));
            if (greatest < RulingCondition.Nought && k >= 2)
            {
                return (x0, true);
            }

            if (Math.Sign(fr) != Math.Sign(fRight))
            {
                return Bracketed(right, nextRight);
            }

            if (Math.Sign(fl) != Math.Sign(fLeft))
            {
                return Bracketed(nextLeft, left);
            }

            (right, fRight, left, fLeft) = (nextRight, fr, nextLeft, fl);
        }

        return (x0, false);

        (double, bool) Bracketed(double lo, double hi) =>
            Brent.TryFindRoot(f, lo, hi, 1e-14 * patch.URange, 100, out double root)
                ? (root, true)
                : (root, Math.Abs(f(root)) < 1e-10);
    }
}
