using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>
/// Tracing the keel's side on a parallel surface. Nodes are met exactly, with their slopes, and set closer until a cubic between two of them meets the side midway
/// as well: where the bottom is narrow v climbs steeply, towards a pole where keel and chine would meet, and no even spacing serves. Nothing is carried from one
/// stretch into the next, so that what the surface does past the stem is not felt inside.
/// </summary>
internal static class KeelFace
{
    /// <summary>How far the cubic between two nodes may be from the side midway, mm. The place midway becomes a node too, which leaves a sixteenth of it.</summary>
    private const double MidwayMm = 5e-4;

    /// <summary>Nodes are set no closer than this, mm of u.</summary>
    private const double LeastMm = 0.05;

    /// <summary>Past an end of the bottom the trace is followed by steps of at least this, mm of u; where that is too far the surface folds.</summary>
    private const double LeastStepMm = 0.5;

    /// <summary>Stretches that a bay is looked at in, to begin with. A side of its own may have the ramps of a lap in it.</summary>
    private const int StretchesABay = 6,
        StretchesOfItsOwn = 16;

    /// <param name="pastMm">How far the trace goes past both ends of the bottom, where the surface goes on so far.</param>
    public static KeelTrace Trace(
        LoftedSurface hull,
        ISurface surface,
        KeelSideFace side,
        double pastMm
    )
    {
        int stretches = side.IsOfItsOwn ? StretchesOfItsOwn : StretchesABay;
        IReadOnlyList<double> stations = hull.StationU;
        KeelMeeting before = Met(surface, side, stations[0], 0);
        var inside = new List<KeelMeeting> { before };
        for (int bay = 0; bay + 1 < stations.Count; bay++)
        {
            double from = stations[bay],
                length = stations[bay + 1] - from;
            for (int i = 1; i <= stretches; i++)
            {
                double u = i == stretches ? stations[bay + 1] : from + (length * i / stretches);
                KeelMeeting next = Met(surface, side, u, before.V);
                Between(surface, side, before, next, inside);
                before = next;
            }
        }

        List<KeelMeeting> ahead = Past(surface, side, inside[0], -pastMm),
            behind = Past(surface, side, inside[^1], pastMm);
        ahead.Reverse();
        KeelMeeting[] all = [.. ahead, .. inside, .. behind];
        return new(
            CubicSpline.Through(
                Array.ConvertAll(all, m => m.U),
                Array.ConvertAll(all, m => m.V),
                Array.ConvertAll(all, m => m.Rate)
            )
        );
    }

    private static KeelMeeting Met(ISurface surface, KeelSideFace side, double u, double guess) =>
        side.TryMeet(surface, u, guess)
        ?? throw new GeodesicException(
            "the planks' ends cannot be brought to the keel's side",
            new(u, guess)
        );

    /// <summary>The nodes after the first, up to and with the second.</summary>
    private static void Between(
        ISurface surface,
        KeelSideFace side,
        KeelMeeting a,
        KeelMeeting b,
        List<KeelMeeting> nodes
    )
    {
        double foretold = Foretold(a, b);
        KeelMeeting middle = Met(surface, side, (a.U + b.U) / 2, foretold);
        if (Misses(middle, foretold) && b.U - a.U > LeastMm)
        {
            Between(surface, side, a, middle, nodes);
            Between(surface, side, middle, b, nodes);
            return;
        }

        nodes.Add(middle);
        nodes.Add(b);
    }

    /// <summary>Nodes outward from an end of the bottom, until the surface no longer goes on.</summary>
    private static List<KeelMeeting> Past(
        ISurface surface,
        KeelSideFace side,
        KeelMeeting end,
        double pastMm
    )
    {
        var nodes = new List<KeelMeeting>();
        KeelMeeting at = end;
        double step = pastMm / 8,
            to = end.U + pastMm;
        while (Math.Abs(to - at.U) > LeastStepMm && Math.Abs(step) > LeastStepMm)
        {
            double u = Math.Abs(step) > Math.Abs(to - at.U) ? to : at.U + step;
            if (
                side.TryMeet(surface, u, at.V + (at.Rate * (u - at.U))) is { } next
                && Foretold(at, next) is var foretold
                && side.TryMeet(surface, (at.U + u) / 2, foretold) is { } middle
                && !Misses(middle, foretold)
            )
            {
                nodes.Add(middle);
                nodes.Add(next);
                at = next;
                step *= 1.5;
            }
            else
            {
                step /= 2;
            }
        }

        return nodes;
    }

    /// <summary>Midway on the cubic through two nodes with their slopes.</summary>
    private static double Foretold(KeelMeeting a, KeelMeeting b) =>
        ((a.V + b.V) / 2) + ((b.U - a.U) * (a.Rate - b.Rate) / 8);

    private static bool Misses(KeelMeeting middle, double foretold) =>
        !(Math.Abs(middle.V - foretold) * middle.MmAUnit <= MidwayMm);
}
