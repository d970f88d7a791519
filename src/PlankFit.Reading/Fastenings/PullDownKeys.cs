using PlankFit.Planking.Fastenings;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Fastenings;

/// <summary>pull-down of [fastenings]: points that draw a plank to the skin below.</summary>
public static class PullDownKeys
{
    public static readonly ChoiceKey<FasteningKind> Kind = new(
        "kind",
        FasteningKeyKinds.PullDown,
        "A screw goes through to a loose block, a staple stays in the skin below."
    )
    {
        Otherwise =
            "a screw with its pad where the layer has those, else a staple through its strap",
    };

    public static readonly LengthKey Spacing = FasteningKeyKinds.Spaced(
        "spacing",
        "100",
        "How far apart they are along the plank."
    ) with
    {
        DefaultMm = PullDownRule.UsualSpacingMm,
        Source = "staple rows 2 to 3 in along, from memory",
    };

    public static readonly LengthKey Across = FasteningKeyKinds.Spaced(
        "across",
        "60",
        "How far apart their rows are across the plank."
    ) with
    {
        DefaultMm = PullDownRule.UsualAcrossMm,
        Source = "staple rows 1 1/2 to 2 in across, from memory",
    };

    public static readonly LengthKey Pad = FasteningKeyKinds.Clear(
        "pad",
        "9",
        "How thick the pad under a screw's head is.",
        "as for the layer's own fastenings of this kind"
    );

    public static readonly LengthKey Strap = FasteningKeyKinds.Clear(
        "strap",
        "1",
        "How thick the strap is that staples go through.",
        "as for the layer's own fastenings of this kind"
    );

    public static readonly LengthKey Bite = new(
        "bite",
        "6",
        "How deep a point goes into the block, or into the skins below."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "two thirds of what is there",
        Source = "after Gougeon's staples of 8 and 9 mm for three skins of 3 mm, stretched",
    };

    public static readonly LengthKey Block = new(
        "block",
        "18",
        "How thick the loose block behind a screw is."
    )
    {
        Limits = Limits.Positive,
        DefaultMm = PullDownRule.UsualBlockMm,
        Source = KeySources.Proposal,
    };

    public static readonly LengthsKey Lengths = new(
        "lengths",
        "[14, 16, 18]",
        "The lengths that you can get."
    )
    {
        Otherwise = "steps of 5 mm or 1/8 in",
        Source = KeySources.Proposal,
    };

    public static readonly JobTable Table = new(
        Kind,
        Spacing,
        Across,
        Pad,
        Strap,
        Bite,
        Block,
        Lengths
    );
}
