using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Panels;

/// <summary>[ends] and [[ends.zone]]: what is done with a plank's end at each edge; [ends.topside] for another panel than the bottom.</summary>
internal static class EndsBinder
{
    public static EndRules Bind(TableReader? ends, LengthUnit units)
    {
        EndRules rules = Of(ends, EndRules.Default, EndKeys.OfBottom, units);
        ends?.Close();
        return rules;
    }

    /// <summary>The rules of a panel that has no keel: a table of its own under [ends].</summary>
    public static EndRules OfPanel(TableReader? ends, string panel, LengthUnit units)
    {
        EdgeKeys keys = PanelEndKeys.Of(panel);
        TableReader? own = ends?.Table(PanelEndKeys.Under(panel));
        EndRules rules = Of(own, EndRules.LeftLong, keys, units);
        own?.Close();
        return rules;
    }

    private static EndRules Of(
        TableReader? ends,
        EndRules usual,
        EdgeKeys keys,
        LengthUnit units
    ) =>
        ends is null
            ? usual
            : new(
                Rule(ends, keys.Lower, units) ?? usual.Lower,
                Rule(ends, keys.Upper, units) ?? usual.Upper,
                Rule(ends, keys.Transom, units) ?? usual.Transom,
                Rule(ends, keys.Stem, units) ?? usual.Stem,
                Zones(ends, keys, units)
            );

    private static ImmutableArray<EndZone> Zones(TableReader ends, EdgeKeys keys, LengthUnit units)
    {
        ImmutableArray<EndZone>.Builder zones = ImmutableArray.CreateBuilder<EndZone>();
        var read = new List<(EndZone Zone, TableReader Table)>();
        foreach (TableReader table in ends.Tables(keys.Zone))
        {
            double? from = table.Length(EndKeys.From, units);
            double? to = table.Length(EndKeys.To, units);
            EndZone zone = new(
                from ?? 0,
                to ?? 0,
                Rule(table, keys.Lower, units),
                Rule(table, keys.Upper, units),
                Rule(table, keys.Transom, units),
                Rule(table, keys.Stem, units)
            );
            table.Close();
            if (from is null || to is null)
            {
                continue;
            }

            if (to <= from)
            {
                table.Wrong(EndKeys.To, "must be greater than \"from\"");
                continue;
            }

            if (!keys.OfZone.Any(table.Has))
            {
                table.Faults.Missing(
                    table.At,
                    $"{table.Name} says nothing: name what is done at {keys.Lower.Name}, {keys.Upper.Name}, transom or stem"
                );
            }

            foreach ((EndZone other, TableReader otherTable) in read)
            {
                if (zone.FromMm < other.ToMm && other.FromMm < zone.ToMm)
                {
                    table.Faults.Error(
                        table.At,
                        $"{table.Name} overlaps {otherTable.Name}: an end lies in one zone only, so let one begin where the other stops"
                    );
                }
            }

            read.Add((zone, table));
            zones.Add(zone);
        }

        return zones.ToImmutable();
    }

    private static EndRule? Rule(TableReader table, TableKey edge, LengthUnit units)
    {
        if (table.Table(edge) is not { } rule)
        {
            return null;
        }

        EndCut? cut = rule.Choice(EndKeys.Cut);
        double? by = rule.Length(EndKeys.By, units),
            allowance = rule.Length(EndKeys.Allowance, units);
        rule.Close();
        switch (cut)
        {
            case EndCut.Fit:
                rule.Wrong(
                    EndKeys.By,
                    "belongs to an end left long; for one that is fit, say \"allowance\""
                );
                return new(EndCut.Fit, 0, allowance);
            case EndCut.LeftLong:
                rule.Wrong(
                    EndKeys.Allowance,
                    "belongs to an end that is fit; for one left long, say \"by\""
                );
                return EndRule.LeftLong(by ?? EndKeys.By.DefaultMm!.Value);
            default:
                return null;
        }
    }
}
