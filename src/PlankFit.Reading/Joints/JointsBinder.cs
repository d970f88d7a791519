using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Joints;

/// <summary>[joints], [[joints.layer]] and [[joints.rule]]: how long planks are pieced.</summary>
internal static class JointsBinder
{
    /// <param name="layers">All layers of the bottom, to know what [[joints.layer]] may name.</param>
    /// <param name="elsewhere">Layers of other panels, and of which.</param>
    public static JointSpec? Bind(
        TableReader? table,
        LengthUnit units,
        ImmutableArray<LayerSpec> layers,
        ImmutableDictionary<string, string> elsewhere
    )
    {
        if (table is null)
        {
            return null;
        }

        ImmutableArray<TableReader> layerTables = table.Tables(JointKeys.Layer),
            ruleTables = table.Tables(JointKeys.Rule);
        var usual = StockDraft.Read(table, units, StockDraft.Nothing);
        JointStock? stock = JointStockBinder.Of(usual, table);
        Skin? skin = table.Choice(JointKeys.SkinIs);
        table.Close();
        if (
            layerTables.IsEmpty
            && !table.Has(JointKeys.Longest)
            && !table.Has(JointKeys.StockLengths)
        )
        {
            table.Missing(
                JointKeys.Longest,
                "the longest usable piece, here or in a [[joints.layer]]; or give stock-lengths"
            );
        }

        ImmutableDictionary<string, JointStock> byLayer = Layers(
            layerTables,
            units,
            usual,
            layers,
            elsewhere
        );
        ImmutableArray<JointRule> rules = Rules(ruleTables, units);
        return stock is null && byLayer.IsEmpty ? null : new(stock, byLayer, rules) { Skin = skin };
    }

    private static ImmutableDictionary<string, JointStock> Layers(
        ImmutableArray<TableReader> tables,
        LengthUnit units,
        StockDraft usual,
        ImmutableArray<LayerSpec> layers,
        ImmutableDictionary<string, string> elsewhere
    )
    {
        string[] planked = [.. layers.OfType<PlankLayerSpec>().Select(l => l.Name)];
        ImmutableDictionary<string, JointStock>.Builder byLayer = ImmutableDictionary.CreateBuilder<
            string,
            JointStock
        >();
        foreach (TableReader table in tables)
        {
            string? name = table.Text(JointKeys.LayerName);
            var draft = StockDraft.Read(table, units, usual);
            JointStock? stock = JointStockBinder.Of(draft, table);
            table.Close();
            if (name is null)
            {
                continue;
            }

            if (elsewhere.TryGetValue(name, out string? panel))
            {
                table.Wrong(
                    JointKeys.LayerName,
                    $"is a layer of the {panel}: joints are worked out for the bottom alone, and planks of other panels are left whole"
                );
            }
            else if (!planked.Contains(name, StringComparer.Ordinal))
            {
                string? near = NearestName.Of(name, planked);
                table.Wrong(
                    JointKeys.LayerName,
                    "is no layer of planks"
                        + (near is null ? "" : $"; did you mean \"{near}\"?")
                        + $" (there are: {string.Join(", ", planked)})"
                );
            }
            else if (byLayer.ContainsKey(name))
            {
                table.Wrong(JointKeys.LayerName, "has a [[joints.layer]] already");
            }
            else if (stock is not null)
            {
                byLayer.Add(name, stock);
            }
            else if (draft.LongestMm is null && !table.Has(JointKeys.Longest))
            {
                table.Missing(JointKeys.Longest, "the longest usable piece; or give stock-lengths");
            }
        }

        return byLayer.ToImmutable();
    }

    private static ImmutableArray<JointRule> Rules(
        ImmutableArray<TableReader> tables,
        LengthUnit units
    )
    {
        ImmutableArray<JointRule>.Builder rules = ImmutableArray.CreateBuilder<JointRule>();
        foreach (TableReader table in tables)
        {
            JointRuleKind? what = table.Choice(JointRuleKeys.Which);
            double? distance = table.Length(JointRuleKeys.Distance, units);
            double? count = table.Number(JointRuleKeys.Count);
            string source = table.Text(JointRuleKeys.From) ?? "this job";
            table.Close();
            if (what is not { } kind)
            {
                continue;
            }

            if (rules.Any(r => r.What == kind))
            {
                table.Wrong(JointRuleKeys.Which, "has a rule already");
                continue;
            }

            if (kind == JointRuleKind.SameBacking)
            {
                if (!table.Has(JointRuleKeys.Count))
                {
                    table.Missing(JointRuleKeys.Count, JointRuleKeys.Count.Accepted);
                }
            }
            else
            {
                Measured(table, units);
            }

            rules.Add(new(kind, distance, (int?)count, source));
        }

        return rules.ToImmutable();
    }

    private static void Measured(TableReader table, LengthUnit units)
    {
        if (!table.Has(JointRuleKeys.Distance))
        {
            table.Missing(JointRuleKeys.Distance, LengthNotation.Accepted(units));
        }

        table.Wrong(
            JointRuleKeys.Count,
            "belongs to what = \"same backing\"; this rule is a distance"
        );
    }
}
