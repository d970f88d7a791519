using System.Numerics;
using System.Runtime.CompilerServices;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A symmetric positive definite matrix of which only a band below the diagonal is stored, row by row:
/// entry (i, j) with i - Band ≤ j ≤ i. Solved by Cholesky's method in place.
/// </summary>
internal sealed class BandedMatrix(int size, int band)
{
    private readonly int stride = band + 1;
    private readonly double[] a = new double[size * (band + 1)];

    public int Size => size;

    public ref double this[int i, int j] => ref a[(i * stride) + j - i + band];

    public void Clear() => Array.Clear(a);

    /// <summary>Solves A x = b; A is overwritten by its factor and b by x. False where A is not positive definite.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Solve(double[] b)
    {
        for (int i = 0; i < size; i++)
        {
            int first = Math.Max(0, i - band);
            for (int j = first; j <= i; j++)
            {
                int from = Math.Max(first, j - band);
                double sum =
                    this[i, j]
                    - Dot(
                        a.AsSpan((i * stride) + from - i + band, j - from),
                        a.AsSpan((j * stride) + from - j + band, j - from)
                    );
                if (j < i)
                {
                    this[i, j] = sum / this[j, j];
                }
                else if (sum > 0)
                {
                    this[i, i] = Math.Sqrt(sum);
                }
                else
                {
                    return false;
                }
            }
        }

        for (int i = 0; i < size; i++)
        {
            int first = Math.Max(0, i - band);
            double sum =
                b[i]
                - Dot(
                    a.AsSpan((i * stride) + first - i + band, i - first),
                    b.AsSpan(first, i - first)
                );
            b[i] = sum / this[i, i];
        }

        for (int i = size - 1; i >= 0; i--)
        {
            b[i] /= this[i, i];
            for (int j = Math.Max(0, i - band); j < i; j++)
            {
                b[j] -= this[i, j] * b[i];
            }
        }

        return true;
    }

    private static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Vector<double> sum = Vector<double>.Zero;
        int k = 0;
        for (; k <= x.Length - Vector<double>.Count; k += Vector<double>.Count)
        {
            sum += new Vector<double>(x[k..]) * new Vector<double>(y[k..]);
        }

        double total = Vector.Sum(sum);
        for (; k < x.Length; k++)
        {
            total += x[k] * y[k];
        }

        return total;
    }
}
