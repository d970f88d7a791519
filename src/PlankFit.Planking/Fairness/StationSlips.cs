using System.Collections.Immutable;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// A station that does not stand where the table says: every line that runs at a slope there is out by its slope times one and the same distance. Told only
/// where two lines or more say so; ends are left out, since nothing tells the slope there.
/// </summary>
internal static class StationSlips
{
    private const double RarerLog = 1;

    /// <summary>Errors of position tried, from this to nine tenths of the nearer bay, either way.</summary>
    private const double LeastMm = 3;
    private const int Steps = 40;
    private const double PartOfBay = 0.9;

    /// <summary>A line speaks where its value is out by this or more and likelier for it, mm.</summary>
    private const double SpeaksMm = 1.5;
    private const int FewestLines = 2;

    public static IEnumerable<Slip> Find(
        OffsetTable table,
        ImmutableArray<RowAtWork> rows,
        Func<double, IEnumerable<NamedSlip>> named
    )
    {
        for (int station = 1; station + 1 < table.Stations.Length; station++)
        {
            if (At(table, rows, station, named) is { } slip)
            {
                yield return slip;
            }
        }
    }

    private static Slip? At(
        OffsetTable table,
        ImmutableArray<RowAtWork> rows,
        int station,
        Func<double, IEnumerable<NamedSlip>> named
    )
    {
        double x = table.Stations[station].PositionMm;
        List<(int Row, int Point, double[] Curve)> lines = [];
        for (int r = 0; r < rows.Length; r++)
        {
            int k = rows[r].At(station);
            if (
                rows[r].Left.Length >= SlipSearch.FewestPoints
                && k > 0
                && k < rows[r].Left.Length - 1
                && rows[r].XMm[k] == x
            )
            {
                lines.Add((r, k, Near(rows[r], k)));
            }
        }

        if (lines.Count(l => rows[l.Row].Evidence.At(l.Point).LogOdds > 0) < FewestLines)
        {
            return null;
        }

        double Error((int Row, int Point, double[] Curve) l, double shift) =>
            Polynomial(l.Curve, shift) - l.Curve[0];
        double Odds(double shift) =>
            lines.Sum(l => rows[l.Row].Evidence.Exactly(l.Point, Error(l, shift)));

        double bay =
            PartOfBay
            * Math.Min(
                x - table.Stations[station - 1].PositionMm,
                table.Stations[station + 1].PositionMm - x
            );
        if (bay <= LeastMm)
        {
            return null;
        }

        double[] tried =
        [
            .. Enumerable
                .Range(0, Steps)
                .Select(i => LeastMm * Math.Pow(bay / LeastMm, i / (Steps - 1.0)))
                .SelectMany(d => new[] { d, -d }),
        ];
        double[] odds = [.. tried.Select(Odds)];
        double best = Refined(tried[Array.IndexOf(odds, odds.Max())], Odds);
        NamedSlip[] known =
        [
            .. named(x).Where(s => Math.Abs(s.MeantMm - x) <= bay && s.MeantMm != x),
        ];
        double[] logs = [.. known.Select(s => Math.Log(s.Weight) + Odds(s.MeantMm - x))];
        double all = LogSum.Of([
            Math.Log(NamedSlips.Unknown) + LogSum.Of(odds) - Math.Log(odds.Length),
            .. logs,
        ]);
        int likeliest = logs.Length == 0 ? -1 : Array.IndexOf(logs, logs.Max());
        double sure = likeliest < 0 ? 0 : Math.Exp(logs[likeliest] - all);
        bool told = sure >= CellSlips.Possible;
        double moved = told ? known[likeliest].MeantMm - x : best;
        WrongCell[] wrong =
        [
            .. lines.Select(l => new WrongCell(l.Row, l.Point, Error(l, moved), null)),
        ];
        bool speak =
            wrong.Count(w =>
                Math.Abs(w.Residual) >= SpeaksMm
                && rows[w.Row].Evidence.Exactly(w.Point, w.Residual) > 0
            ) >= FewestLines;
        return speak
            ? new(
                all - RarerLog,
                [.. wrong],
                told ? known[likeliest].How : null,
                sure,
                Station: station,
                PositionMm: x + moved
            )
            : null;
    }

    private static double Refined(double at, Func<double, double> odds)
    {
        for (double step = 0.1 * Math.Abs(at); step > 0.05; step /= 2)
        {
            foreach (double next in new[] { at - step, at + step })
            {
                at = odds(next) > odds(at) ? next : at;
            }
        }

        return at;
    }

    /// <summary>The curve through the points about k but not k itself: coefficients by powers of the distance from it.</summary>
    private static double[] Near(RowAtWork row, int k)
    {
        int n = row.Left.Length,
            first = Math.Clamp(k - 2, 0, n - 5);
        int[] about = [.. Enumerable.Range(first, 5).Where(i => i != k)];
        return MathNet.Numerics.Fit.Polynomial(
            [.. about.Select(i => row.XMm[i] - row.XMm[k])],
            [.. about.Select(i => row.ValuesMm[i])],
            about.Length - 1
        );
    }

    private static double Polynomial(double[] c, double at)
    {
        double sum = 0;
        for (int i = c.Length - 1; i >= 0; i--)
        {
            sum = (sum * at) + c[i];
        }

        return sum;
    }
}
