using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.SettingUp;

/// <summary>Where frames stand: at every station of the bottom, at the positions that the job gives, and at the frames that it names behind the planks.</summary>
internal static class FramePlanes
{
    /// <summary>Two frames nearer than this are one, mm.</summary>
    private const double SameMm = 0.5;

    /// <summary>A station's points out of one plane by more than this are a curved transom or a misprint, mm: half of what a table in sixteenths can tell apart.</summary>
    public const double PlaneMm = 0.5;

    public static IReadOnlyList<FramePlane> Of(SettingUpGround ground, List<Finding> findings)
    {
        HullSurface hull = ground.Hull;
        var places = new List<FramePlane>();
        for (int i = 0; i < hull.Stations.Length; i++)
        {
            StationOnHull station = hull.Stations[i];
            if (hull.Surface.HasApex && i == 0)
            {
                continue;
            }

            (SectionPlane plane, double off) = Fitted(hull.Surface, station);
            if (off > PlaneMm)
            {
                findings.Add(
                    new(
                        Severity.Warning,
                        $"station {station.Name}",
                        $"its points do not lie in one plane: they leave the plane through keel and chine by as much as {LengthText.ForPaper(off, ground.Job.Units)}; the frame is drawn in that plane, and a curved transom wants more wood"
                    )
                );
            }

            places.Add(
                new(
                    station.Name,
                    hull.Surface.At(station.U, 0).P.X,
                    plane,
                    station.U,
                    true,
                    i == hull.Stations.Length - 1
                )
            );
        }

        places.AddRange(Framed(ground, places, findings));
        return [.. places.OrderBy(p => p.PositionMm)];
    }

    private static IEnumerable<FramePlane> Framed(
        SettingUpGround ground,
        List<FramePlane> stations,
        List<Finding> findings
    )
    {
        IEnumerable<(FramePosition Place, FramingSpec? Thing)> behind =
            from b in ground.Behind
            where b.Kind == FramingKind.Frame
            // A whole frame at a station is that station's own.
            let x = b.Line switch
            {
                FramingLine.AtPosition(var at) => at,
                FramingLine.AtStation(var name) when IsPart(b) => stations
                    .FirstOrDefault(s => s.Name == name)
                    ?.PositionMm,
                _ => (double?)null,
            }
            where x is not null
            select (new FramePosition(b.Name, x.Value), IsPart(b) ? b : null);
        LoftedSurface surface = ground.Hull.Surface;
        double from = surface.At(surface.UFrom, 0).P.X,
            to = surface.At(surface.UTo, 0).P.X;
        var taken = stations.Select(s => s.PositionMm).ToList();
        foreach (
            (FramePosition frame, FramingSpec? part) in ground
                .Spec.Frames.Select(f => (f, (FramingSpec?)null))
                .Concat(behind)
        )
        {
            if (part is null && taken.Any(x => Math.Abs(x - frame.XMm) < SameMm))
            {
                continue;
            }

            if (!(frame.XMm > from && frame.XMm < to))
            {
                findings.Add(
                    new(
                        Severity.Warning,
                        FramePlane.Called(frame.Name),
                        $"the bottom runs from {LengthText.ForPaper(from, ground.Job.Units)} to {LengthText.ForPaper(to, ground.Job.Units)} along the table's positions, and this frame stands off it: correct its position"
                    )
                );
                continue;
            }

            if (part is null)
            {
                taken.Add(frame.XMm);
            }

            FramePlane? station = part?.Line is FramingLine.AtStation(var at)
                ? stations.First(s => s.Name == at)
                : null;
            yield return new(
                frame.Name,
                frame.XMm,
                station?.Plane ?? SectionPlane.Plumb(frame.XMm),
                station?.U ?? UAt(ground.Hull, frame.XMm),
                false,
                false
            )
            {
                Part = part,
            };
        }
    }

    /// <summary>On one side of the boat only, or over a stretch of the section: it has a shape of its own.</summary>
    private static bool IsPart(FramingSpec frame) =>
        frame.Only is not null || frame.OutFromMm is not null || frame.OutToMm is not null;

    /// <summary>The plane of a station's own points: plumb, or raked through keel and chine; and how far the points leave it.</summary>
    private static (SectionPlane, double) Fitted(LoftedSurface surface, StationOnHull station)
    {
        double whole = surface.UpperV(station.U);
        Vec3[] points =
        [
            .. Enumerable.Range(0, 9).Select(i => surface.At(station.U, whole * i / 8).P),
        ];
        var plumb = SectionPlane.Plumb(points[0].X);
        double off = points.Max(p => Math.Abs(plumb.OffMm(p)));
        if (off < 1e-6 || SectionPlane.Through(points[0], points[^1]) is not { } raked)
        {
            return (plumb, off);
        }

        return (raked, points.Max(p => Math.Abs(raked.OffMm(p))));
    }

    private static double UAt(HullSurface hull, double x)
    {
        int after = 1;
        while (after < hull.Stations.Length - 1 && hull.Stations[after].PositionMm < x)
        {
            after++;
        }

        (StationOnHull a, StationOnHull b) = (hull.Stations[after - 1], hull.Stations[after]);
        return a.U + ((b.U - a.U) * (x - a.PositionMm) / (b.PositionMm - a.PositionMm));
    }
}

/// <summary>A frame's place: its plane, and the u of the loft near it.</summary>
/// <param name="PositionMm">x of the table's keel line there.</param>
internal sealed record FramePlane(
    string Name,
    double PositionMm,
    SectionPlane Plane,
    double U,
    bool IsStation,
    bool IsTransom
)
{
    /// <summary>The frame that stands on one side only or over a stretch of the section; null for one that goes from keel to chine on both.</summary>
    public FramingSpec? Part { get; init; }

    /// <summary>As lists name it.</summary>
    public string Label => IsStation ? Name : Called(Name);

    /// <summary>The word frame stands before a name that does not begin with it: frame 3450, frame knee, frame 8.</summary>
    public static string Called(string name) =>
        name.StartsWith("frame ", StringComparison.OrdinalIgnoreCase) ? name : $"frame {name}";
}
