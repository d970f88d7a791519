using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Panels;

/// <summary>[limits] and [[limits.bend]]: the table by which bends are judged, where the builder has a better one.</summary>
internal static class LimitsBinder
{
    public static BendLimits Bind(TableReader? limits)
    {
        if (limits is null)
        {
            return BendLimits.Default;
        }

        double edge = limits.NumberOrDefault(LimitKeys.EdgeStrain);
        double twist = limits.NumberOrDefault(LimitKeys.TwistShear);
        bool given = limits.Has(LimitKeys.Bend);
        ImmutableArray<TableReader> tables = limits.Tables(LimitKeys.Bend);
        ImmutableArray<BendLimit> rows = given ? Rows(tables) : BendLimits.Default.Bend;
        if (given && tables.IsEmpty)
        {
            limits.Wrong(
                LimitKeys.Bend,
                "is an empty list: leave it out for the limits that come with the program"
            );
        }

        limits.Close();
        return new(rows, edge, twist);
    }

    private static ImmutableArray<BendLimit> Rows(ImmutableArray<TableReader> tables)
    {
        ImmutableArray<BendLimit>.Builder rows = ImmutableArray.CreateBuilder<BendLimit>();
        double? above = null;
        foreach (TableReader table in tables)
        {
            double? ratio = table.Number(LimitKeys.Ratio);
            string? verdict = table.Text(LimitKeys.Verdict);
            string source = table.Text(LimitKeys.From) ?? "this job";
            BendWay? way = table.Choice(LimitKeys.Way);
            table.Close();
            if (ratio >= 0 && ratio >= above)
            {
                table.Wrong(
                    LimitKeys.Ratio,
                    "must be less than the row before: rows run from the gentlest bend to the hardest"
                );
            }

            above = ratio ?? above;
            rows.Add(
                new(ratio ?? 0, verdict ?? "", source)
                {
                    Way =
                        way
                        ?? Guessed(verdict ?? "", last: tables.Length > 1 && table == tables[^1]),
                }
            );
        }

        if (rows.Count > 0 && above > 0)
        {
            tables[^1]
                .Wrong(
                    LimitKeys.Ratio,
                    "the last row must have 0, so that the hardest bend has a verdict too"
                );
        }

        return rows.ToImmutable();
    }

    /// <summary>What a row asks for where it does not say: its words, or that it is the last.</summary>
    private static BendWay Guessed(string verdict, bool last) =>
        verdict.Contains("soak", StringComparison.OrdinalIgnoreCase)
        || verdict.Contains("steam", StringComparison.OrdinalIgnoreCase)
            ? BendWay.SoakOrSteam
        : last ? BendWay.LaminateThinner
        : BendWay.Cold;
}
