using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[[layer]]: a skin of planks, or a cloth.</summary>
public static class LayerKeys
{
    public static readonly ChoiceKey<bool> Cloth = new(
        "kind",
        [("planks", false), ("cloth", true)],
        "Planks, or cloth and anything else that only adds thickness."
    )
    {
        DefaultChoice = false,
    };

    public static readonly TextKey Name = new(
        "name",
        "\"inner\"",
        "What the layer is called, on sheets and where other tables mean it; each layer's own."
    )
    {
        Otherwise = "\"layer\" and its number from the inside",
    };

    public static readonly TextKey Panel = new(
        "panel",
        "\"topside\"",
        "The [[panel]] that the layer lies on."
    )
    {
        Otherwise = "the bottom",
    };

    public static readonly LengthKey Thickness = new(
        "thickness",
        "9",
        "How thick the layer is as it is laid, square to its face."
    )
    {
        Required = true,
        Limits = Limits.Positive,
        Likely = Likely.OfUnit(1.5, 60, "{value} is an unlikely thickness for planks"),
        Source = KeySources.Plausible,
    };

    /// <summary>The same key where the layer is a cloth.</summary>
    public static readonly LengthKey ClothThickness = Thickness with
    {
        Likely = Likely.OfUnit(null, 10, "{value} is an unlikely thickness for cloth"),
    };

    public static readonly LengthKey Width = new(
        "width",
        "150",
        "The width of the stock that planks are sawn from; no plank is laid wider. Planks must have it."
    )
    {
        Required = true,
        Limits = Limits.Positive,
        Likely = Likely.OfUnit(20, 600, "{value} is an unlikely width for planks"),
        Source = KeySources.Plausible,
    };

    public static readonly ChoiceKey<Heads> Heading = new(
        "heads",
        [("aft", Heads.Aft), ("forward", Heads.Forward)],
        "Which way the planks run, going out from the panel's lower edge (the keel, for the bottom). Planks must have it."
    )
    {
        Required = true,
    };

    public static readonly NumberKey Angle = new(
        "angle",
        "45",
        "degrees",
        "Between the master plank's centre line and the panel's lower edge (the keel's side, for the bottom), where they meet. Planks must have it."
    )
    {
        Required = true,
        Limits = Limits.Within(0, 180),
        AcceptedWords =
            "accepted: degrees greater than {least} and less than {most}, usually 30 to 60",
        Beyond = "planks at this angle never leave the keel; ",
        Likely = new(null, 90, "beyond 90 the planks head the other way than \"heads\" says"),
        Source = KeySources.Practice,
    };

    public static readonly LengthKey Master = new(
        "master",
        "4200",
        "The position along the hull at which the master plank's centre line crosses the middle of its panel."
    )
    {
        Otherwise = "halfway along the panel's lower edge",
    };

    public static readonly ChoiceKey<Hold> Held = new(
        "hold",
        [("width", Hold.Width), ("angle", Hold.Angle)],
        "What is kept going out from the master plank: the planks' full width, or the angle at the panel's lower edge, by tapering them."
    )
    {
        DefaultChoice = Hold.Width,
    };

    public static readonly NumberKey Drift = new(
        "angle-drift",
        "7.5",
        "degrees",
        "How far the angle at the panel's lower edge may drift from the master plank's before a plank is tapered."
    )
    {
        Limits = Limits.AtLeast(0).LessThan(90),
        AcceptedWords = "accepted: degrees from {least} to less than {most}",
        DefaultValue = 7.5,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Gap = new(
        "gap",
        "0.5",
        "The widest opening between straight edges that the glue is trusted with; where it would be more, the edge is sawn to its curve."
    )
    {
        Limits = Limits.NotNegative,
        Beyond = "must not be negative",
        Likely = Likely.OfUnit(null, 5, "few glues fill so wide a gap"),
        DefaultMm = 0.5,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey Stagger = new(
        "stagger",
        "0.5",
        "part of a plank's width",
        "How far the seams lie off those of the layer below that heads the same way."
    )
    {
        Limits = Limits.AtLeast(0).LessThan(1),
        AcceptedWords = "accepted: a part of the width, from {least} to less than {most}",
        Otherwise = "seams lie where the master plank puts them",
    };

    public static readonly TextKey Species = new(
        "species",
        "\"sitka-spruce\"",
        "The layer's species, by its name in the table of species or under [[timber.species]]."
    )
    {
        Otherwise = "planks under [timber]",
    };

    public static readonly TableKey Lap = new(
        "lap",
        "{ width = 76, from = 0, to = 3900 }",
        "Where port and starboard cloth lap under the keel and count twice.",
        LapKeys.Table
    );

    /// <summary>What belongs to planks alone.</summary>
    public static readonly ImmutableArray<JobKey> OfPlanks =
    [
        Width,
        Heading,
        Angle,
        Master,
        Held,
        Drift,
        Gap,
        Stagger,
        Species,
    ];

    public static readonly JobTable Table = new([Cloth, Name, Panel, Thickness, .. OfPlanks, Lap]);
}

/// <summary>lap of a cloth.</summary>
public static class LapKeys
{
    public static readonly LengthKey Width = new(
        "width",
        "76",
        "How wide port and starboard lap, half of it on each side."
    )
    {
        Required = true,
        Limits = Limits.Positive,
        Beyond =
            "must be greater than {least}: how wide port and starboard lap, half of it on each side",
    };

    public static readonly LengthKey From = new(
        "from",
        "0",
        "The position along the hull from which they lap."
    )
    {
        Otherwise = "the forward end",
    };

    public static readonly LengthKey To = new(
        "to",
        "3900",
        "The position along the hull to which they lap."
    )
    {
        Otherwise = "the after end",
    };

    public static readonly JobTable Table = new(Width, From, To);
}
