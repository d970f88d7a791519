using System.Collections.Immutable;
using PlankFit.Planking.Layers;

namespace PlankFit.Reading.Jobs;

/// <summary>[limits] and [[limits.bend]]: the table by which bends are judged, where the builder has a better one.</summary>
internal static class LimitsBinder
{
    private const string PercentAccepted = "accepted: percent, greater than 0 and at most 10";
    private const string RatioAccepted = "accepted: 0 or more";

    private static readonly (string, BendWay)[] Ways =
    [
        ("cold", BendWay.Cold),
        ("soak or steam", BendWay.SoakOrSteam),
        ("laminate thinner", BendWay.LaminateThinner),
        ("refuse", BendWay.Refuse),
    ];

    public static BendLimits Bind(TableReader? limits)
    {
        if (limits is null)
        {
            return BendLimits.Default;
        }

        double edge =
            Percent(limits, "edge-strain-percent") ?? BendLimits.Default.EdgeStrainPercent;
        double twist =
            Percent(limits, "twist-shear-percent") ?? BendLimits.Default.TwistShearPercent;
        bool given = limits.Find("bend") is not null;
        ImmutableArray<TableReader> tables = limits.Tables("bend", "limits.bend");
        ImmutableArray<BendLimit> rows = given ? Rows(tables) : BendLimits.Default.Bend;
        if (given && tables.IsEmpty)
        {
            limits.Wrong(
                "bend",
                "is an empty list: leave it out for the limits that come with the program"
            );
        }

        limits.Close();
        return new(rows, edge, twist);
    }

    private static ImmutableArray<BendLimit> Rows(ImmutableArray<TableReader> tables)
    {
        var rows = ImmutableArray.CreateBuilder<BendLimit>();
        double? above = null;
        foreach (TableReader table in tables)
        {
            double? ratio = table.Number(
                "least-radius-over-thickness",
                RatioAccepted,
                required: true
            );
            string? verdict = table.Text("verdict", "the verdict in words, such as \"cold\"");
            string source = table.Text("source") ?? "this job";
            BendWay? way = table.Choice("way", Ways, required: false);
            table.Close();
            if (ratio < 0)
            {
                table.Wrong("least-radius-over-thickness", RatioAccepted);
            }
            else if (ratio >= above)
            {
                table.Wrong(
                    "least-radius-over-thickness",
                    "must be less than the row before: rows run from the gentlest bend to the hardest"
                );
            }

            above = ratio ?? above;
            rows.Add(
                new(ratio ?? 0, verdict ?? "", source)
                {
                    Way = way ?? Guessed(verdict ?? "", last: table == tables[^1]),
                }
            );
        }

        if (rows.Count > 0 && above > 0)
        {
            tables[^1]
                .Wrong(
                    "least-radius-over-thickness",
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

    private static double? Percent(TableReader limits, string key)
    {
        double? percent = limits.Number(key, PercentAccepted);
        if (percent is <= 0 or > 10)
        {
            limits.Wrong(key, PercentAccepted);
        }

        return percent;
    }
}
