using System.Numerics;

namespace PlankFit.Tests.Nesting.Sheets.Guillotine;

/// <summary>
/// The most that every size of rectangle is worth, cut edge to edge into any number of each item, at given values of items (Gilmore and Gomory 1966,
/// over normal patterns as Beasley 1985 has it; both from memory).
/// </summary>
internal sealed class SheetValues
{
    private readonly SheetGrid grid;
    private readonly double[] values;
    private readonly double[] items;
    private readonly int ny;

    /// <param name="values">By item of the grid; what is worth nothing or less is never cut.</param>
    public SheetValues(SheetGrid grid, double[] values)
    {
        this.grid = grid;
        this.values = values;
        ny = grid.Y.Length;
        items = new double[grid.X.Length * ny];
        for (int k = 0; k < values.Length; k++)
        {
            int at = At(Array.BinarySearch(grid.X, grid.Items[k].Length), PlaceY(k));
            items[at] = Math.Max(items[at], values[k]);
        }

        Best = new double[items.Length];
        for (int i = 1; i < grid.X.Length; i++)
        {
            Span<double> row = Best.AsSpan(i * ny, ny);
            items.AsSpan(i * ny, ny).CopyTo(row);
            for (int a = 0; 2 * grid.X[a] <= grid.X[i]; a++)
            {
                // Cut at nought, the rest is the next smaller length.
                int rest = a == 0 ? i - 1 : grid.RestX[(i * grid.X.Length) + a];
                Raise(row, Best.AsSpan(a * ny, ny), Best.AsSpan(rest * ny, ny));
            }

            for (int j = 1; j < ny; j++)
            {
                double best = Math.Max(row[j], row[j - 1]);
                for (int b = 1; 2 * grid.Y[b] <= grid.Y[j]; b++)
                {
                    best = Math.Max(best, row[b] + row[grid.RestY[(j * ny) + b]]);
                }

                row[j] = best;
            }
        }
    }

    /// <summary>By place along and across, at [i * Y.Length + j].</summary>
    public double[] Best { get; }

    public double Whole => Best[^1];

    /// <summary>
    /// The most that can be added to a rectangle in the sheet's first corner by joining others to it until it is the sheet (Viswanathan and Bagchi 1993, from memory), by
    /// its size.
    /// </summary>
    public double[] Around()
    {
        int nx = grid.X.Length;
        double[] around = new double[Best.Length];
        for (int i = nx - 1; i >= 0; i--)
        {
            Span<double> row = around.AsSpan(i * ny, ny);
            for (int to = i + 1; to < nx; to++)
            {
                Raise(
                    row,
                    around.AsSpan(to * ny, ny),
                    Best.AsSpan(grid.RestX[(to * nx) + i] * ny, ny)
                );
            }

            for (int j = ny - 1; j >= 0; j--)
            {
                double best = row[j];
                for (int to = j + 1; to < ny; to++)
                {
                    best = Math.Max(best, row[to] + Best[(i * ny) + grid.RestY[(to * ny) + j]]);
                }

                row[j] = best;
            }
        }

        return around;
    }

    /// <summary>One way to get what a size is worth, found by asking again which way gave it.</summary>
    /// <param name="leaf">What becomes of a rectangle that is not cut: its size as places along and across, and the grid's item in it or −1.</param>
    public SheetPart? Way(int i, int j, Func<int, int, int, SheetPart?> leaf)
    {
        double best = Best[At(i, j)];
        if (best <= 0)
        {
            return leaf(i, j, -1);
        }

        for (int k = 0; k < values.Length; k++)
        {
            if (
                values[k] == best
                && grid.Items[k].Length <= grid.X[i]
                && grid.Items[k].Width <= grid.Y[j]
            )
            {
                return leaf(i, j, k);
            }
        }

        for (int a = 1; 2 * grid.X[a] <= grid.X[i]; a++)
        {
            int rest = grid.RestX[(i * grid.X.Length) + a];
            if (Best[At(a, j)] + Best[At(rest, j)] == best)
            {
                return SheetPart.Join(Way(rest, j, leaf), Way(a, j, leaf), beside: true);
            }
        }

        for (int b = 1; 2 * grid.Y[b] <= grid.Y[j]; b++)
        {
            int rest = grid.RestY[(j * ny) + b];
            if (Best[At(i, b)] + Best[At(i, rest)] == best)
            {
                return SheetPart.Join(Way(i, rest, leaf), Way(i, b, leaf), beside: false);
            }
        }

        return i > 0 && Best[At(i - 1, j)] == best ? Way(i - 1, j, leaf) : Way(i, j - 1, leaf);
    }

    private int At(int i, int j) => (i * ny) + j;

    private int PlaceY(int item) => Array.BinarySearch(grid.Y, grid.Items[item].Width);

    /// <summary>to = the greater of to and the sum.</summary>
    private static void Raise(Span<double> to, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int j = 0;
        for (; j + Vector<double>.Count <= to.Length; j += Vector<double>.Count)
        {
            Vector
                .Max(
                    new Vector<double>(to[j..]),
                    new Vector<double>(a[j..]) + new Vector<double>(b[j..])
                )
                .CopyTo(to[j..]);
        }

        for (; j < to.Length; j++)
        {
            to[j] = Math.Max(to[j], a[j] + b[j]);
        }
    }
}
