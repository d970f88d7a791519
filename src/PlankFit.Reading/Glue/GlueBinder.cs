using System.Collections.Immutable;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Glue;

/// <summary>[resin], [glue] and all that goes with them.</summary>
internal static class GlueBinder
{
    /// <summary>Null where the job names neither resin nor glue.</summary>
    public static GlueSpec? Bind(GlueTables tables, LengthUnit units)
    {
        Estimate film = GlueSpec.UsualFilmMm;
        Mix? resin = MixOf(tables.Resin, "resin", units, ref film),
            glue = MixOf(tables.Glue, "glue", units, ref film);
        Estimate? priming = Rate(tables.Priming);
        double coats = tables.Weave?.NumberOrDefault(GlueKeys.Coats) ?? GlueSpec.UsualWeaveCoats;
        Estimate? weave = Rate(tables.Weave);
        ImmutableArray<FilletSpec> fillets = Fillets(tables.Fillets, units);
        ImmutableArray<FillerSpec> fillers =
        [
            .. tables.Fillers.Select(Filler).OfType<FillerSpec>(),
        ];
        FairingSpec? fairing = Fairing(tables.Fairing, units);
        (CrewSpec? crew, Cup? cup) = CrewBinder.Crew(tables.Crew, units);
        ClockSpec? clock = CrewBinder.Clock(tables.Clock);
        if (tables.Resin is null && tables.Glue is null)
        {
            foreach (TableReader table in tables.Besides)
            {
                table.Faults.Error(
                    table.At,
                    $"{table.Name} is given and the job has neither [resin] nor [glue]: add the one that it goes with"
                );
            }

            return null;
        }

        return new(resin, glue)
        {
            FilmMm = film,
            PrimingGsm = priming,
            WeaveGsm = weave,
            WeaveCoats = (int)Math.Clamp(coats, 1, 9),
            Fillets = fillets,
            Fairing = fairing,
            Fillers = fillers,
            Crew = crew,
            Clock = clock,
            Cup = cup,
        };
    }

    private static Mix? MixOf(TableReader? table, string head, LengthUnit units, ref Estimate film)
    {
        if (table is null)
        {
            return null;
        }

        Mix? mix = MixBinder.Bind(table, head);
        if (table.Has(MixKeys.Film))
        {
            ImmutableArray<double> given = LengthList.Of(table, MixKeys.Film, units);
            if (given is [var least, var usual, var most])
            {
                film = new(least, usual, most);
            }
            else if (!given.IsEmpty)
            {
                table.Wrong(
                    MixKeys.Film,
                    "accepted: three lengths, the least, the usual and the most: [0.2, 0.3, 0.5]"
                );
            }
        }

        table.Close();
        return mix;
    }

    private static Estimate? Rate(TableReader? table)
    {
        if (table is null)
        {
            return null;
        }

        Estimate? rate = Three(table, GlueKeys.GramsPerM2);
        table.Close();
        return rate;
    }

    /// <summary>The least, the usual and the most, in this order.</summary>
    private static Estimate? Three(TableReader table, NumbersKey key)
    {
        if (!table.Has(key))
        {
            table.Missing(key, key.Accepted);
        }
        else if (table.Numbers(key) is { } given)
        {
            if (given is [var least, var usual, var most] && least <= usual && usual <= most)
            {
                return new(least, usual, most);
            }

            table.Wrong(key, key.Accepted);
        }

        return null;
    }

    private static FillerSpec? Filler(TableReader table)
    {
        string? name = table.Text(GlueKeys.FillerName);
        FillerInto into = table.ChoiceOrDefault(GlueKeys.Into);
        Estimate? rate = Three(table, GlueKeys.GramsPerKg);
        double? density = table.Number(GlueKeys.FillerDensity),
            price = table.Number(GlueKeys.FillerPrice);
        table.Close();
        return name is not null && rate is { } r
            ? new(name, into, r) { KgPerLitre = density, PricePerKg = price }
            : null;
    }

    /// <summary>Each has a name of its own, by which the progress knows its stage.</summary>
    private static ImmutableArray<FilletSpec> Fillets(
        IEnumerable<TableReader> tables,
        LengthUnit units
    )
    {
        List<FilletSpec> fillets = [];
        foreach (TableReader table in tables)
        {
            if (Fillet(table, units) is not { } fillet)
            {
                continue;
            }

            if (
                fillets.Any(f =>
                    string.Equals(f.Along, fillet.Along, StringComparison.OrdinalIgnoreCase)
                )
            )
            {
                table.Wrong(
                    GlueKeys.Along,
                    "another [[fillet]] is along it: give each a name of its own, as in \"chine log, inside, forward\" and \"chine log, inside, aft\", or one table with the length of both"
                );
            }

            fillets.Add(fillet);
        }

        return [.. fillets];
    }

    private static FilletSpec? Fillet(TableReader table, LengthUnit units)
    {
        string? along = table.Text(GlueKeys.Along);
        double? radius = table.Length(GlueKeys.Radius, units),
            length = table.Length(GlueKeys.Length, units);
        double angle = table.NumberOrDefault(GlueKeys.Angle);
        table.Close();
        return along is not null && radius is { } r && length is { } l
            ? new(along, new(r, angle), l)
            : null;
    }

    private static FairingSpec? Fairing(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        double? depth = table.Length(GlueKeys.Depth, units),
            part = table.Number(GlueKeys.Part);
        table.Close();
        return depth is { } d && part is { } p ? new(d, p) : null;
    }
}
