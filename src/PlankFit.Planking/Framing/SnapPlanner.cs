using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Framing;

/// <summary>Lays tapes on the face under each plank layer after the first, and reads where the things behind run.</summary>
internal static class SnapPlanner
{
    /// <summary>Steps by which an edge is measured between two places, a chord at a time: within 0.001 mm on edges of hulls.</summary>
    private const int Chords = 64;

    /// <summary>An end of a line nearer than this to a station is told once, as the end, mm.</summary>
    private const double SameMm = 1;

    public static IEnumerable<SnapFace> Of(
        Planked planked,
        Side side,
        IReadOnlyList<FramingStrip> strips,
        ImmutableArray<Side> holds
    )
    {
        return planked.PlankLayers.Skip(1).Select(l => Under(l, planked, side, strips, holds));
    }

    /// <summary>The face that a layer is laid on.</summary>
    public static SnapFace Under(
        PlankLayerPlan layer,
        Planked planked,
        Side side,
        IReadOnlyList<FramingStrip> strips,
        ImmutableArray<Side> holds
    )
    {
        strips = [.. strips.Where(s => s.Of.Only is null || holds.Contains(s.Of.Only.Value))];
        HullSurface hull = planked.HullOf(side);
        double offset = layer.NeutralOffsetMm - (layer.Planks.ThicknessMm / 2);
        var face = SectionFace.At(hull, offset, planked.KeelOf(side).SideOf(layer.Planks));
        return new(
            layer.Number,
            offset,
            holds,
            [
                .. hull
                    .Stations.Where(s => Holds(face, s.PositionMm))
                    .Select(s => new SnapGirth(s.Name, s.PositionMm, face.GirthMm(s.PositionMm))),
            ],
            [.. strips.Where(s => !s.Of.IsAcross).SelectMany(s => Marks(s, face, hull.Stations))],
            [.. strips.Where(s => s.Of.IsAcross).Select(s => Across(s, face, hull.Stations))]
        );
    }

    private static IEnumerable<SnapMark> Marks(
        FramingStrip strip,
        SectionFace face,
        ImmutableArray<StationOnHull> stations
    )
    {
        Vec3[] on = [.. strip.Nodes.Select(t => face.PointAt(strip.Centre.At(t)))];
        var marks = new List<(double X, Uv At, SnapPlace Is)>();
        if (strip.Of.LengthMm is not null)
        {
            Uv middle = strip.Centre.At((strip.From + strip.To) / 2);
            marks.Add((face.PointAt(middle).X, middle, SnapPlace.Middle));
        }
        else
        {
            foreach (StationOnHull station in stations)
            {
                bool isEnd =
                    (strip.EndsFirst && Math.Abs(station.PositionMm - on[0].X) < SameMm)
                    || (strip.EndsLast && Math.Abs(station.PositionMm - on[^1].X) < SameMm);
                if (!isEnd && At(strip, on, face, station.PositionMm) is { } place)
                {
                    marks.Add((station.PositionMm, place, SnapPlace.Through));
                }
            }

            if (strip.EndsFirst)
            {
                marks.Add((on[0].X, strip.Centre.At(strip.From), SnapPlace.Begins));
            }

            if (strip.EndsLast)
            {
                marks.Add((on[^1].X, strip.Centre.At(strip.To), SnapPlace.Ends));
            }
        }

        foreach ((double x, Uv at, SnapPlace place) in marks.OrderBy(m => m.X))
        {
            if (FramingFindings.IsOff(face, at) || !Holds(face, x))
            {
                continue;
            }

            double keel = face.AlongMm(x, face.KeelAt(x), at),
                chine = face.AlongMm(x, at, face.ChineAt(x));
            yield return new(strip.Of, FromStation.Of(stations, x), x, keel, chine, place);
        }
    }

    /// <summary>Whether the section at x has a keel and a chine on the bottom; beyond a raked transom it has not.</summary>
    internal static bool Holds(SectionFace face, double x)
    {
        // A normal carries the end stations' own sections a little past the ends of the face; the surface goes on that far.
        const double slackMm = 15;
        double keel = face.KeelAt(x).U,
            chine = face.ChineAt(x).U;
        return Math.Min(keel, chine) >= face.FromU - slackMm
            && Math.Max(keel, chine) <= face.ToU + slackMm
            && face.GirthMm(x) > 1;
    }

    /// <summary>Where the centre of a thing along the hull, carried to the face, meets the plane at x; null where it does not.</summary>
    internal static Uv? PlaceAt(FramingStrip strip, SectionFace face, double x) =>
        At(strip, [.. strip.Nodes.Select(t => face.PointAt(strip.Centre.At(t)))], face, x);

    /// <summary>Where the centre, carried to the face, meets the plane at x.</summary>
    private static Uv? At(FramingStrip strip, Vec3[] on, SectionFace face, double x)
    {
        for (int i = 0; i + 1 < on.Length; i++)
        {
            if (on[i].X <= x && x <= on[i + 1].X)
            {
                double t = Root(
                    s => face.PointAt(strip.Centre.At(s)).X - x,
                    strip.Nodes[i],
                    strip.Nodes[i + 1]
                );
                return strip.Centre.At(t);
            }
        }

        return null;
    }

    private static SnapAcross Across(
        FramingStrip strip,
        SectionFace face,
        ImmutableArray<StationOnHull> stations
    )
    {
        double OverKeel(double t)
        {
            Uv at = strip.Centre.At(t);
            return at.V - face.Keel(at.U).V;
        }

        double UnderChine(double t)
        {
            Uv at = strip.Centre.At(t);
            return face.Chine(at.U).V - at.V;
        }

        Uv? keel = OverKeel(strip.From) <= 0 && OverKeel(strip.To) > 0
                ? strip.Centre.At(Root(OverKeel, strip.From, strip.To))
                : null,
            chine = UnderChine(strip.To) <= 0 && UnderChine(strip.From) > 0
                ? strip.Centre.At(Root(UnderChine, strip.From, strip.To))
                : null;
        double X(Uv at) => face.PointAt(at).X;
        double Out(double t)
        {
            Uv at = strip.Centre.At(t);
            double x = X(at);
            return face.AlongMm(x, face.KeelAt(x), at);
        }

        Uv middle = strip.Centre.At((strip.From + strip.To) / 2);
        return new(
            strip.Of,
            X(middle),
            keel is { } k ? AlongEdge(face, stations, face.Keel, face.KeelAt, k) : null,
            chine is { } c ? AlongEdge(face, stations, face.Chine, face.ChineAt, c) : null,
            keel is null ? Out(strip.From) : null,
            chine is null ? Out(strip.To) : null
        );
    }

    /// <summary>Along an edge of the face from where the nearest station stands on it.</summary>
    private static FromStation AlongEdge(
        SectionFace face,
        ImmutableArray<StationOnHull> stations,
        Func<double, Uv> edge,
        Func<double, Uv> edgeAt,
        Uv place
    )
    {
        var near = FromStation.Of(stations, face.PointAt(place).X);
        double from = edgeAt(stations.First(s => s.Name == near.Station).PositionMm).U,
            run = 0;
        Vec3 before = face.PointAt(edge(from));
        for (int i = 1; i <= Chords; i++)
        {
            Vec3 p = face.PointAt(edge(from + ((place.U - from) * i / Chords)));
            run += p.ChordTo(before);
            before = p;
        }

        return near with
        {
            AbaftMm = place.U >= from ? run : -run,
        };
    }

    private static double Root(Func<double, double> f, double from, double to) =>
        MathNet.Numerics.RootFinding.Brent.FindRoot(f, from, to, 1e-9, 200);
}
