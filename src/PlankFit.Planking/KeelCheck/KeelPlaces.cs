using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.KeelCheck;

/// <summary>Where along the hull something is, as a tape finds it: from the station before it.</summary>
internal static class KeelPlaces
{
    public static string Of(HullSurface hull, double x, LengthUnit unit)
    {
        StationOnHull from =
            hull.Stations.LastOrDefault(s => s.PositionMm <= x + 0.25) ?? hull.Stations[0];
        double past = x - from.PositionMm;
        string mm = LengthText.ForPaper(Math.Abs(past), unit);
        return Math.Abs(past) < 0.25
            ? $"station {from.Name}"
            : $"{mm} {(past > 0 ? "aft" : "forward")} of station {from.Name}";
    }
}
