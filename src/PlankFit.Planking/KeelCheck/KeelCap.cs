using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;

namespace PlankFit.Planking.KeelCheck;

/// <summary>The cap that closes the keel: it lies on the last keel layer and the last cloth, and its edges run on in the finished bottom.</summary>
internal static class KeelCap
{
    public static IEnumerable<KeelCapStation> Of(PlankingJob job, HullSurface hull, Side side)
    {
        KeelFinish finish = KeelStack.Finished(job, hull);
        foreach (StationOnHull station in hull.Stations)
        {
            double x = station.PositionMm,
                half = finish.HalfWidth.At(x);
            if (SectionPlace.Find(finish.Bottom, hull.Surface, x, half) is { } at)
            {
                yield return new(
                    station.Name,
                    x,
                    side,
                    half,
                    Math.Atan(at.SlopeAcross) * 180 / Math.PI
                );
            }
        }
    }
}
