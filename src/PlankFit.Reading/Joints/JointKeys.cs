using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Joints;

/// <summary>What [joints] and [[joints.layer]] have alike: the stock and the kind of joint.</summary>
public static class JointKeys
{
    public static readonly LengthKey Longest = new(
        "longest",
        "2400",
        "The longest usable piece, corner to corner along the plank; planks that ask for more are divided."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "the longest of stock-lengths",
    };

    public static readonly LengthsKey StockLengths = new(
        "stock-lengths",
        "[1800, 2400]",
        "The lengths that stock can be had in; pieces are made to waste least of them."
    );

    /// <summary>The shortest piece as a part of the longest.</summary>
    public const double UsualShortest = 0.25;

    public static readonly LengthKey Shortest = new(
        "shortest",
        "600",
        "The shortest piece that is still laid; at most half the longest."
    )
    {
        Otherwise = $"{Limits.Plain(UsualShortest)} of the longest",
        Source = KeySources.Proposal,
    };

    public static readonly ChoiceKey<JointKind> Kind = new(
        "kind",
        [("butt", JointKind.Butt), ("scarf", JointKind.Scarf)],
        "Sawn ends against each other over a backing, or long tapers glued on each other. It must be given here or in [joints]."
    );

    public static readonly NumberKey Ratio = new(
        "ratio",
        "8",
        "times the thickness",
        "The length of a scarf."
    )
    {
        Limits = Limits.FromTo(4, 40),
        AcceptedWords = "accepted: {least} to {most}, the length of a scarf over the thickness",
        DefaultValue = 8,
        Source = "Gougeon Brothers on Boat Construction, ch. 12; the limits are our own",
    };

    public static readonly ChoiceKey<ButtCut> Cut = new(
        "cut",
        [("square", ButtCut.Square), ("along the backing", ButtCut.AlongBacking)],
        "How a butt is sawn: square to the plank, or along the timber behind it."
    )
    {
        DefaultChoice = ButtCut.Square,
    };

    public static readonly TextsKey On = new(
        "on",
        "[\"stringer\", \"frame\"]",
        "What a butt may lie on: stringer, frame, floor, solid, block, layer below, or the name of a [[behind]]."
    )
    {
        Otherwise =
            string.Join(", ", JointStock.Carrying) + "; a block too where its length is given",
    };

    public static readonly LengthKey Block = new(
        "block",
        "200",
        "The length along the plank of a block glued behind a butt of the first layer."
    )
    {
        Limits = Limits.Positive,
        Beyond = "must be greater than {least}: its length along the plank",
        Otherwise = "no blocks are used",
    };

    public static readonly LengthKey Bearing = new(
        "bearing",
        "15",
        "The breadth of backing that each of two butted pieces must have."
    )
    {
        Limits = Limits.NotNegative,
        Beyond = "must not be negative",
        DefaultMm = 15,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Grid = new(
        "grid",
        "50",
        "The steps along a plank in which places for a joint are tried; smaller ones try more places and take longer."
    )
    {
        Limits = Limits.AtLeast(5),
        Beyond = "must be at least {least}",
        DefaultMm = 50,
        Source = KeySources.Proposal,
    };

    public static readonly ImmutableArray<JobKey> OfStock =
    [
        Longest,
        StockLengths,
        Shortest,
        Kind,
        Ratio,
        Cut,
        On,
        Block,
        Bearing,
        Grid,
    ];

    public static readonly ChoiceKey<Skin> SkinIs = new(
        "skin",
        [("glued layers", Skin.GluedLayers), ("planks on frames", Skin.OnFrames)],
        "Which rules about joints come with the program: those for layers glued on each other, or old ones for planks on frames."
    )
    {
        Otherwise =
            "\"glued layers\" where the bottom has more than one layer of planks, \"planks on frames\" where it has one",
        Source = KeySources.Proposal,
    };

    public static readonly TextKey LayerName = new(
        "name",
        "\"outer\"",
        "The layer of planks that this is about."
    )
    {
        AskedFor = "the [[layer]] that it is about",
    };

    public static readonly TablesKey Layer = new(
        "joints.layer",
        "A layer whose stock is another; what it does not say holds as in [joints].",
        new([LayerName, .. OfStock])
    );

    public static readonly TablesKey Rule = new(
        "joints.rule",
        "A rule of your own about where joints may lie, in the place of the one that comes with the program.",
        JointRuleKeys.Table
    );

    public static readonly JobTable Table = new([.. OfStock, SkinIs, Layer, Rule]);
}
