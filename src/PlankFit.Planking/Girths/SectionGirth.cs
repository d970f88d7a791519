using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;

namespace PlankFit.Planking.Girths;

/// <summary>
/// The length of a section on the planking's inner face, keel's side to chine: what a tape held to a bare frame reads. The section is the cut by the station's
/// plane; where keel and chine have positions of their own (a raked transom), by the plane through both that stands square to the middle line's.
/// </summary>
internal static class SectionGirth
{
    private const int Steps = 32;

    public static double OnInnerFace(PlankingJob job, HullSurface hull, StationOnHull station)
    {
        LoftedSurface table = hull.Surface;
        double keelX = table.At(station.U, 0).P.X,
            chineX = table.At(station.U, table.UpperV(station.U)).P.X;
        if (table.At(station.U, 0).P.ChordTo(table.At(station.U, table.UpperV(station.U)).P) < 1)
        {
            return 0;
        }

        var face = new ParallelSurface(table, Stack.Of(job).InnerMm);
        double keelV = KeelSides.OfTable(job, hull).Meet(face, station.U, 0);
        double fine = Chords(table, face, station.U, keelV, keelX, chineX, Steps),
            coarse = Chords(table, face, station.U, keelV, keelX, chineX, Steps / 2);

        // Richardson: the chords' shortfall goes with the square of their length.
        return fine + ((fine - coarse) / 3);
    }

    private static double Chords(
        LoftedSurface table,
        ParallelSurface face,
        double stationU,
        double keelV,
        double keelX,
        double chineX,
        int steps
    )
    {
        double sum = 0,
            u = stationU;
        Vec3? before = null;
        for (int i = 0; i <= steps; i++)
        {
            double part = (double)i / steps;
            SurfacePoint p = default;
            for (int k = 0; k < 20; k++)
            {
                double v = keelV + (part * (table.UpperV(u) - keelV));
                p = face.At(u, v);
                double miss = p.P.X - (keelX + (part * (chineX - keelX)));
                u -= miss / p.Du.X;
                if (Math.Abs(miss) < 1e-10)
                {
                    break;
                }
            }

            sum += before is { } b ? b.ChordTo(p.P) : 0;
            before = p.P;
        }

        return sum;
    }
}
