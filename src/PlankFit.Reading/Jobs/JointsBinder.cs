using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Jobs;

/// <summary>[joints], [[joints.layer]] and [[joints.rule]]: how long planks are pieced.</summary>
internal static class JointsBinder
{
    private const int MostBetween = SchemeSearch.MostReach - 1;

    private static readonly (string, JointRuleKind)[] Whats =
    [
        ("next plank", JointRuleKind.NextPlank),
        ("one plank between", JointRuleKind.OneBetween),
        ("same backing", JointRuleKind.SameBacking),
        ("joints below", JointRuleKind.JointsBelow),
        ("seams below", JointRuleKind.SeamsBelow),
    ];

    /// <param name="layers">All layers of the job, to know what [[joints.layer]] may name.</param>
    public static JointSpec? Bind(
        TableReader? table,
        LengthUnit units,
        ImmutableArray<LayerSpec> layers
    )
    {
        if (table is null)
        {
            return null;
        }

        ImmutableArray<TableReader> layerTables = table.Tables("layer", "joints.layer"),
            ruleTables = table.Tables("rule", "joints.rule");
        StockDraft usual = StockDraft.Read(table, units, StockDraft.Nothing);
        JointStock? stock = JointStockBinder.Of(usual, table);
        table.Close();
        if (
            layerTables.IsEmpty
            && table.Find("longest") is null
            && table.Find("stock-lengths") is null
        )
        {
            table.Missing(
                "longest",
                "the longest usable piece, here or in a [[joints.layer]]; or give stock-lengths"
            );
        }

        ImmutableDictionary<string, JointStock> byLayer = Layers(layerTables, units, usual, layers);
        ImmutableArray<JointRule> rules = Rules(ruleTables, units);
        return stock is null && byLayer.IsEmpty ? null : new(stock, byLayer, rules);
    }

    private static ImmutableDictionary<string, JointStock> Layers(
        ImmutableArray<TableReader> tables,
        LengthUnit units,
        StockDraft usual,
        ImmutableArray<LayerSpec> layers
    )
    {
        string[] planked = [.. layers.OfType<PlankLayerSpec>().Select(l => l.Name)];
        var byLayer = ImmutableDictionary.CreateBuilder<string, JointStock>();
        foreach (TableReader table in tables)
        {
            string? name = table.Text("name", "the [[layer]] that it is about");
            StockDraft draft = StockDraft.Read(table, units, usual);
            JointStock? stock = JointStockBinder.Of(draft, table);
            table.Close();
            if (name is null)
            {
                continue;
            }

            if (!planked.Contains(name, StringComparer.Ordinal))
            {
                string? near = NearestName.Of(name, planked);
                table.Wrong(
                    "name",
                    "is no layer of planks"
                        + (near is null ? "" : $"; did you mean \"{near}\"?")
                        + $" (there are: {string.Join(", ", planked)})"
                );
            }
            else if (byLayer.ContainsKey(name))
            {
                table.Wrong("name", "has a [[joints.layer]] already");
            }
            else if (stock is not null)
            {
                byLayer.Add(name, stock);
            }
            else if (draft.LongestMm is null && table.Find("longest") is null)
            {
                table.Missing("longest", "the longest usable piece; or give stock-lengths");
            }
        }

        return byLayer.ToImmutable();
    }

    private static ImmutableArray<JointRule> Rules(
        ImmutableArray<TableReader> tables,
        LengthUnit units
    )
    {
        var rules = ImmutableArray.CreateBuilder<JointRule>();
        foreach (TableReader table in tables)
        {
            JointRuleKind? what = table.Choice("what", Whats, required: true);
            double? distance = table.Length("distance", units);
            double? count = table.Number("count", CountAccepted);
            string source = table.Text("source") ?? "this job";
            table.Close();
            if (distance < 0)
            {
                table.Wrong("distance", "must not be negative; 0 asks for nothing");
            }

            if (what is not { } kind)
            {
                continue;
            }

            if (rules.Any(r => r.What == kind))
            {
                table.Wrong("what", "has a rule already");
                continue;
            }

            if (kind == JointRuleKind.SameBacking)
            {
                Counted(table, count);
            }
            else
            {
                Measured(table, units);
            }

            rules.Add(new(kind, distance, (int?)count, source));
        }

        return rules.ToImmutable();
    }

    private static readonly string CountAccepted =
        $"accepted: whole planks between, 0 to {MostBetween}; 0 asks for nothing";

    private static void Counted(TableReader table, double? count)
    {
        if (table.Find("count") is null)
        {
            table.Missing("count", CountAccepted);
        }
        else if (count is < 0 or > MostBetween || count != Math.Floor(count ?? 0))
        {
            table.Wrong("count", CountAccepted);
        }
    }

    private static void Measured(TableReader table, LengthUnit units)
    {
        if (table.Find("distance") is null)
        {
            table.Missing("distance", LengthNotation.Accepted(units));
        }

        table.Wrong("count", "belongs to what = \"same backing\"; this rule is a distance");
    }
}
