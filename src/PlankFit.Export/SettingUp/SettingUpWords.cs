using PlankFit.Export.Words;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;

namespace PlankFit.Export.SettingUp;

/// <summary>The trade's words for frames, bevels and ends at the chine.</summary>
internal static class SettingUpWords
{
    /// <summary>Less than this is square to any bevel gauge, degrees.</summary>
    private const double SquareDegrees = 0.25;

    /// <summary>"12.5° under", "3° standing", "square".</summary>
    public static string Bevel(double degrees) =>
        Math.Abs(degrees) < SquareDegrees
            ? "square"
            : $"{AngleText.ForPaper(Math.Abs(degrees))} {(degrees > 0 ? "under" : "standing")}";

    /// <summary>Of a plank's end: "12.5°, outer face longer".</summary>
    public static string PlankEnd(double degrees) =>
        Math.Abs(degrees) < SquareDegrees
            ? "square"
            : $"{AngleText.ForPaper(Math.Abs(degrees))}, {(degrees > 0 ? "outer" : "inner")} face longer";

    public static string Face(FrameFace face) => face == FrameFace.Forward ? "forward" : "after";

    /// <summary>Which way the frame lies from its line.</summary>
    public static string Lies(FrameFace face) => face == FrameFace.Forward ? "abaft" : "forward of";

    public static string Named(FrameSection s) =>
        (s.IsTransom ? $"{s.Label}, transom" : s.Label) + Only(s);

    /// <summary>As tables of data have it.</summary>
    public static string Listed(FrameSection s) => s.Label + Only(s);

    private static string Only(FrameSection s) =>
        s.Only is { } only ? $" ({PlankWords.Of(only)} only)" : "";

    /// <summary>Where its places are, inboard to outboard: as letters on its drawing, and in words.</summary>
    public static (string Short, string Long) Place(FrameSection s, int place) =>
        place switch
        {
            0 => s.IsStretch ? ("I", "inner end") : ("K", "keel"),
            1 => ("1/4", "quarter"),
            2 => ("1/2", "half way"),
            3 => ("3/4", "three quarters"),
            _ => s.IsStretch ? ("O", "outer end") : ("C", "chine"),
        };

    /// <summary>With how it is known in a heading.</summary>
    public static string Headed(FrameSection s) =>
        s.IsTransom ? $"Transom (station {s.Name})"
        : s.IsStation ? $"Station {s.Name}"
        : $"F{s.Label[1..]}{Only(s)}";

    public static string Lap(ChineLap lap) =>
        lap switch
        {
            ChineLap.BottomLapsTopside => "bottom laps topside",
            ChineLap.TopsideLapsBottom => "topside laps bottom",
            _ => "mitre",
        };

    /// <summary>How bottom and topside meet at a section.</summary>
    public static string Meeting(SettingUpSpec spec, ChinePlace place) =>
        spec.ChinePiece is null ? Lap(place.Lap) : "hard chine piece";

    /// <summary>Past (+) or short of (-) an edge.</summary>
    public static string Signed(double mm, LengthUnit unit)
    {
        string size = LengthText.PaperNumber(Math.Abs(mm), unit);
        return LengthText.OnPaperMm(mm, unit) == 0 ? size : (mm < 0 ? "- " : "+ ") + size;
    }
}
