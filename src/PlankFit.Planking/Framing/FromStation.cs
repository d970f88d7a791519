using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Framing;

/// <summary>A place along the hull as a tape gives it: so far abaft a station of the bottom, or ahead of it where negative, mm.</summary>
public readonly record struct FromStation(string Station, double AbaftMm)
{
    /// <summary>From the nearest station, level.</summary>
    public static FromStation Of(ImmutableArray<StationOnHull> stations, double x)
    {
        StationOnHull near = stations.MinBy(s => Math.Abs(s.PositionMm - x))!;
        return new(near.Name, x - near.PositionMm);
    }

    public string Words(LengthUnit unit)
    {
        double half = LengthText.PaperStepMm(unit) / 2;
        return Math.Abs(AbaftMm) < half
            ? $"at station {Station}"
            : $"{LengthText.ForPaper(Math.Abs(AbaftMm), unit)} {(AbaftMm > 0 ? "abaft" : "ahead of")} station {Station}";
    }
}
