using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Building;

/// <summary>One long edge of a plank being built: the seam in strip coordinates, its points in space and laid flat, inboard to outboard.</summary>
internal sealed record PlankSide(
    Seam Seam,
    TrackedCurve Track,
    double[] S,
    Vec3[] Space,
    Vec2[] Flat
)
{
    /// <summary>Places along the seam, the same for both neighbours, at which the edge's departure from its chord is taken.</summary>
    public const int Departures = 33;

    public static PlankSide Along(LayerRegion region, StripMap map, Seam seam, double chordMm)
    {
        var track = TrackedCurve.Along(
            map,
            seam.Line.UvAt,
            seam.In.S,
            seam.Out.S,
            seam.LengthMm,
            45
        );
        Vec3 Point(double s) => region.PointAt(seam.Line.UvAt(s));
        double[] at = ChordSampling.Parameters(Point, seam.In.S, seam.Out.S, chordMm);
        return new(
            seam,
            track,
            at,
            Array.ConvertAll(at, s => Point(s)),
            Array.ConvertAll(at, track.Flat)
        );
    }

    /// <summary>How far the flat edge stands outside the chord between its ends (negative: inside), at even places along the seam, mm.</summary>
    /// <param name="outward">+1 where outside is to the left of inboard-to-outboard (the after edge), −1 where it is to the right.</param>
    public double[] DeparturesFromChord(int outward)
    {
        Vec2 a = Flat[0],
            b = Flat[^1];
        Vec2 along = (b - a).Unit();
        double[] d = new double[Departures];
        for (int i = 0; i < Departures; i++)
        {
            double s = Seam.In.S + (Seam.LengthMm * i / (Departures - 1));
            d[i] = outward * along.Cross(Track.Flat(s) - a);
        }

        return d;
    }
}
