using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Timber;

/// <summary>[timber]: what the planks are made of, and how dry.</summary>
public static class TimberKeys
{
    public static readonly TextKey Planks = new(
        "planks",
        "\"douglas-fir\"",
        "The species of the layers that name none, by its name in the table of species or under [[timber.species]]."
    );

    /// <summary>Degrees within which the air is.</summary>
    internal static readonly Limits Celsius = Limits.FromTo(-20, 70);

    public static readonly TextKey Temperature = new(
        "temperature",
        "\"15 C\"",
        "Of the air in which the wood has come to rest, with its scale."
    )
    {
        AskedFor = Celsius.Into(
            "accepted: degrees with their scale, \"20 C\" or \"68 F\", from {least} to {most} C",
            Limits.Plain
        ),
    };

    public static readonly NumberKey Humidity = new(
        "humidity",
        "72",
        "percent",
        "The relative humidity of that air."
    )
    {
        Required = true,
        Limits = Limits.FromTo(0, 98),
        AcceptedWords = "accepted: relative humidity in percent, {least} to {most}",
    };

    private static readonly JobTable AirTable = new(Temperature, Humidity);

    /// <summary>Either moisture where it is the air.</summary>
    public static readonly TableKey WorkshopAir = Air("workshop-moisture");

    /// <summary>Either moisture where it is percent.</summary>
    public static readonly NumberKey WorkshopPercent = Percent("workshop-moisture");

    public static readonly EitherKey Workshop = new(
        WorkshopPercent,
        WorkshopAir,
        "How dry the planks are when they are sawn and laid: percent, or the air in which they have come to rest."
    );

    public static readonly TableKey ServiceAir = Air("service-moisture");

    public static readonly NumberKey ServicePercent = Percent("service-moisture");

    public static readonly EitherKey Service = new(
        ServicePercent,
        ServiceAir,
        "How dry they are as the boat is used: percent, or the air."
    );

    public static readonly ChoiceKey<Grain> Sawn = new(
        "grain",
        [("flat", Grain.Flat), ("quarter", Grain.Quarter)],
        "Whether boards are flat-sawn, which moves the more across its width, or quarter-sawn."
    )
    {
        DefaultChoice = TimberSpec.Default.Grain,
    };

    public static readonly ChoiceKey<BoardGrade> Boards = new(
        "boards",
        [("clear", BoardGrade.Clear), ("knotty", BoardGrade.Knotty)],
        "Whether boards are clear, or knotty, which halves what they are trusted to bend."
    )
    {
        DefaultChoice = TimberSpec.Default.Grade,
        Source = "that knots halve it is a proposal, no source",
    };

    public static readonly ChoiceKey<FaceGrain> Face = new(
        "face-grain",
        [("along", FaceGrain.Along), ("across", FaceGrain.Across)],
        "Of plywood: which way the grain of its faces runs, along the plank or across it."
    )
    {
        DefaultChoice = TimberSpec.Default.FaceGrain,
    };

    public static readonly LengthKey Clamps = new(
        "clamp-spacing",
        "300",
        "Between clamps, screws or staples while the glue sets: what one of them holds is estimated by it, and how many a session wants is counted."
    )
    {
        Limits = Limits.Positive,
        Otherwise =
            LengthText.FormatExact(TimberSpec.Default.ClampSpacingMm, LengthUnit.Millimetre)
            + ", or a foot where lengths are in feet and inches",
        Source = KeySources.Proposal,
    };

    public static readonly TablesKey Species = new(
        "timber.species",
        "A species that the table does not know, or better figures for one that it knows.",
        SpeciesKeys.Table
    );

    public static readonly JobTable Table = new(
        Planks,
        Workshop,
        Service,
        Sawn,
        Boards,
        Face,
        Clamps,
        Species
    );

    private static TableKey Air(string name) =>
        new(name, "{ temperature = \"15 C\", humidity = 72 }", "Air.", AirTable);

    private static NumberKey Percent(string name) =>
        new(name, "9", "percent", "Percent of the oven-dry weight.")
        {
            Limits = Limits.FromTo(0, Moisture.SaturationPercent),
            AcceptedWords =
                "accepted: percent of the oven-dry weight from {least} to {most}, or { temperature = \"20 C\", humidity = 50 }",
            Source = "the most is where the wood is saturated, Wood Handbook",
        };
}
