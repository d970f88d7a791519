using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// Fairs a table within a tolerance that a person asked for: each row becomes the one whose curvature changes most evenly among all that stay within
/// the tolerance of the table. All of the tolerance may be spent. Never done unasked, and every move is listed.
/// </summary>
public static class Fairing
{
    /// <summary>A row with a cell further out than this many tolerances holds a slip, and fairing would only spread it to the neighbours.</summary>
    private const double SlipInTolerances = 2;

    /// <summary>Third derivative: the curvature changes evenly. The wooden batten's second leaves it rougher for the same tolerance.</summary>
    private const int Order = 3;

    /// <summary>The finest step that faired values are written in: 0.1 mm or 1/32 in.</summary>
    public static double StepMm(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 0.1 : LengthUnits.MmPerInch / 32;

    /// <param name="toleranceMm">The most that any value may move, more than nothing.</param>
    /// <param name="unit">The table's unit: values come out on its finest marks.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not a positive number.</exception>
    public static FairedTable Fair(OffsetTable table, double toleranceMm, LengthUnit unit)
    {
        if (!(toleranceMm > 0) || !double.IsFinite(toleranceMm))
        {
            throw new ArgumentOutOfRangeException(
                nameof(toleranceMm),
                toleranceMm,
                "the tolerance must be a length greater than nothing"
            );
        }

        FairnessReport report = FairnessCheck.Judge(table, unit);
        List<FairingMove> moves = [];
        List<Finding> findings =
        [
            .. report.NotJudged.Select(f => f with { Message = NotFaired(f) }),
        ];
        foreach (JudgedRow judged in report.Rows)
        {
            Suspicion? slip = judged.Suspicions.FirstOrDefault();
            if (slip is not null && Math.Abs(slip.ResidualMm) > SlipInTolerances * toleranceMm)
            {
                findings.Add(
                    new(
                        Severity.Warning,
                        judged.Row.Name,
                        $"not faired: at station {slip.Station} it lies {slip.Stands(unit)}, too far for this tolerance; mend or confirm that value first"
                    )
                );
                continue;
            }

            moves.AddRange(Moves(table, judged.Row, toleranceMm, StepMm(unit)));
        }

        return new(With(table, moves), [.. moves], [.. findings]);
    }

    private static string NotFaired(Finding notJudged) =>
        notJudged.Message.Replace(
            "not judged for fairness",
            "not faired",
            StringComparison.Ordinal
        );

    private static IEnumerable<FairingMove> Moves(
        OffsetTable table,
        OffsetRow row,
        double tolerance,
        double step
    )
    {
        int n = row.ValuesMm.Length;
        double[] low = new double[n];
        double[] high = new double[n];
        for (int i = 0; i < n; i++)
        {
            double y = row.ValuesMm[i];
            bool held = MeetsAnother(table, row.Line, row.Stations[i]);
            double floor = row.Measure == Measure.HalfBreadth && y >= 0 ? 0 : double.MinValue;
            low[i] = held ? y : Math.Max(floor, y - tolerance);
            high[i] = held ? y : y + tolerance;
        }

        ImmutableArray<double> faired = Batten.Fair(
            row.XMm.AsSpan(),
            row.ValuesMm.AsSpan(),
            low,
            high,
            Order
        );
        double[] settled = RuleMarks.Settle(
            EnergyMatrix.OnUnitSpan(row.XMm.AsSpan(), Order),
            row.ValuesMm,
            faired,
            low,
            high,
            step
        );
        return Enumerable
            .Range(0, n)
            .Where(i => settled[i] != row.ValuesMm[i])
            .Select(i => new FairingMove(
                row.Line,
                row.Measure,
                table.Stations[row.Stations[i]].Name,
                row.Stations[i],
                row.ValuesMm[i],
                settled[i]
            ));
    }

    /// <summary>Whether two lines come together there, as keel and chine at a stem: a meeting point stays where it is, or it would open.</summary>
    private static bool MeetsAnother(OffsetTable table, string name, int station)
    {
        OffsetLine line = table.Find(name)!;
        return table.Lines.Any(other =>
            other.Name != name
            && line.HeightsMm[station] is { } z
            && line.HalfBreadthsMm[station] is { } y
            && other.HeightsMm[station] == z
            && other.HalfBreadthsMm[station] == y
            && OffsetRow.PositionMm(table, other, station)
                == OffsetRow.PositionMm(table, line, station)
        );
    }

    private static OffsetTable With(OffsetTable table, List<FairingMove> moves)
    {
        var lines = table.Lines.ToBuilder();
        foreach (FairingMove move in moves)
        {
            int i = table.Lines.IndexOf(table.Find(move.Line)!);
            lines[i] =
                move.Measure == Measure.Height
                    ? lines[i] with
                    {
                        HeightsMm = lines[i].HeightsMm.SetItem(move.StationIndex, move.NewMm),
                    }
                    : lines[i] with
                    {
                        HalfBreadthsMm = lines[i]
                            .HalfBreadthsMm.SetItem(move.StationIndex, move.NewMm),
                    };
        }

        return table with
        {
            Lines = lines.ToImmutable(),
        };
    }
}
