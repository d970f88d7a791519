using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>When cloth that no longer bonds by itself takes the next coat or skin after all: cured, washed and keyed, dry; minutes from midnight of the first day.</summary>
internal readonly record struct KeyedCloth(double Cured, double Keyed, double Dry)
{
    /// <summary>From washed and keyed until it may be called dry: a proposal, no source.</summary>
    private const double DryMinutes = 60;

    /// <returns>Null where no clock says when it has cured: then nobody can say when it may be keyed.</returns>
    /// <param name="clocks">Of what it is wetted out with.</param>
    /// <param name="last">When the last of it was on.</param>
    /// <param name="notBefore">Nobody keys before.</param>
    public static KeyedCloth? Of(
        MixClocks clocks,
        BatchPlacing placing,
        WorkDays days,
        double last,
        double notBefore,
        double areaMm2
    )
    {
        if (clocks.Sandable is not { } sandable)
        {
            return null;
        }

        // To the next whole minute, as sheets tell it: what is mixed then is not a part of one before what they say.
        double cured = Math.Ceiling(
                Math.Max(notBefore, last + ClockRun.Minutes(sandable, null, placing.Day, last))
            ),
            keyed = Math.Ceiling(
                days.Done(cured, areaMm2 / 1e6 * placing.Crew.KeyMinutesPerM2 / placing.Crew.Hands)
            );
        return new KeyedCloth(cured, keyed, keyed + DryMinutes);
    }

    public ImmutableArray<HoldPoint> Points =>
        [
            new("the cloth has cured", Cured),
            new("stitching and ridges are scraped off"),
            new("washed of blush, and of any water or soap used to slick it"),
            new("keyed: dull all over, dust off", Keyed),
            new("dry", Dry),
        ];
}
