using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>What is drawn on the face before it is wetted out: trim lines, the first line and joins, and what lies behind, by station.</summary>
internal static class ClothMarks
{
    /// <summary>Places along a section at which the flat cloth is looked up before a line is closed in on.</summary>
    private const int Samples = 48;

    /// <param name="behind">Strips of what lies behind on this side.</param>
    public static ImmutableArray<StationMarks> Of(
        ClothFace face,
        DrapedCloth draped,
        SheathingSpec spec,
        ClothCourses courses,
        IReadOnlyList<FramingStrip> behind
    )
    {
        var section = SectionFace.At(face.Hull, face.FaceMm, face.KeelSide);
        ImmutableArray<StationMarks>.Builder marks = ImmutableArray.CreateBuilder<StationMarks>();
        foreach (StationOnHull station in face.Hull.Stations)
        {
            double x = station.PositionMm;
            if (!SnapPlanner.Holds(section, x))
            {
                continue;
            }

            Uv keel = section.KeelAt(x),
                chine = section.ChineAt(x);
            double half = section.PointAt(keel).Y;
            marks.Add(
                new(
                    station.Name,
                    x,
                    section.GirthMm(x),
                    half,
                    AtKeel(spec.Keel, half, x),
                    spec.RoundChineMm,
                    [
                        .. Flat(section, draped, (courses, spec.JoinLapMm), x, keel, chine),
                        .. behind
                            .Select(strip => Behind(section, strip, x))
                            .OfType<ClothMark>()
                            // Nothing is drawn where it has run off the bottom.
                            .Where(m => m.FromKeelMm >= 0 && m.FromChineMm >= 0)
                            .OrderBy(m => m.FromKeelMm),
                    ]
                )
            );
        }

        return marks.ToImmutable();
    }

    /// <summary>The cross on the first line.</summary>
    public static ClothCross Cross(ClothFace face, DrapedCloth draped)
    {
        var section = SectionFace.At(face.Hull, face.FaceMm, face.KeelSide);
        Uv at = draped.Line.At(0);
        double x = section.PointAt(at).X;
        return new(
            FromStation.Of(face.Hull.Stations, x),
            section.AlongMm(x, section.KeelAt(x), at),
            section.AlongMm(x, at, section.ChineAt(x))
        );
    }

    /// <summary>Where cloth is trimmed at the keel, from its edge: over the keel where more than nought.</summary>
    public static double AtKeel(ClothAtKeel keel, double halfMm, double x) =>
        keel switch
        {
            ClothAtKeel.PastCentreLine past => halfMm + (Laps(past, x) ? past.Mm : 0),
            ClothAtKeel.ShortOfEdge stop => -stop.Mm,
            _ => throw new ArgumentException($"unknown end at the keel {keel}", nameof(keel)),
        };

    private static bool Laps(ClothAtKeel.PastCentreLine past, double x) =>
        x >= (past.FromMm ?? double.NegativeInfinity)
        && x <= (past.ToMm ?? double.PositiveInfinity);

    /// <summary>Joins that run across, where the edge on top meets keel and chine.</summary>
    public static ImmutableArray<JoinAcross> Across(
        ClothFace face,
        DrapedCloth draped,
        SheathingSpec spec,
        ClothCourses courses
    ) =>
        courses.Along
            ? []
            :
            [
                .. courses.JoinsMm.Select(
                    (p, i) =>
                        new JoinAcross(
                            i + 1,
                            OnEdge(face, draped, face.Region.LowerV, p + (spec.JoinLapMm / 2)),
                            OnEdge(face, draped, face.Region.UpperV, p + (spec.JoinLapMm / 2))
                        )
                ),
            ];

    private static FromStation? OnEdge(
        ClothFace face,
        DrapedCloth draped,
        Func<double, double> edge,
        double p
    )
    {
        Uv At(double u) => new(u, edge(u));
        double? found = Crossing(
            u => draped.Net.FlatOf(At(u), new(p, 0))?.X - p,
            face.Region.UFrom,
            face.Region.UTo
        );
        return found is { } at
            ? FromStation.Of(face.Hull.Stations, face.Region.PointAt(At(at)).X)
            : null;
    }

    private static IEnumerable<ClothMark> Flat(
        SectionFace section,
        DrapedCloth draped,
        (ClothCourses Courses, double JoinLapMm) of,
        double x,
        Uv keel,
        Uv chine
    )
    {
        (ClothMarkKind Kind, string What, double Q)[] lines =
        [
            (ClothMarkKind.FirstLine, "first line", 0),
            // The edge that lies on top is half a lap beyond the middle of the lap.
            .. of.Courses.Along
                ? of.Courses.JoinsMm.Select(
                    (q, i) => (ClothMarkKind.Join, $"join {i + 1}", q + (of.JoinLapMm / 2))
                )
                : [],
        ];
        double girth = section.AlongMm(x, keel, chine);
        Vec2? near = null;
        double? Off(double mm, double q)
        {
            Uv at = section.Out(x, keel, mm);
            Vec2? flat = draped.Net.FlatOf(at, near);
            near = flat ?? near;
            return flat?.Y - q;
        }

        foreach ((ClothMarkKind kind, string what, double q) in lines)
        {
            near = null;
            if (Crossing(mm => Off(mm, q), 0, girth) is { } mm)
            {
                yield return new(kind, what, mm, girth - mm);
            }
        }
    }

    private static ClothMark? Behind(SectionFace section, FramingStrip strip, double x) =>
        strip.Of.IsAcross || SnapPlanner.PlaceAt(strip, section, x) is not { } at
            ? null
            : new(
                ClothMarkKind.Behind,
                strip.Of.Name,
                section.AlongMm(x, section.KeelAt(x), at),
                section.AlongMm(x, at, section.ChineAt(x))
            );

    /// <summary>Where a value, null where it is not known, first changes its sign.</summary>
    private static double? Crossing(Func<double, double?> value, double from, double to)
    {
        double step = (to - from) / Samples;
        double? before = value(from);
        for (int i = 1; i <= Samples; i++)
        {
            double? here = value(from + (i * step));
            if (before is { } a && here is { } b && (a <= 0) != (b <= 0))
            {
                double low = from + ((i - 1) * step),
                    high = low + step;
                for (int k = 0; k < 40 && high - low > 1e-7; k++)
                {
                    double middle = (low + high) / 2;
                    if (value(middle) is not { } at)
                    {
                        return null;
                    }

                    (low, high) = (at <= 0) == (a <= 0) ? (middle, high) : (low, middle);
                }

                return (low + high) / 2;
            }

            before = here;
        }

        return null;
    }
}
