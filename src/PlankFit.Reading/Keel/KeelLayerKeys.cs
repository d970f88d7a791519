using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Keel;

/// <summary>[[keel-layer]]: one layer of the keel, from the inside out.</summary>
public static class KeelLayerKeys
{
    public const string WidthAccepted =
        "accepted: \"mitre\", { line = \"a line of the offsets\" } or { forward = ..., aft = ... }";

    public static readonly TextKey Name = new(
        "name",
        "\"first layer\"",
        "What the layer is called, on sheets and in measured.csv; each layer's own."
    )
    {
        Otherwise = "\"keel layer\" and its number from the inside",
    };

    public static readonly TextKey Meets = new(
        "meets",
        "\"inner\"",
        "The layer of planks whose ends meet its side."
    )
    {
        AskedFor = "the name of the [[layer]] of planks whose ends meet its side",
    };

    public static readonly LengthKey Thickness = new(
        "thickness",
        "9",
        "How thick the layer is, square to the keel."
    )
    {
        Required = true,
        Limits = Limits.Positive,
        Likely = Likely.OfUnit(null, 400, "is an unlikely thickness for a layer of a keel"),
        Source = KeySources.Plausible,
    };

    public static readonly LengthKey From = new(
        "from",
        "800",
        "The position along the hull at which the layer begins; forward of it planks are left long."
    )
    {
        Otherwise = "the forward end",
    };

    /// <summary>half-width where it is a word.</summary>
    public static readonly TextKey WidthWord = new(
        "half-width",
        "\"mitre\"",
        "As the planks want it."
    )
    {
        Otherwise = "\"mitre\"",
    };

    public static readonly TextKey WidthLine = new(
        "line",
        "\"keel face\"",
        "A half-breadth row of the table of offsets."
    );

    public static readonly LengthKey WidthForward = HalfWidth(
        "forward",
        "62",
        "The half-width at the forward end of the bottom; it runs straight to the after end."
    );

    public static readonly LengthKey WidthAft = HalfWidth(
        "aft",
        "45",
        "The half-width at the after end of the bottom."
    );

    /// <summary>half-width where it is a table.</summary>
    public static readonly TableKey WidthTable = new(
        "half-width",
        "{ forward = 62, aft = 45 }",
        "As given.",
        new(WidthLine, WidthForward, WidthAft)
    );

    public static readonly EitherKey Width = new(
        WidthWord,
        WidthTable,
        "The half-width at the layer's outer face: \"mitre\", where the planks' outer face meets it; a row of the table; or straight from one end to the other."
    );

    /// <summary>side where it is a word.</summary>
    public static readonly ChoiceKey<bool> SideWord = new(
        "side",
        [("plumb", false), ("square to plank", true)],
        "How its side stands."
    )
    {
        DefaultChoice = false,
    };

    public static readonly NumberKey Degrees = new(
        "degrees",
        "12",
        "degrees",
        "How far off plumb the side stands, positive where the outer face is the wider."
    )
    {
        Required = true,
        Limits = Limits.Within(-60, 60),
        AcceptedWords =
            "accepted: \"plumb\", \"square to plank\" or { degrees = ... }, more than {least} and less than {most}, positive where the outer face is the wider",
    };

    /// <summary>side where it is a table.</summary>
    public static readonly TableKey SideTable = new(
        "side",
        "{ degrees = 12 }",
        "Leaning.",
        new(Degrees)
    );

    public static readonly EitherKey Side = new(
        SideWord,
        SideTable,
        "How the layer's side stands: plumb, square to the planks through its outer edge, or off plumb by so much."
    );

    public static readonly JobTable Table = new(Name, Meets, Thickness, Width, Side, From);

    private static LengthKey HalfWidth(string name, string example, string what) =>
        new(name, example, what)
        {
            Required = true,
            Limits = Limits.Positive,
            Likely = Likely.OfUnit(null, 1000, "is an unlikely half-width for a keel"),
            Source = KeySources.Plausible,
        };
}
