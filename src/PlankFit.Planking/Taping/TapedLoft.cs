using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Taping;

/// <summary>
/// What a tape would read on a bare hull of one side, starboard frame: points and edges are those of the face that the first layer is laid on, which is where frames and
/// keel are.
/// </summary>
internal sealed class TapedLoft
{
    private readonly PlankingJob job;
    private readonly HullSurface hull;
    private readonly ParallelSurface face;
    private readonly KeelSideFace keel;

    /// <param name="job">Whose table is that of the hull.</param>
    public TapedLoft(PlankingJob job)
    {
        this.job = job;
        hull = HullLoft.Build(job.Offsets, job.Hull.Panel);
        face = new(hull.Surface, Stack.Of(job).InnerMm);
        keel = KeelSides.OfTable(job, hull);
    }

    /// <summary>Where a line crosses the plane of a station, or its own place there, mm.</summary>
    /// <exception cref="ArgumentException">The table has no such point.</exception>
    public Vec3 At(TapedPoint point)
    {
        StationOnHull station = On(point.Station);
        Panel panel = job.Hull.Panel;
        LoftedSurface table = hull.Surface;
        if (table.UpperV(station.U) < 1e-9)
        {
            return table.At(station.U, 0).P;
        }

        bool lower = point.Line == panel.Lower,
            upper = point.Line == panel.Upper;
        double v = lower ? 0
            : upper ? table.UpperV(station.U)
            : Between(point.Line, station),
            x = table.At(station.U, v).P.X,
            u = station.U,
            part = v / table.UpperV(station.U);
        SurfacePoint p = default;
        for (int i = 0; i < 20; i++)
        {
            double at =
                lower ? keel.Meet(face, u, 0)
                : upper ? table.UpperV(u)
                : part * table.UpperV(u);
            p = face.At(u, at);
            double miss = p.P.X - x;
            if (Math.Abs(miss) < 1e-10)
            {
                break;
            }

            u -= miss / p.Du.X;
        }

        return p.P;
    }

    /// <summary>Keel edge to chine along the section, mm.</summary>
    public double Girth(string station) => SectionGirth.OnInnerFace(job, hull, On(station));

    /// <summary>Along the keel's edge, or along the chine, from one station aft to another, mm; negative forward.</summary>
    public double Along(bool chine, string from, string to) =>
        Edge(chine).Length(On(from).U, On(to).U);

    /// <summary>
    /// Keel to chine by a tape held down on a face, between a mark on either edge, mm; null where no straight run of tape joins them.
    /// </summary>
    /// <param name="faceMm">Of the face from the table's surface, outward.</param>
    public double? Between(SeamMarks marks, double faceMm)
    {
        var on = new ParallelSurface(hull.Surface, faceMm);
        EdgeOnFace low = new(hull.Surface, on, u => keel.Meet(on, u, 0)),
            high = new(hull.Surface, on, hull.Surface.UpperV);
        double from = On(marks.From).U;
        return
            low.At(from, marks.AlongKeelMm) is { } a && high.At(from, marks.AlongChineMm) is { } b
            ? TautTape.Between(on, a, b)
            : null;
    }

    private EdgeOnFace Edge(bool chine) =>
        new(hull.Surface, face, chine ? hull.Surface.UpperV : u => keel.Meet(face, u, 0));

    private StationOnHull On(string station) =>
        hull.Stations.FirstOrDefault(s => s.Name == station)
        ?? throw new ArgumentException($"the hull has no station {station}", nameof(station));

    /// <summary>The v at which a line between keel and chine lies on its section.</summary>
    private double Between(string line, StationOnHull station)
    {
        OffsetLine of = job.Offsets.Named(line);
        int i = Enumerable
            .Range(0, job.Offsets.Stations.Length)
            .First(k => job.Offsets.Stations[k].Name == station.Name);
        var point = new Vec3(
            OffsetRow(of, i),
            of.HalfBreadthsMm[i]
                ?? throw new ArgumentException($"{line} has no point at {station.Name}"),
            of.HeightsMm[i] ?? throw new ArgumentException($"{line} has no point at {station.Name}")
        );
        double top = hull.Surface.UpperV(station.U),
            v = Enumerable
                .Range(0, 41)
                .Select(k => top * k / 40)
                .MinBy(w => hull.Surface.At(station.U, w).P.ChordTo(point));
        for (int k = 0; k < 20; k++)
        {
            SurfacePoint p = hull.Surface.At(station.U, v);
            double step = (point - p.P).Dot(p.Dv) / p.Dv.Dot(p.Dv);
            v += step;
            if (Math.Abs(step) < 1e-12 * top)
            {
                break;
            }
        }

        return v;
    }

    private double OffsetRow(OffsetLine line, int station) =>
        line.PositionsMm.IsDefaultOrEmpty
            ? job.Offsets.Stations[station].PositionMm
            : line.PositionsMm[station] ?? job.Offsets.Stations[station].PositionMm;
}
