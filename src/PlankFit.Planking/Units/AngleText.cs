namespace PlankFit.Planking.Units;

/// <summary>Angles as people read them off a saw or a list.</summary>
public static class AngleText
{
    /// <summary>To the half degree, which is what a saw's scale shows: 46.5°.</summary>
    public static string ForPaper(double degrees) =>
        NumberText.Trimmed(Math.Round(degrees * 2, MidpointRounding.AwayFromZero) / 2, decimals: 1)
        + "°";

    /// <summary>To the tenth of a degree, for lists and messages: 46.3°.</summary>
    public static string Exact(double degrees) => NumberText.Trimmed(degrees, decimals: 1) + "°";
}
