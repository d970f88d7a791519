using PlankFit.Planking.Layers;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[limits] and [[limits.bend]]: the table by which bends are judged.</summary>
public static class LimitKeys
{
    private const string PercentAccepted =
        "accepted: percent, greater than {least} and at most {most}";

    public static readonly NumberKey EdgeStrain = new(
        "edge-strain-percent",
        "0.1",
        "percent",
        "The strain at a plank's edge beyond which it is not to be forced flat across its width."
    )
    {
        Limits = Limits.MoreThan(0).UpTo(10),
        AcceptedWords = PercentAccepted,
        DefaultValue = BendLimits.Default.EdgeStrainPercent,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey TwistShear = new(
        "twist-shear-percent",
        "0.15",
        "percent",
        "The shear at a plank's face, its thickness times its twist, beyond which the verdict names the twist."
    )
    {
        Limits = Limits.MoreThan(0).UpTo(10),
        AcceptedWords = PercentAccepted,
        DefaultValue = BendLimits.Default.TwistShearPercent,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey Ratio = new(
        "least-radius-over-thickness",
        "200",
        "times the thickness",
        "The tightest radius that has this verdict; rows run from the gentlest bend to the hardest, and the last has 0."
    )
    {
        Required = true,
        Limits = Limits.NotNegative,
        AcceptedWords = "accepted: {least} or more",
    };

    public static readonly TextKey Verdict = new(
        "verdict",
        "\"cold\"",
        "The verdict in words, as cards and lists show it."
    )
    {
        AskedFor = "the verdict in words, such as \"cold\"",
    };

    public static readonly TextKey From = new(
        "source",
        "\"our own trials\"",
        "Where the figure comes from."
    )
    {
        Otherwise = "\"this job\"",
    };

    public static readonly ChoiceKey<BendWay> Way = new(
        "way",
        [
            ("cold", BendWay.Cold),
            ("soak or steam", BendWay.SoakOrSteam),
            ("laminate thinner", BendWay.LaminateThinner),
            ("refuse", BendWay.Refuse),
        ],
        "What the verdict asks of you."
    )
    {
        Otherwise =
            "told by the verdict's words: soak or steam; else laminate thinner in the last row of several, cold in others",
    };

    public static readonly TablesKey Bend = new(
        "limits.bend",
        "A row of the table by which bends are judged; with one of your own, none of those that come with the program holds.",
        new(Ratio, Verdict, From, Way)
    )
    {
        Otherwise = string.Join(
            "; ",
            BendLimits.Default.Bend.Select(b =>
                $"{Limits.Plain(b.LeastRadiusOverThickness)} {b.Verdict}"
            )
        ),
        Source =
            string.Join("; ", BendLimits.Default.Bend.Select(b => b.Source).Distinct())
            + " (secondary sources)",
    };

    public static readonly JobTable Table = new(EdgeStrain, TwistShear, Bend);
}
