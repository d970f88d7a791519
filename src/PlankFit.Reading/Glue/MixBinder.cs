using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Glue;

/// <summary>[resin] or [glue], without its film's thickness.</summary>
internal static class MixBinder
{
    /// <summary>Null where what only the product knows is missing or wrong, which is then written down.</summary>
    /// <param name="head">The table's name.</param>
    public static Mix? Bind(TableReader table, string head)
    {
        string name = table.Text(MixKeys.Name) ?? head;
        MixRatio? ratio = Ratio(table);
        ClockLaw? pot = Law(table, MixKeys.Pot(head), true),
            film = Law(table, MixKeys.OpenTime(head), false),
            sandable = Law(table, MixKeys.Sandable(head), false);
        ClockWindow? tacky = Window(table, MixKeys.Tacky(head)),
            recoat = Window(table, MixKeys.Recoat(head));
        double part = table.NumberOrDefault(MixKeys.UsePart),
            waste = table.NumberOrDefault(MixKeys.WastePercent),
            thinned = table.NumberOrDefault(MixKeys.Thinned);
        bool ofThinned = table.ChoiceOrDefault(MixKeys.ClocksAreFor);
        if (ofThinned && thinned <= 0)
        {
            table.Wrong(
                MixKeys.ClocksAreFor,
                "nothing is thinned: say by how much in thinned-percent, or leave it out"
            );
        }

        double? price = table.Number(MixKeys.Price);
        return ratio is { } r && pot is not null && film is not null
            ? new(
                name,
                r,
                new(pot, film)
                {
                    Sandable = sandable,
                    Tacky = tacky,
                    Recoat = recoat,
                }
            )
            {
                UsePart = part,
                Waste = waste / 100,
                Thinned = thinned / 100,
                ClocksAreOfThinned = ofThinned,
                PricePerKg = price,
            }
            : null;
    }

    private static MixRatio? Ratio(TableReader table)
    {
        ImmutableArray<double>? volume = Two(table, MixKeys.ByVolume),
            mass = Two(table, MixKeys.ByMass),
            density = Two(table, MixKeys.Density);
        bool byVolume = table.Has(MixKeys.ByVolume),
            byMass = table.Has(MixKeys.ByMass);
        if (byVolume && byMass)
        {
            table.Wrong(MixKeys.ByMass, "parts-by-volume is given as well: leave one of them out");
        }
        else if (!byVolume && !byMass)
        {
            table.Missing(
                MixKeys.ByVolume,
                "give it as on the data sheet, [2, 1], or parts-by-mass, [100, 42]"
            );
        }

        if (!table.Has(MixKeys.Density))
        {
            table.Missing(MixKeys.Density, MixKeys.Density.Accepted);
        }

        return density is [var a, var b]
            ? volume is [var v, var w]
                ? new MixRatio(v / w, a, b)
                : mass is [var m, var n]
                    ? MixRatio.ByMass(m / n, a, b)
                    : null
            : null;
    }

    private static ImmutableArray<double>? Two(TableReader table, NumbersKey key)
    {
        if (table.Numbers(key) is not { } read)
        {
            return null;
        }

        if (read.Length == 2)
        {
            return read;
        }

        table.Wrong(key, key.Accepted);
        return null;
    }

    private static ClockLaw? Law(TableReader table, TablesKey key, bool inPot)
    {
        if (!table.Has(key))
        {
            table.Missing(
                key,
                $"give two lines of the data sheet at least: {(inPot ? "[{ at = \"20 C\", mass = 100, minutes = ... }, { at = \"30 C\", mass = 100, minutes = ... }]" : "[{ at = \"20 C\", minutes = ... }, { at = \"30 C\", minutes = ... }]")}"
            );
            return null;
        }

        ImmutableArray<ClockReading>.Builder readings =
            ImmutableArray.CreateBuilder<ClockReading>();
        bool whole = true;
        foreach (TableReader line in table.Tables(key))
        {
            double? at = Temperatures.Of(line, MixKeys.At),
                minutes = line.Number(MixKeys.Minutes),
                grams = inPot ? line.Number(MixKeys.Mass) : null;
            line.Close();
            if (at is { } celsius && minutes is > 0 and { } m && (!inPot || grams is > 0))
            {
                readings.Add(new(celsius, m, grams));
            }
            else
            {
                whole = false;
            }
        }

        return whole ? Through(table, key, readings.ToImmutable()) : null;
    }

    private static ClockWindow? Window(TableReader table, TablesKey key)
    {
        if (!table.Has(key))
        {
            return null;
        }

        List<ClockReading> from = [],
            to = [];
        bool whole = true;
        foreach (TableReader line in table.Tables(key))
        {
            double? at = Temperatures.Of(line, MixKeys.At),
                first = line.Number(MixKeys.From),
                last = line.Number(MixKeys.To);
            if (first >= last)
            {
                line.Wrong(MixKeys.To, "is no later than from");
                whole = false;
            }

            line.Close();
            if (at is { } celsius && first is > 0 and { } f && last is > 0 and { } l)
            {
                from.Add(new(celsius, f));
                to.Add(new(celsius, l));
            }
            else
            {
                whole = false;
            }
        }

        return
            whole
            && Through(table, key, [.. from]) is { } begins
            && ClockLaw.Through([.. to]) is { } ends
            ? new(begins, ends)
            : null;
    }

    private static ClockLaw? Through(
        TableReader table,
        TablesKey key,
        ImmutableArray<ClockReading> readings
    )
    {
        if (ClockLaw.Through(readings) is not { } law)
        {
            table.Faults.Error(
                table.PlaceOf(key),
                $"{table.Name} {key.Name}: how it goes with temperature asks for two temperatures, and with mass for a line more; take them from the data sheet or ask the maker"
            );
            return null;
        }

        if (law.ActivationJPerMol > 0 && law.MassPower >= 0)
        {
            return law;
        }

        table.Faults.Error(
            table.PlaceOf(key),
            $"{table.Name} {key.Name}: by these figures it lasts longer {(law.ActivationJPerMol > 0 ? "the more is in the pot" : "the warmer it is")}: look for a slip"
        );
        return null;
    }
}
