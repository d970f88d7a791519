using PlankFit.Planking.Glue.Mixing;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Glue;

/// <summary>[resin] and [glue]: a product as its data sheet has it. What the product alone knows has no default.</summary>
public static class MixKeys
{
    private static readonly Limits Parts = Limits.MoreThan(0).UpTo(1000);

    public static readonly TextKey Name = new(
        "name",
        "\"slow epoxy\"",
        "How cards call it; generic figures are marked as such by it."
    )
    {
        Otherwise = "\"resin\" or \"glue\"",
    };

    public static readonly NumbersKey ByVolume = new(
        "parts-by-volume",
        "[2, 1]",
        "parts",
        "Resin and hardener by volume, as the data sheet says; one of this and parts-by-mass."
    )
    {
        Most = 2,
        Limits = Parts,
        Accepted = "accepted: two numbers, resin first: [2, 1]",
    };

    public static readonly NumbersKey ByMass = ByVolume with
    {
        Name = "parts-by-mass",
        Example = "[100, 42]",
        What = "The same by mass: not the same numbers.",
        Accepted = "accepted: two numbers, resin first: [100, 42]",
    };

    public static readonly NumbersKey Density = new(
        "density",
        "[1.15, 0.97]",
        "kg a litre",
        "Of resin and hardener, by which volumes become masses."
    )
    {
        Most = 2,
        Required = true,
        Limits = Limits.FromTo(0.5, 2.5),
        Units = AreaUnits.Density,
        Accepted =
            "accepted: two numbers of kg a litre from 0.5 to 2.5, resin first, as on the data sheet: [1.15, 0.97], or texts with their unit: [\"9.6 lb/US gal\", \"8.1 lb/US gal\"]",
        Source = KeySources.Plausible,
    };

    public static readonly TextKey At = new(
        "at",
        "\"20 C\"",
        "The temperature for which the data sheet gives it, with its scale."
    )
    {
        AskedFor = Temperatures.Accepted,
    };

    public static readonly NumberKey Minutes = Time("minutes", "60", "So long.");

    public static readonly NumberKey Mass = new(
        "mass",
        "100",
        "grams",
        "Of resin and hardener together in the pot."
    )
    {
        Required = true,
        Limits = Limits.FromTo(1, 100_000),
        Units = MixUnits.OfPot,
        AcceptedWords =
            "accepted: grams from {least} to {most}, or a text with its unit: \"4 oz\", \"1 lb\"",
        Source = KeySources.Plausible,
    };

    public static readonly NumberKey From = Time("from", "180", "Not before.");

    public static readonly NumberKey To = Time("to", "360", "Not after.");

    private static readonly JobTable FilmTable = new(At, Minutes),
        PotTable = new(At, Mass, Minutes),
        WindowTable = new(At, From, To);

    public static readonly NumberKey UsePart = new(
        "use-part",
        "0.6",
        "part of a clock",
        "How much of either clock a batch may use."
    )
    {
        Limits = Limits.FromTo(0.1, 1),
        AcceptedWords = "accepted: a part from {least} to {most}",
        DefaultValue = Mix.UsualPart,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey WastePercent = new(
        "waste-percent",
        "10",
        "percent",
        "What stays in pots and rollers and is squeezed out of seams, of what is put on."
    )
    {
        Limits = Limits.FromTo(0, 100),
        AcceptedWords = "accepted: percent from {least} to {most}",
        DefaultValue = 100 * Mix.UsualWaste,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey Thinned = new(
        "thinned-percent",
        "5",
        "percent",
        "Solvent in it, where its data sheet allows any; clocks of the mix unthinned then hold no longer, and nothing laid with it is timed by them."
    )
    {
        Limits = Limits.FromTo(0, 30),
        AcceptedWords = "accepted: percent from {least} to {most}; unthinned where left out",
        DefaultValue = 0,
        Source = KeySources.Practice,
    };

    public static readonly ChoiceKey<bool> ClocksAreFor = new(
        "clocks-are-for",
        [("unthinned", false), ("thinned", true)],
        "Of which mix pot, film, tacky, recoat and sandable are: as it comes, or as it is thinned here, off its data sheet or tried in a cup."
    )
    {
        DefaultChoice = false,
    };

    public static readonly NumberKey Price = new(
        "price-per-kg",
        "18.5",
        "number",
        "Of resin and hardener together, in whatever the stock's prices are in."
    )
    {
        Limits = Limits.NotNegative,
        Units = MixUnits.Price,
        AcceptedWords =
            "accepted: a number of {least} or more for a kg, or a text with its unit: \"8.40 /lb\"",
    };

    public static readonly LengthsKey Film = new(
        "film-thickness",
        "[0.2, 0.3, 0.5]",
        "Of the glue between two layers: the least, the usual and the most."
    )
    {
        Most = 3,
        Otherwise = "0.2, 0.3 and 0.5 mm",
        Source = KeySources.Proposal,
    };

    public static TablesKey Pot(string table) =>
        new(
            $"{table}.pot",
            "How long it lasts in the pot, at two temperatures at least and, for batches larger than the one, at two masses; each in braces in a list.",
            PotTable
        )
        {
            Required = true,
            Most = 20,
        };

    public static TablesKey OpenTime(string table) =>
        Clock(
            $"{table}.film",
            "How long it stays open as a thin film, at two temperatures at least."
        );

    public static TablesKey Sandable(string table) =>
        Clock(
            $"{table}.sandable",
            "When it may be scraped and sanded, at two temperatures at least; without it nothing is planned that must be keyed first."
        );

    public static TablesKey Tacky(string table) =>
        Window(
            $"{table}.tacky",
            "While cloth in it can be trimmed with a knife, from the end of the work on it, at two temperatures at least."
        );

    public static TablesKey Recoat(string table) =>
        Window(
            $"{table}.recoat",
            "While a next coat bonds to it without washing and keying, at two temperatures at least."
        );

    private static TablesKey Clock(string head, string what) =>
        new(head, what, FilmTable) { Required = true, Most = 20 };

    private static TablesKey Window(string head, string what) =>
        new(head, what, WindowTable) { Most = 20, Otherwise = "no window is planned by" };

    private static NumberKey Time(string name, string example, string what) =>
        new(name, example, "minutes", what)
        {
            Required = true,
            Limits = Limits.FromTo(1, 20_000),
            AcceptedWords = "accepted: minutes from {least} to {most}",
            Source = KeySources.Plausible,
        };

    /// <summary>All keys of one of the two tables.</summary>
    public static JobTable Table(string table) =>
        new(
            Name,
            ByVolume,
            ByMass,
            Density,
            Pot(table),
            OpenTime(table),
            Sandable(table),
            Tacky(table),
            Recoat(table),
            UsePart,
            WastePercent,
            Thinned,
            ClocksAreFor,
            Price,
            Film,
            GlueKeys.JointRate
        );
}
