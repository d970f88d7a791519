using PlankFit.Reading.Keys;

namespace PlankFit.Reading.SettingUp;

/// <summary>Keys of [setting-up] that are sizes of timber.</summary>
internal static class SettingUpSizes
{
    // Beyond these a unit has most likely been mistaken, mm: our own bounds, wide, no source.
    public const double ThickestMm = 300;
    public const double WidestMm = 1000;

    /// <summary>A length greater than 0, and doubted where it is unlikely.</summary>
    public static LengthKey Of(string name, string example, string what, double mostMm) =>
        new(name, example, what)
        {
            Limits = Limits.Positive,
            Likely = Likely.OfUnit(null, mostMm, "is unlikely large"),
            Source = KeySources.Plausible,
        };
}
