using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[ends] and [[ends.zone]]: what is done with a plank's ends.</summary>
public static class EndKeys
{
    public static readonly ChoiceKey<EndCut> Cut = new(
        "cut",
        [("fit", EndCut.Fit), ("left long", EndCut.LeftLong)],
        "Fit: cut to meet the edge; left long: trimmed in place."
    )
    {
        Required = true,
    };

    public static readonly LengthKey By = new(
        "by",
        "25",
        "How far an end left long stands past the edge, square to it."
    )
    {
        Limits = Limits.Positive,
        Beyond = "must be greater than {least}: how far the end stands past the edge",
        DefaultMm = EndRules.Default.Upper.ByMm,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Allowance = new(
        "allowance",
        "15",
        "What an end that is fit has over, to be scribed away."
    )
    {
        Limits = Limits.NotNegative,
        Beyond = "must not be negative",
        Otherwise = "none, but 15 mm at the outer end where both ends of a plank are fit",
        Source = KeySources.Proposal,
    };

    private static readonly JobTable Rule = new(Cut, By, Allowance);

    public static readonly TableKey Keel = Edge(
        "keel",
        "{ cut = \"fit\" }",
        "What is done with ends at the keel.",
        EndRules.Default.Lower
    );

    public static readonly TableKey Chine = Edge(
        "chine",
        "{ cut = \"left long\", by = 25 }",
        "What is done with ends at the chine.",
        EndRules.Default.Upper
    );

    public static readonly TableKey Transom = Edge(
        "transom",
        "{ cut = \"left long\", by = 25 }",
        "What is done with ends at the transom.",
        EndRules.Default.Transom
    );

    public static readonly TableKey Stem = Edge(
        "stem",
        "{ cut = \"fit\" }",
        "What is done with ends at the stem.",
        EndRules.Default.Stem
    );

    public static readonly LengthKey From = new(
        "from",
        "0",
        "The position along the hull at which the stretch begins."
    )
    {
        Required = true,
    };

    public static readonly LengthKey To = new(
        "to",
        "900",
        "The position along the hull at which it ends."
    )
    {
        Required = true,
    };

    public static readonly TablesKey Zone = new(
        "ends.zone",
        "A stretch of the hull where ends are done otherwise; an end lies in one stretch only.",
        EdgeKeys.ZoneTable(Keel, Chine, Transom, Stem)
    );

    /// <summary>Those of the bottom.</summary>
    internal static readonly EdgeKeys OfBottom = new(Keel, Chine, Transom, Stem, Zone);

    public static readonly JobTable Table = Of(["topside"]);

    /// <summary>[ends] of a job with these panels besides the bottom: each has a table of its own name in it.</summary>
    public static JobTable Of(IEnumerable<string> panels) =>
        new([Keel, Chine, Transom, Stem, Zone, .. panels.Select(PanelEndKeys.Under)]);

    internal static TableKey Edge(string name, string example, string what, EndRule usual) =>
        new(name, example, what, Rule)
        {
            Otherwise =
                usual.Cut == EndCut.Fit
                    ? "fit"
                    : $"left long by {LengthText.FormatExact(usual.ByMm, LengthUnit.Millimetre)}",
            Source = usual.Cut == EndCut.Fit ? KeySources.Practice : KeySources.Proposal,
        };
}
