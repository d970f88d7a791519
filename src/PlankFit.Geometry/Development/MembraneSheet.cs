using System.Runtime.CompilerServices;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>
/// The elastic energy of a thin even sheet that is flat when free and lies on the panel: Green's strain between the
/// surface's own metric and the flat, plane stress, Poisson's ratio as given, modulus one. Bending is left out: it does not
/// bear on the flat shape of a thin sheet. The flat is a bicubic spline; the surface's metric enters exactly, at three by three
/// Gauss points a span.
/// </summary>
internal sealed class MembraneSheet
{
    private const int Points = 9;
    private readonly CubicBasis along;
    private readonly CubicBasis across;
    private readonly double[] gradients;
    private readonly double[] weights;
    private readonly double d;
    private readonly double dNu;
    private readonly double g;

    public MembraneSheet(SurfacePatch patch, CubicBasis along, CubicBasis across, double poisson)
    {
        (this.along, this.across) = (along, across);
        d = 1 / (1 - (poisson * poisson));
        dNu = poisson * d;
        g = 0.5 / (1 + poisson);
        weights = new double[along.Spans * across.Spans * Points];
        gradients = new double[weights.Length * 32];
        Prepare(patch);
    }

    /// <summary>Gauss curvature summed over the panel, rad: what no flat sheet can have.</summary>
    public double GaussTurn { get; private set; }

    public double AreaMm2 { get; private set; }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Prepare(SurfacePatch patch)
    {
        double[] gauss = [0.5 - Math.Sqrt(0.15), 0.5, 0.5 + Math.Sqrt(0.15)];
        double[] share = [5.0 / 18, 8.0 / 18, 5.0 / 18];
        Span<double> a = stackalloc double[4],
            da = stackalloc double[4],
            c = stackalloc double[4],
            dc = stackalloc double[4];
        for (int e = 0; e < along.Spans; e++)
        {
            for (int gi = 0; gi < 3; gi++)
            {
                double s = (e + gauss[gi]) / along.Spans,
                    u = patch.UFrom + (s * patch.URange),
                    low = patch.Lower(u),
                    width = patch.Upper(u) - low,
                    lowRate = patch.Slope(patch.Lower, u),
                    widthRate = patch.Slope(patch.Upper, u) - lowRate;
                along.At(e, s, a, da);
                for (int f = 0; f < across.Spans; f++)
                {
                    for (int gj = 0; gj < 3; gj++)
                    {
                        double t = (f + gauss[gj]) / across.Spans;
                        across.At(f, t, c, dc);
                        SurfacePoint x = patch.Surface.At(u, low + (t * width));
                        Vec3 xs = patch.URange * (x.Du + ((lowRate + (t * widthRate)) * x.Dv)),
                            xt = width * x.Dv;
                        double g11 = xs.Dot(xs),
                            g12 = xs.Dot(xt),
                            rest = xt.Dot(xt) - (g12 * g12 / g11),
                            i1 = 1 / Math.Sqrt(g11),
                            i2 = 1 / Math.Sqrt(rest),
                            skew = g12 / g11;
                        int at = (((e * across.Spans) + f) * Points) + (3 * gi) + gj;
                        double area =
                            share[gi]
                            * share[gj]
                            * Math.Sqrt(g11 * rest)
                            / (along.Spans * across.Spans);
                        weights[at] = area;
                        AreaMm2 += area;
                        GaussTurn += area * x.GaussCurvature;
                        Span<double> gradient = gradients.AsSpan(at * 32, 32);
                        for (int k = 0; k < 16; k++)
                        {
                            double ns = da[k >> 2] * c[k & 3],
                                nt = a[k >> 2] * dc[k & 3];
                            gradient[2 * k] = ns * i1;
                            gradient[(2 * k) + 1] = (nt - (skew * ns)) * i2;
                        }
                    }
                }
            }
        }
    }

    /// <summary>
    /// Energy of the flat whose control points are given, its gradient, and Gauss and Newton's matrix, both added to what
    /// is passed in. unknown[k] is the number of control point k among the free ones.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Assemble(Vec2[] control, int[] unknown, double[] gradient, BandedMatrix? matrix)
    {
        double energy = 0;
        Span<double> bx = stackalloc double[16 * 6],
            local = stackalloc double[32],
            stiff = stackalloc double[32 * 32];
        Span<Vec2> x = stackalloc Vec2[16];
        Span<int> number = stackalloc int[16];
        for (int element = 0; element < along.Spans * across.Spans; element++)
        {
            (int e, int f) = (element / across.Spans, element % across.Spans);
            for (int k = 0; k < 16; k++)
            {
                int index = ((e + (k >> 2)) * across.Count) + f + (k & 3);
                (x[k], number[k]) = (control[index], unknown[index]);
            }

            local.Clear();
            stiff.Clear();
            for (int p = element * Points; p < (element + 1) * Points; p++)
            {
                ReadOnlySpan<double> n = gradients.AsSpan(p * 32, 32);
                double x1 = 0,
                    x2 = 0,
                    y1 = 0,
                    y2 = 0;
                for (int k = 0; k < 16; k++)
                {
                    x1 += x[k].X * n[2 * k];
                    x2 += x[k].X * n[(2 * k) + 1];
                    y1 += x[k].Y * n[2 * k];
                    y2 += x[k].Y * n[(2 * k) + 1];
                }

                double w = weights[p],
                    e11 = 0.5 * ((x1 * x1) + (y1 * y1) - 1),
                    e22 = 0.5 * ((x2 * x2) + (y2 * y2) - 1),
                    e12 = (x1 * x2) + (y1 * y2),
                    s11 = w * ((d * e11) + (dNu * e22)),
                    s22 = w * ((dNu * e11) + (d * e22)),
                    s12 = w * g * e12;
                energy += 0.5 * ((s11 * e11) + (s22 * e22) + (s12 * e12));
                for (int k = 0; k < 16; k++)
                {
                    double n1 = n[2 * k],
                        n2 = n[(2 * k) + 1];
                    Span<double> b = bx.Slice(6 * k, 6);
                    b[0] = x1 * n1;
                    b[1] = x2 * n2;
                    b[2] = (x1 * n2) + (x2 * n1);
                    b[3] = y1 * n1;
                    b[4] = y2 * n2;
                    b[5] = (y1 * n2) + (y2 * n1);
                    local[2 * k] += (s11 * b[0]) + (s22 * b[1]) + (s12 * b[2]);
                    local[(2 * k) + 1] += (s11 * b[3]) + (s22 * b[4]) + (s12 * b[5]);
                }

                if (matrix is not null)
                {
                    AddStiffness(stiff, bx, w);
                }
            }

            Scatter(local, stiff, number, gradient, matrix);
        }

        return energy;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddStiffness(Span<double> stiff, ReadOnlySpan<double> b, double w)
    {
        double d = w * this.d,
            dn = w * dNu,
            g = w * this.g;
        for (int r = 0; r < 32; r++)
        {
            double c0 = (d * b[3 * r]) + (dn * b[(3 * r) + 1]),
                c1 = (dn * b[3 * r]) + (d * b[(3 * r) + 1]),
                c2 = g * b[(3 * r) + 2];
            Span<double> row = stiff.Slice(32 * r, r + 1);
            for (int q = 0, m = 0; q < row.Length; q++, m += 3)
            {
                row[q] += (c0 * b[m]) + (c1 * b[m + 1]) + (c2 * b[m + 2]);
            }
        }
    }

    private static void Scatter(
        ReadOnlySpan<double> local,
        ReadOnlySpan<double> stiff,
        ReadOnlySpan<int> number,
        double[] gradient,
        BandedMatrix? matrix
    )
    {
        for (int r = 0; r < 32; r++)
        {
            int row = (2 * number[r >> 1]) + (r & 1);
            gradient[row] += local[r];
            for (int q = 0; matrix is not null && q <= r; q++)
            {
                int column = (2 * number[q >> 1]) + (q & 1);
                // Control points that are one point (at an apex) meet on both sides of the diagonal.
                double twice = row == column && q != r ? 2 : 1;
                matrix[Math.Max(row, column), Math.Min(row, column)] += twice * stiff[(32 * r) + q];
            }
        }
    }
}
