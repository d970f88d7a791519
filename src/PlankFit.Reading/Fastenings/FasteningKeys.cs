using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Fastenings;

/// <summary>[fastenings], [[fastenings.layer]] and [[fastenings.backing]]: how planks are held.</summary>
public static class FasteningKeys
{
    public static readonly ChoiceKey<FasteningKind> Kind = new(
        "kind",
        [
            ("left in", FasteningKind.LeftIn),
            .. FasteningKeyKinds.PullDown,
            ("none", FasteningKind.None),
        ],
        "What holds a plank: something left in, a screw with a pad or a staple through a strap that come out again, or none, for vacuum and weights."
    )
    {
        DefaultChoice = FasteningKind.ScrewAndPad,
    };

    public static readonly ChoiceKey<FastenerShape> Shape = new(
        "what",
        [
            ("screw", FastenerShape.Screw),
            ("nail", FastenerShape.Nail),
            ("staple", FastenerShape.Staple),
        ],
        "What a fastening that is left in is."
    )
    {
        DefaultChoice = FastenerShape.Screw,
    };

    public static readonly TextKey Name = new(
        "name",
        "\"pan head screw, 4 mm\"",
        "What to ask for in the shop."
    );

    public static readonly LengthKey Spacing = FasteningKeyKinds.Spaced(
        "spacing",
        "75",
        "The most from one fastening to the next along a timber."
    ) with
    {
        Otherwise = Thicknesses(FasteningRule.UsualSpacing),
        Source = "Whitfield's rule of thumb for nails; the least is our own bound",
    };

    public static readonly LengthKey Nearest = new(
        "nearest",
        "25",
        "The least between any two fastenings of a plank; not more than the spacing."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "a third of the spacing",
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Edge = FasteningKeyKinds.Clear(
        "clear-of-seams",
        "18",
        "The least to a plank's seams.",
        Thicknesses(FasteningRule.UsualEdge)
    );

    public static readonly LengthKey End = FasteningKeyKinds.Clear(
        "clear-of-ends",
        "27",
        "The least to a plank's net ends.",
        Thicknesses(FasteningRule.UsualEnd)
    );

    public static readonly LengthKey Joint = FasteningKeyKinds.Clear(
        "clear-of-joints",
        "27",
        "The least to a plank's joints.",
        "as clear-of-ends"
    );

    public static readonly LengthKey Below = FasteningKeyKinds.Clear(
        "clear-of-seams-below",
        "9",
        "The least to the seams and joints of the skin next below.",
        Thicknesses(1)
    );

    public static readonly LengthKey Miss = FasteningKeyKinds.Clear(
        "clear-of-fastenings-below",
        "14",
        "The least to the fastenings of the skins below.",
        $"{Thicknesses(FasteningRule.UsualMiss)}, but {Metric(FasteningRule.LeastMissMm)} at least"
    );

    public static readonly LengthKey Margin = FasteningKeyKinds.Clear(
        "clear-of-timber-edge",
        "8",
        "The least to the edge of the timber behind."
    ) with
    {
        DefaultMm = FasteningRule.UsualMarginMm,
    };

    public static readonly LengthKey Open = FasteningKeyKinds.Clear(
        "clear-of-open-places",
        "27",
        "The least to a place that is kept open.",
        "as clear-of-ends"
    );

    public static readonly LengthKey Pad = FasteningKeyKinds.Clear(
        "pad",
        "9",
        "How thick the pad under a screw's head is; a pad or a strap, not both.",
        $"{Metric(FasteningRule.UsualPadMm)} for a screw with its pad, else nothing"
    );

    public static readonly LengthKey Strap = FasteningKeyKinds.Clear(
        "strap",
        "1",
        "How thick the strap is that staples go through; a pad or a strap, not both.",
        $"{Metric(FasteningRule.UsualStrapMm)} for a staple through its strap, else nothing"
    );

    public static readonly LengthKey Bite = new(
        "bite",
        "20",
        "How deep a fastening goes into the timber behind."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "all that it passes through and 1/2 in",
        Source =
            "a small-craft association's list of nails, 1 penny for 1/8 in of planking; pennies to inches by the trade's own measure",
    };

    public static readonly LengthKey Hole = new(
        "hole",
        "3",
        "The diameter of the hole that the DXF files drill."
    )
    {
        Limits = Limits.Positive,
        DefaultMm = FasteningRule.UsualHoleMm,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Vent = FasteningKeyKinds.Spaced(
        "vent",
        "200",
        "Where kind is none: holes for the vacuum, so far apart."
    ) with
    {
        Otherwise = "no holes",
    };

    public static readonly LengthsKey Lengths = new(
        "lengths",
        "[30, 35, 40, 45]",
        "The lengths of fastenings that you can get."
    )
    {
        Otherwise = "steps of 5 mm or 1/8 in",
        Source = KeySources.Proposal,
    };

    /// <summary>pull-down where it is a word.</summary>
    public static readonly TextKey PullDownWord = new("pull-down", "\"none\"", "None are wanted.")
    {
        Otherwise = "as the kind of the layer",
    };

    /// <summary>pull-down where it is a table.</summary>
    public static readonly TableKey PullDownTable = new(
        "pull-down",
        "{ kind = \"staple through strap\", spacing = 100 }",
        "As given.",
        PullDownKeys.Table
    );

    public static readonly EitherKey PullDown = new(
        PullDownWord,
        PullDownTable,
        "Points between the timbers where planks of the second skin and later ones are drawn down to the skin below, or \"none\"."
    );

    public static readonly ImmutableArray<JobKey> OfAnyLayer =
    [
        Kind,
        Shape,
        Name,
        Spacing,
        Nearest,
        Edge,
        End,
        Joint,
        Margin,
        Open,
        Below,
        Miss,
        Pad,
        Strap,
        Bite,
        Lengths,
        Hole,
        Vent,
        PullDown,
    ];

    public static readonly LengthKey BackingDepth = new(
        "backing-depth",
        "45",
        "How deep the timber behind is, square to the planking; no point comes through."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "not known, and no length is held to it",
    };

    public static readonly NumberKey Spare = new(
        "spare",
        "10",
        "percent",
        "How many more fastenings to buy than are counted."
    )
    {
        Limits = Limits.FromTo(0, 100),
        DefaultValue = FasteningSpec.UsualSparePercent,
        Source = KeySources.Proposal,
    };

    public static readonly TextKey LayerName = new(
        "layer",
        "\"outer\"",
        "The layer of planks that this is about."
    )
    {
        AskedFor = "the name of the [[layer]] of planks that it is about",
    };

    public static readonly TablesKey Layer = new(
        "fastenings.layer",
        "A layer that is held otherwise; what it does not say holds as in [fastenings].",
        new([LayerName, .. OfAnyLayer])
    );

    public static readonly TextKey BackingName = new(
        "name",
        "\"engine floor\"",
        "The [[behind]] that this is about."
    )
    {
        AskedFor = "the name of the [[behind]] that it is about",
    };

    public static readonly LengthKey Depth = new(
        "depth",
        "30",
        "How deep that timber is, square to the planking."
    )
    {
        Required = true,
        Limits = Limits.Positive,
    };

    public static readonly TablesKey Backing = new(
        "fastenings.backing",
        "Timber of another depth.",
        new(BackingName, Depth)
    );

    public static readonly JobTable Table = new([
        .. OfAnyLayer,
        BackingDepth,
        Spare,
        Layer,
        Backing,
    ]);

    private static string Thicknesses(double times) =>
        times == 1 ? "the plank's thickness" : $"{Limits.Plain(times)} thicknesses of the plank";

    private static string Metric(double mm) => LengthText.FormatExact(mm, LengthUnit.Millimetre);
}
