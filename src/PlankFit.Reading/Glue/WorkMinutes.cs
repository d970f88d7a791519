using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Glue;

/// <summary>Keys of how long a crew takes: a batch, a plank, an area or a length, each of the latter by its own unit as well.</summary>
internal static class WorkMinutes
{
    public const string OnArea = "minutes a square metre",
        OnLength = "minutes a metre";

    /// <param name="unit">What the minutes are of, in words; one of the two here has units.</param>
    public static NumberKey Key(
        string name,
        string example,
        string unit,
        string what,
        double usual
    ) =>
        new(name, example, unit, what)
        {
            Limits = Limits.MoreThan(0).UpTo(600),
            Units = unit switch
            {
                OnArea => MixUnits.OnArea,
                OnLength => MixUnits.OnLength,
                _ => [],
            },
            AcceptedWords =
                "accepted: minutes, more than {least} and no more than {most}"
                + unit switch
                {
                    OnArea => " a square metre, or a text with its unit: \"0.5 min/ft2\"",
                    OnLength => " a metre, or a text with its unit: \"0.6 min/ft\"",
                    _ => "",
                },
            DefaultValue = usual,
            Source = KeySources.Proposal,
        };
}
