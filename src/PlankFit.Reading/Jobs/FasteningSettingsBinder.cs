using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>The keys that [fastenings] and [[fastenings.layer]] have alike.</summary>
internal static class FasteningSettingsBinder
{
    // Finer than this no hull is fastened, and a short spacing would take for ever to set: our own bound, mm.
    private const double LeastSpacingMm = 10;

    private static readonly (string, FasteningKind)[] PullDownKinds =
    [
        ("screw and pad", FasteningKind.ScrewAndPad),
        ("staple through strap", FasteningKind.StapleThroughStrap),
    ];

    private static readonly (string, FasteningKind)[] Kinds =
    [
        ("left in", FasteningKind.LeftIn),
        .. PullDownKinds,
        ("none", FasteningKind.None),
    ];

    public static FasteningSettings Bind(TableReader table, LengthUnit units)
    {
        double? spacing = Spacing(table, "spacing", units),
            nearest = Positive(table, "nearest", units);
        if (spacing is { } s && nearest > s)
        {
            table.Wrong("nearest", "must not be more than the spacing");
        }

        FasteningKind? kind = table.Choice("kind", Kinds, required: false);
        FastenerShape? shape = table.Choice(
            "what",
            [
                ("screw", FastenerShape.Screw),
                ("nail", FastenerShape.Nail),
                ("staple", FastenerShape.Staple),
            ],
            required: false
        );
        double? pad = NotNegative(table, "pad", units),
            strap = NotNegative(table, "strap", units);
        if (pad is not null && strap is not null)
        {
            table.Wrong("strap", "give a pad or a strap, not both");
        }

        return new()
        {
            Kind = kind,
            Shape = shape,
            Name = table.Text("name"),
            SpacingMm = spacing,
            NearestMm = nearest,
            EdgeMm = NotNegative(table, "edge", units),
            EndMm = NotNegative(table, "end", units),
            JointMm = NotNegative(table, "joint", units),
            BelowMm = NotNegative(table, "below", units),
            MissMm = NotNegative(table, "miss", units),
            MarginMm = NotNegative(table, "margin", units),
            OpenMm = NotNegative(table, "open", units),
            PadMm = pad ?? strap,
            BiteMm = Positive(table, "bite", units),
            HoleMm = Positive(table, "hole", units),
            VentMm = Spacing(table, "vent", units),
            LengthsMm = Lengths(table, units),
            PullDown = PullDown(table, units),
        };
    }

    public static double? Positive(
        TableReader table,
        string key,
        LengthUnit units,
        bool required = false
    )
    {
        double? mm = table.Length(key, units, required);
        if (mm <= 0)
        {
            table.Wrong(key, "must be greater than 0");
        }

        return mm;
    }

    private static double? NotNegative(TableReader table, string key, LengthUnit units)
    {
        double? mm = table.Length(key, units);
        if (mm < 0)
        {
            table.Wrong(key, "must not be negative");
        }

        return mm;
    }

    private static double? Spacing(TableReader table, string key, LengthUnit units)
    {
        double? mm = table.Length(key, units);
        if (mm < LeastSpacingMm)
        {
            table.Wrong(key, $"must be at least {LengthText.ForPaper(LeastSpacingMm, units)}");
        }

        return mm;
    }

    private static ImmutableArray<double>? Lengths(TableReader table, LengthUnit units)
    {
        ImmutableArray<double> given = LengthList.Of(table, "lengths", units);
        return given.IsEmpty ? null : given;
    }

    private static PullDownWish? PullDown(TableReader table, LengthUnit units)
    {
        if (table.Find("pull-down") is not { } entry)
        {
            return null;
        }

        if (entry.Value is not TomlTable)
        {
            if (table.Text("pull-down") is { } word && word != "none")
            {
                table.Wrong(
                    "pull-down",
                    "accepted: \"none\" or { kind = \"staple through strap\", spacing = ... }"
                );
            }

            return new(true, null, null, null, null, null, null, null);
        }

        TableReader own = table.Table("pull-down", $"{table.Name} pull-down")!;
        double? pad = NotNegative(own, "pad", units),
            strap = NotNegative(own, "strap", units);
        var wish = new PullDownWish(
            false,
            own.Choice("kind", PullDownKinds, required: false),
            Spacing(own, "spacing", units),
            Spacing(own, "across", units),
            pad ?? strap,
            Positive(own, "bite", units),
            Positive(own, "block", units),
            Lengths(own, units)
        );
        own.Close();
        return wish;
    }
}
