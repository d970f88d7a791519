using PlankFit.Planking.SettingUp;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.SettingUp;

/// <summary>[setting-up.topside]: its thickness, which skin laps which, and how it stands at the chine.</summary>
public static class TopsideKeys
{
    public static readonly LengthKey Thickness = SettingUpSizes.Of(
        "thickness",
        "18",
        "Of the topside's whole stack.",
        SettingUpSizes.ThickestMm
    ) with
    {
        Required = true,
    };

    public static readonly ChoiceKey<ChineLap> Lap = new(
        "lap",
        [
            ("bottom laps topside", ChineLap.BottomLapsTopside),
            ("topside laps bottom", ChineLap.TopsideLapsBottom),
            ("mitre", ChineLap.Mitre),
        ],
        "Which skin runs by the other at the chine."
    )
    {
        Required = true,
    };

    public static readonly LengthKey MitreForwardOf = new(
        "mitre-forward-of",
        "2500",
        "The position forward of which the skins are mitred, where the corner opens and a lap would run out to nothing."
    )
    {
        Otherwise = "nowhere",
    };

    public static readonly TextKey Sheer = new(
        "sheer",
        "\"sheer\"",
        "The line of the table to which the topside runs straight from the chine; sheer or flare, one of them."
    );

    /// <summary>flare where it is the same all along.</summary>
    public static readonly NumberKey FlareEven = Flaring("flare", "12", "The same all along.");

    public static readonly TextKey Station = new("station", "\"0\"", "The station.")
    {
        AskedFor = "the name of a station of the table",
    };

    public static readonly NumberKey Degrees = Flaring("degrees", "22", "The flare there.") with
    {
        Required = true,
    };

    /// <summary>flare where it is given by stations.</summary>
    public static readonly TablesKey FlareRows = new(
        "setting-up.topside.flare",
        "By stations.",
        new(Station, Degrees)
    );

    public static readonly EitherKey Flare = new(
        FlareEven,
        FlareRows,
        "How far off plumb the topside stands at the chine, or a list of stations with their flare; sheer or flare, one of them."
    )
    {
        Example = "[{ station = \"0\", degrees = 22 }, { station = \"11\", degrees = 8 }]",
    };

    public static readonly JobTable Table = new(Thickness, Lap, Sheer, Flare, MitreForwardOf);

    private static NumberKey Flaring(string name, string example, string what) =>
        new(name, example, "degrees", what)
        {
            Limits = Limits.Within(-60, 80),
            AcceptedWords =
                "degrees off plumb, more than {least} and less than {most}, positive where the topside spreads going up",
        };
}
