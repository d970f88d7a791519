using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// Seeks what makes a table unfair, the likeliest explanation first, then again with what it explains put aside, until nothing is likely enough. Single cells,
/// cells that changed places, rows that did at a station and stations out of place are weighed against each other, so that one slip is told once.
/// </summary>
internal static class SlipSearch
{
    /// <summary>The least ln of odds that is told. Held by the rates of false alarms in the tests.</summary>
    public const double ToldLog = 0.25;

    /// <summary>The least alarm, mm: readings to a sixteenth of an inch are good to 0.8 mm, and the point and both neighbours err.</summary>
    public const double AlarmMm = 2.5;

    /// <summary>The alarm where a table is written more coarsely, in standard deviations of its readings.</summary>
    private const double AlarmReadings = 4.5;

    /// <summary>A row with fewer known points than this is not judged.</summary>
    public const int FewestPoints = 5;

    /// <summary>More slips than one in so many points are a line drawn so, or a table past mending.</summary>
    private const int PointsToASlip = 4;

    /// <param name="rows">All with as many points as are needed.</param>
    public static ImmutableArray<Slip> Find(
        OffsetTable table,
        ImmutableArray<OffsetRow> rows,
        LengthUnit unit
    )
    {
        double reading = ReadingErrors.ExpectedMm([.. rows.SelectMany(r => r.ValuesMm)], unit);
        List<(ImmutableArray<double> X, ImmutableArray<SmoothKind> Kinds)> known = [];
        ImmutableArray<SmoothKind> Kinds(ImmutableArray<double> x)
        {
            // Most rows share their stations, and the kinds are dear.
            int at = known.FindIndex(k => k.X.AsSpan().SequenceEqual(x.AsSpan()));
            if (at < 0)
            {
                known.Add((x, SmoothKinds.On(x.AsSpan())));
                at = known.Count - 1;
            }

            return known[at].Kinds;
        }

        RowEvidence Judge(ImmutableArray<double> x, ImmutableArray<double> y) =>
            RowEvidence.Of(Kinds(x), y.AsSpan(), reading);
        RowEvidence[] alone = [.. rows.Select(r => Judge(r.XMm, r.ValuesMm))];
        ImmutableArray<ImmutableArray<double>> others = ReadingErrors.ByOthers(alone);
        RowAtWork[] work =
        [
            .. rows.Select(
                (r, i) =>
                    new RowAtWork(
                        r,
                        [.. Enumerable.Range(0, r.XMm.Length)],
                        r.XMm,
                        r.ValuesMm,
                        alone[i].Knowing(others[i])
                    )
            ),
        ];
        int[] slips = [.. rows.Select(r => Math.Max(1, r.XMm.Length / PointsToASlip))];
        List<Slip> found = [];
        double alarm = Math.Max(AlarmMm, AlarmReadings * reading);
        while (Best(table, [.. work], slips, alarm, unit) is { } slip)
        {
            found.Add(Whole(slip, work));
            bool mended = slip.Cells.All(c => c.MeantMm is not null) && slip.Cells.Length > 1;
            foreach (WrongCell cell in slip.Cells)
            {
                slips[cell.Row]--;
                RowAtWork next = mended
                    ? work[cell.Row].Holding(cell.Point, cell.MeantMm!.Value)
                    : work[cell.Row].Without(cell.Point);
                work[cell.Row] = next with
                {
                    Evidence = Judge(next.XMm, next.ValuesMm).Knowing(others[cell.Row]),
                };
            }
        }

        return [.. found];
    }

    private static Slip? Best(
        OffsetTable table,
        ImmutableArray<RowAtWork> rows,
        int[] slips,
        double alarm,
        LengthUnit unit
    )
    {
        bool Open(int row) => slips[row] > 0 && rows[row].Left.Length >= FewestPoints;
        List<Slip> all = [];
        for (int i = 0; i < rows.Length; i++)
        {
            RowAtWork row = rows[i];
            if (Open(i))
            {
                Slip? cell = CellSlips.Best(
                    row,
                    i,
                    k => NamedSlips.Of(row.ValuesMm[k], unit, row.Row.Measure == Measure.Height)
                );
                all.AddRange(cell is null ? [] : [cell]);
                all.AddRange(ExchangedCells.InARow(row, i));
            }
        }

        all.AddRange(ExchangedCells.AtAStation(rows));
        all.AddRange(StationSlips.Find(table, rows, x => NamedSlips.OfAmount(x, unit)));
        return all.Where(s =>
                s.LogOdds >= ToldLog
                && s.Cells.All(c => Open(c.Row))
                && s.Cells.Any(c => Math.Abs(c.Residual) >= alarm)
            )
            .MaxBy(s => s.LogOdds);
    }

    /// <summary>The slip with its points counted in the whole row.</summary>
    private static Slip Whole(Slip slip, RowAtWork[] work) =>
        slip with
        {
            Cells = [.. slip.Cells.Select(c => c with { Point = work[c.Row].Left[c.Point] })],
            OrEnd = slip.OrEnd is { } end ? work[slip.Cells[0].Row].Left[end] : null,
        };
}
