using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The line to which every frame is sawn, and its bevels.</summary>
internal static class FrameSections
{
    private const int Steps = 48;

    private static readonly (string Word, double Part)[] Places =
    [
        ("keel", 0),
        ("1/4", 0.25),
        ("1/2", 0.5),
        ("3/4", 0.75),
        ("chine", 1),
    ];

    public static FrameSection Of(
        Job job,
        HullSurface hull,
        SettingUpSpec spec,
        string name,
        double u,
        Func<double, double> planeX
    )
    {
        double inner =
            job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -job.Layers.Sum(l => l.ThicknessMm) : 0;
        KeelSideFace keel = KeelSides.OfTable(job, hull);
        SectionCut Cut(double z) =>
            new(new ParallelSurface(hull.Surface, z), hull.Surface, keel, u, planeX);
        SectionCut table = Cut(0),
            innerFace = Cut(inner),
            frame = Cut(inner - spec.RibbandMm);
        ImmutableArray<Vec2> line = frame.Line(Steps);
        return new(
            name,
            planeX(0.5),
            table.Line(Steps),
            innerFace.Line(Steps),
            line,
            [.. Places.Select(p => Place(spec, table, frame, p.Word, p.Part))]
        );
    }

    private static FramePlace Place(
        SettingUpSpec spec,
        SectionCut table,
        SectionCut frame,
        string word,
        double part
    )
    {
        SurfacePoint on = frame.At(part);
        Vec3 n = on.Normal;
        double across = Math.Sqrt((n.Y * n.Y) + (n.Z * n.Z));

        // Going aft the surface moves outward in the section by so much a mm.
        double growth = -n.X / across;
        double towards = spec.Face == FrameFace.Forward ? growth : -growth;
        return new(
            word,
            on.P.Y,
            on.P.Z,
            Deduction(table, frame, part),
            Math.Atan(towards) * 180 / Math.PI,
            towards * spec.FrameThicknessMm
        );
    }

    /// <summary>Square to the table's section, in the plane, to the frame's line.</summary>
    private static double Deduction(SectionCut table, SectionCut frame, double part)
    {
        SurfacePoint from = table.At(part);
        double across = Math.Sqrt(
            (from.Normal.Y * from.Normal.Y) + (from.Normal.Z * from.Normal.Z)
        );
        var inward = new Vec2(-from.Normal.Y / across, -from.Normal.Z / across);
        var a = new Vec2(from.P.Y, from.P.Z);
        double at = part;
        Vec2 away = default;
        for (int i = 0; i < 30; i++)
        {
            SurfacePoint to = frame.At(at);
            away = new Vec2(to.P.Y, to.P.Z) - a;
            double miss = inward.Cross(away);
            const double step = 1e-4;
            SurfacePoint ahead = frame.At(at + step);
            double rate = inward.Cross(new Vec2(ahead.P.Y - to.P.Y, ahead.P.Z - to.P.Z)) / step;
            at -= miss / rate;
            if (Math.Abs(miss) < 1e-9)
            {
                break;
            }
        }

        return away.Dot(inward);
    }
}
