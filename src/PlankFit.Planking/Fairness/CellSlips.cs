namespace PlankFit.Planking.Fairness;

/// <summary>
/// One wrong cell in a row. An error next to the end looks much like one at the end itself, which has neighbours on one side only: where the end explains the
/// row all but as well both are named, and where it explains it better by far nothing is, since no method tells a wrong end from a line that hooks there.
/// </summary>
internal static class CellSlips
{
    /// <summary>Explanations nearer to each other than this in ln of odds are not told apart: one 4 to 5 times as likely as the other.</summary>
    public const double TieLog = 1.5;

    /// <summary>A known slip is looked for where an unknown one is not too unlikely.</summary>
    private const double WorthNamingLog = -1.5;

    /// <summary>A slip that explains this part of the evidence by itself is told as probable; less than the other, as nothing.</summary>
    public const double Probable = 0.75;
    public const double Possible = 0.15;

    /// <summary>The likeliest, or null where it is an end.</summary>
    public static Slip? Best(RowAtWork row, int index, Func<int, IEnumerable<NamedSlip>> named)
    {
        int n = row.Left.Length;
        CellEvidence[] cells = [.. Enumerable.Range(0, n).Select(row.Evidence.At)];
        (double Odds, NamedSlip? Likeliest, double Sure)[] judged =
        [
            .. cells.Select(
                (cell, k) =>
                    k > 0 && k < n - 1 && cell.LogOdds > WorthNamingLog
                        ? Named(row, k, cell, named(k))
                        : (cell.LogOdds, null, 0.0)
            ),
        ];
        int best = 0;
        for (int k = 1; k < n; k++)
        {
            best = judged[k].Odds > judged[best].Odds ? k : best;
        }

        int inner = Math.Clamp(best, 1, n - 2),
            end = inner == 1 ? 0 : n - 1;
        bool beside = inner == 1 || inner == n - 2;
        double lead = judged[inner].Odds - judged[end].Odds;
        if (beside && lead < -TieLog)
        {
            return null;
        }

        (double odds, NamedSlip? likeliest, double sure) = judged[inner];
        NamedSlip? told = sure >= Possible ? likeliest : null;
        return new(
            odds,
            [new(index, inner, cells[inner].Residual, told?.MeantMm)],
            told?.How,
            sure,
            beside && lead < TieLog ? end : null
        );
    }

    private static (double Odds, NamedSlip? Likeliest, double Sure) Named(
        RowAtWork row,
        int k,
        CellEvidence cell,
        IEnumerable<NamedSlip> named
    )
    {
        NamedSlip[] slips = [.. named];
        double[] logs =
        [
            .. slips.Select(s =>
                Math.Log(s.Weight) + row.Evidence.Exactly(k, row.ValuesMm[k] - s.MeantMm)
            ),
        ];
        double all = LogSum.Of([Math.Log(NamedSlips.Unknown) + cell.LogOdds, .. logs]);
        if (slips.Length == 0)
        {
            return (all, null, 0);
        }

        int best = Array.IndexOf(logs, logs.Max());
        return (all, slips[best], Math.Exp(logs[best] - all));
    }
}
