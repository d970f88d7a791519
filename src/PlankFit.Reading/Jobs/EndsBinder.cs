using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Jobs;

/// <summary>[ends] and [[ends.zone]]: what is done with a plank's end at each edge.</summary>
internal static class EndsBinder
{
    private static readonly (string, EndCut)[] Cuts =
    [
        ("fit", EndCut.Fit),
        ("left long", EndCut.LeftLong),
    ];

    public static EndRules Bind(TableReader? ends, LengthUnit units)
    {
        if (ends is null)
        {
            return EndRules.Default;
        }

        EndRules rules = new(
            Rule(ends, "keel", units) ?? EndRules.Default.Keel,
            Rule(ends, "chine", units) ?? EndRules.Default.Chine,
            Rule(ends, "transom", units) ?? EndRules.Default.Transom,
            Rule(ends, "stem", units) ?? EndRules.Default.Stem,
            Zones(ends, units)
        );
        ends.Close();
        return rules;
    }

    private static ImmutableArray<EndZone> Zones(TableReader ends, LengthUnit units)
    {
        var zones = ImmutableArray.CreateBuilder<EndZone>();
        var read = new List<(EndZone Zone, TableReader Table)>();
        foreach (TableReader table in ends.Tables("zone", "ends.zone"))
        {
            double? from = table.Length("from", units, required: true);
            double? to = table.Length("to", units, required: true);
            EndZone zone = new(
                from ?? 0,
                to ?? 0,
                Rule(table, "keel", units),
                Rule(table, "chine", units),
                Rule(table, "transom", units),
                Rule(table, "stem", units)
            );
            table.Close();
            if (from is null || to is null)
            {
                continue;
            }

            if (to <= from)
            {
                table.Wrong("to", "must be greater than \"from\"");
                continue;
            }

            if (((string[])["keel", "chine", "transom", "stem"]).All(e => table.Find(e) is null))
            {
                table.Faults.Missing(
                    table.At,
                    $"{table.Name} says nothing: name what is done at keel, chine, transom or stem"
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

    private static EndRule? Rule(TableReader table, string edge, LengthUnit units)
    {
        if (table.Table(edge, $"{table.Name} {edge}") is not { } rule)
        {
            return null;
        }

        EndCut? cut = rule.Choice("cut", Cuts, required: true);
        double? by = rule.Length("by", units);
        double? allowance = rule.Length("allowance", units);
        rule.Close();
        switch (cut)
        {
            case EndCut.Fit:
                if (by is not null)
                {
                    rule.Wrong(
                        "by",
                        "belongs to an end left long; for one that is fit, say \"allowance\""
                    );
                }

                if (allowance < 0)
                {
                    rule.Wrong("allowance", "must not be negative");
                }

                return new(EndCut.Fit, 0, allowance);
            case EndCut.LeftLong:
                if (allowance is not null)
                {
                    rule.Wrong(
                        "allowance",
                        "belongs to an end that is fit; for one left long, say \"by\""
                    );
                }

                if (by <= 0)
                {
                    rule.Wrong(
                        "by",
                        "must be greater than 0: how far the end stands past the edge"
                    );
                }

                return EndRule.LeftLong(by ?? EndRules.Default.Chine.ByMm);
            default:
                return null;
        }
    }
}
