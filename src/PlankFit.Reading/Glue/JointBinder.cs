using System.Collections.Immutable;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Glue;

/// <summary>How thick the glue lies between two layers: as a thickness, or as what lies on an area.</summary>
internal static class JointBinder
{
    /// <summary>mm; null where the table has neither, or what it has will not do, which is then written down.</summary>
    /// <param name="table">[resin] or [glue].</param>
    /// <param name="spec">With the fillers, which are a part of what is put on.</param>
    public static Estimate? FilmMm(TableReader table, GlueSpec spec, LengthUnit units)
    {
        Estimate? film = Film(table, units);
        double? dense = spec.BetweenLayers is { } mix
            ? spec.MixKgPerLitre(mix, GlueUse.BetweenLayers)
            : null;
        Estimate? rate = RateReader.Of(table, GlueKeys.JointRate, dense);
        if (!table.Has(GlueKeys.JointRate))
        {
            return film;
        }

        if (table.Has(MixKeys.Film))
        {
            table.Wrong(
                GlueKeys.JointRate,
                "film-thickness is given as well and says the same: leave one of them out"
            );
        }

        // g/m² over g a litre is mm, as a litre on a square metre is one.
        return rate is { } gsm && dense is { } kg ? 1 / (1000 * kg) * gsm : null;
    }

    private static Estimate? Film(TableReader table, LengthUnit units)
    {
        ImmutableArray<double> given = LengthList.Of(table, MixKeys.Film, units);
        if (given is [var least, var usual, var most])
        {
            return new(least, usual, most);
        }

        if (!given.IsEmpty)
        {
            table.Wrong(
                MixKeys.Film,
                "accepted: three lengths, the least, the usual and the most: [0.2, 0.3, 0.5]"
            );
        }

        return null;
    }
}
