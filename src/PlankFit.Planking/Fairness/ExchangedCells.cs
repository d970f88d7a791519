using System.Collections.Immutable;

namespace PlankFit.Planking.Fairness;

/// <summary>Two cells that hold each other's values: neighbours of a row, or two rows at one station. Both errors are known, so two cells speak at once.</summary>
internal static class ExchangedCells
{
    /// <summary>Cells that differ by less than a quarter inch are as good one way as the other, mm.</summary>
    private const double DifferMm = 6;

    /// <summary>ln of how much rarer such an exchange is thought than an error in one given cell.</summary>
    private const double RarerLog = 2;

    public static IEnumerable<Slip> InARow(RowAtWork row, int index)
    {
        for (int k = 0; k + 1 < row.Left.Length; k++)
        {
            double error = row.ValuesMm[k] - row.ValuesMm[k + 1];
            bool neighbours = row.Left[k + 1] == row.Left[k] + 1;
            if (neighbours && Math.Abs(error) >= DifferMm)
            {
                yield return new(
                    row.Evidence.Exchanged(k, error) - RarerLog,
                    [
                        new(index, k, error, row.ValuesMm[k + 1]),
                        new(index, k + 1, -error, row.ValuesMm[k]),
                    ],
                    null,
                    1
                );
            }
        }
    }

    public static IEnumerable<Slip> AtAStation(ImmutableArray<RowAtWork> rows)
    {
        for (int a = 0; a < rows.Length; a++)
        {
            for (int b = a + 1; b < rows.Length; b++)
            {
                for (int k = 0; k < rows[a].Left.Length; k++)
                {
                    int j = rows[b].At(rows[a].Row.Stations[rows[a].Left[k]]);
                    if (j < 0)
                    {
                        continue;
                    }

                    double error = rows[a].ValuesMm[k] - rows[b].ValuesMm[j];
                    if (Math.Abs(error) >= DifferMm && Suspect(rows[a], k, rows[b], j))
                    {
                        yield return new(
                            rows[a].Evidence.Exactly(k, error)
                                + rows[b].Evidence.Exactly(j, -error)
                                - RarerLog,
                            [
                                new(a, k, error, rows[b].ValuesMm[j]),
                                new(b, j, -error, rows[a].ValuesMm[k]),
                            ],
                            null,
                            1
                        );
                    }
                }
            }
        }
    }

    /// <summary>Where neither cell is likelier wrong than right by itself, both together are not.</summary>
    private static bool Suspect(RowAtWork a, int k, RowAtWork b, int j) =>
        a.Evidence.At(k).LogOdds > 0 || b.Evidence.At(j).LogOdds > 0;
}
