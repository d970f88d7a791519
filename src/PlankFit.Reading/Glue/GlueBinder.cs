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
        Mix? resin = tables.Resin is { } ofResin ? MixBinder.Bind(ofResin, "resin") : null,
            glue = tables.Glue is { } ofGlue ? MixBinder.Bind(ofGlue, "glue") : null;
        // Where [resin] has a fault of its own, that is told and not what follows from it.
        double? dense = resin?.Ratio.KgPerLitre ?? (tables.Resin is null ? null : 1);
        Estimate? priming = Rate(tables.Priming, dense);
        double coats = tables.Weave?.NumberOrDefault(GlueKeys.Coats) ?? GlueSpec.UsualWeaveCoats;
        Estimate? weave = Rate(tables.Weave, dense);
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

        GlueSpec spec = new(resin, glue)
        {
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
        Estimate film = GlueSpec.UsualFilmMm;
        foreach (TableReader? table in new[] { tables.Resin, tables.Glue })
        {
            film = (table is null ? null : JointBinder.FilmMm(table, spec, units)) ?? film;
            table?.Close();
        }

        return spec with
        {
            FilmMm = film,
        };
    }

    private static Estimate? Rate(TableReader? table, double? kgPerLitre)
    {
        if (table is null)
        {
            return null;
        }

        Estimate? rate = RateReader.Of(table, GlueKeys.Rate, kgPerLitre);
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
