using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Fastenings;

/// <summary>The keys that [fastenings] and [[fastenings.layer]] have alike.</summary>
internal static class FasteningSettingsBinder
{
    public static FasteningSettings Bind(TableReader table, LengthUnit units)
    {
        double? spacing = Mm(FasteningKeys.Spacing),
            nearest = Mm(FasteningKeys.Nearest),
            pad = Mm(FasteningKeys.Pad),
            strap = Mm(FasteningKeys.Strap);
        if (spacing is { } s && nearest > s)
        {
            table.Wrong(FasteningKeys.Nearest, "must not be more than the spacing");
        }

        if (pad is not null && strap is not null)
        {
            table.Wrong(FasteningKeys.Strap, "give a pad or a strap, not both");
        }

        return new()
        {
            Kind = table.Choice(FasteningKeys.Kind),
            Shape = table.Choice(FasteningKeys.Shape),
            Name = table.Text(FasteningKeys.Name),
            SpacingMm = spacing,
            NearestMm = nearest,
            EdgeMm = Mm(FasteningKeys.Edge),
            EndMm = Mm(FasteningKeys.End),
            JointMm = Mm(FasteningKeys.Joint),
            BelowMm = Mm(FasteningKeys.Below),
            MissMm = Mm(FasteningKeys.Miss),
            MarginMm = Mm(FasteningKeys.Margin),
            OpenMm = Mm(FasteningKeys.Open),
            PadMm = pad ?? strap,
            BiteMm = Mm(FasteningKeys.Bite),
            HoleMm = Mm(FasteningKeys.Hole),
            VentMm = Mm(FasteningKeys.Vent),
            LengthsMm = Lengths(table, FasteningKeys.Lengths, units),
            PullDown = PullDown(table, units),
        };

        double? Mm(LengthKey key) => table.Length(key, units);
    }

    private static ImmutableArray<double>? Lengths(
        TableReader table,
        LengthsKey key,
        LengthUnit units
    )
    {
        ImmutableArray<double> given = LengthList.Of(table, key, units);
        return given.IsEmpty ? null : given;
    }

    private static PullDownWish? PullDown(TableReader table, LengthUnit units)
    {
        if (!table.Has(FasteningKeys.PullDown))
        {
            return null;
        }

        if (!table.HasTable(FasteningKeys.PullDown))
        {
            if (table.Text(FasteningKeys.PullDownWord) is { } word && word != "none")
            {
                table.Wrong(
                    FasteningKeys.PullDown,
                    "accepted: \"none\" or { kind = \"staple through strap\", spacing = ... }"
                );
            }

            return new(true, null, null, null, null, null, null, null);
        }

        TableReader own = table.Table(FasteningKeys.PullDownTable)!;
        double? pad = Mm(PullDownKeys.Pad),
            strap = Mm(PullDownKeys.Strap);
        var wish = new PullDownWish(
            false,
            own.Choice(PullDownKeys.Kind),
            Mm(PullDownKeys.Spacing),
            Mm(PullDownKeys.Across),
            pad ?? strap,
            Mm(PullDownKeys.Bite),
            Mm(PullDownKeys.Block),
            Lengths(own, PullDownKeys.Lengths, units)
        );
        own.Close();
        return wish;

        double? Mm(LengthKey key) => own.Length(key, units);
    }
}
