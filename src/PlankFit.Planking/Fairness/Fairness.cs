using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>Judges whether every line of a table of offsets runs fair, and names the cells that do not.</summary>
public static class Fairness
{
    /// <summary>
    /// Heights and half-breadths of every line, each over its own x. Rows of positions are taken as they are. The ends of a row are judged only through
    /// their neighbours: no method tells a wrong end value from a fair one.
    /// </summary>
    /// <param name="unit">The unit the table is written in: slips of the pen are sought in its notation.</param>
    public static FairnessReport Judge(OffsetTable table, LengthUnit unit)
    {
        List<JudgedRow> rows = [];
        List<Finding> notJudged = [];
        foreach (OffsetRow row in OffsetRow.All(table))
        {
            if (WhyNot(row) is { } reason)
            {
                notJudged.Add(new(Severity.Note, row.Name, reason));
                continue;
            }

            rows.Add(
                new(
                    row,
                    SecondDifferences.Of(row.XMm.AsSpan(), row.ValuesMm.AsSpan()),
                    Suspicions(table, row, unit)
                )
            );
        }

        return new(
            [.. rows],
            [.. rows.SelectMany(r => r.Suspicions).OrderByDescending(s => Math.Abs(s.ResidualMm))],
            [.. notJudged]
        );
    }

    private static ImmutableArray<Suspicion> Suspicions(
        OffsetTable table,
        OffsetRow row,
        LengthUnit unit
    ) =>
        [
            .. Misreadings
                .Find(row.XMm.AsSpan(), row.ValuesMm.AsSpan(), Misreadings.AlarmMm)
                .Select(m => ToSuspicion(table, row, unit, m))
                .OrderByDescending(s => Math.Abs(s.ResidualMm)),
        ];

    private static Suspicion ToSuspicion(
        OffsetTable table,
        OffsetRow row,
        LengthUnit unit,
        Misreading m
    )
    {
        int station = row.Stations[m.Index];
        return new(
            row.Line,
            row.Measure,
            table.Stations[station].Name,
            station,
            m.Residual,
            row.ValuesMm[m.Index] - m.Residual,
            m.Share,
            LikelyCause.Of(table, row, m, unit)
        );
    }

    private static string? WhyNot(OffsetRow row)
    {
        if (row.Stations.Length < Misreadings.FewestPoints)
        {
            return $"not judged for fairness: {row.Stations.Length} known values, at least {Misreadings.FewestPoints} are needed";
        }

        for (int i = 1; i < row.XMm.Length; i++)
        {
            if (!(row.XMm[i] > row.XMm[i - 1]))
            {
                return "not judged for fairness: its points do not go steadily aft; check its positions";
            }
        }

        return null;
    }
}
