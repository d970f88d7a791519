using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Framing;

namespace PlankFit.Planking.SettingUp;

/// <summary>The stringers named behind the planks, where they cross the frames.</summary>
internal static class StringerPlaces
{
    /// <summary>Half the step by which a stringer's run is found, mm.</summary>
    private const double StepMm = 1;

    public static IEnumerable<StringerPlace> Of(
        SettingUpGround ground,
        IReadOnlyList<FramePlane> frames
    )
    {
        FramingSpec[] stringers =
        [
            .. ground.Behind.Where(b => b.Kind == FramingKind.Stringer && !b.IsAcross),
        ];
        if (stringers.Length == 0)
        {
            yield break;
        }

        var face = SectionFace.At(ground.Hull, ground.Stack.InnerMm, ground.Layers[0].Side);
        foreach (FramingSpec stringer in stringers)
        {
            Run? run = RunOf(ground, face, stringer);
            foreach (FramePlane frame in frames)
            {
                if (run is { } r && At(stringer, frame, face, r) is { } place)
                {
                    yield return place;
                }
            }
        }
    }

    /// <summary>Where a stringer lies at x, and over which x it runs.</summary>
    private readonly record struct Run(double FromX, double ToX, Func<double, Uv> At);

    private static Run? RunOf(SettingUpGround ground, SectionFace face, FramingSpec stringer)
    {
        double from = stringer.FromMm ?? double.NegativeInfinity,
            to = stringer.ToMm ?? double.PositiveInfinity;
        switch (stringer.Line)
        {
            case FramingLine.FromKeel(var mm):
                return new(from, to, x => face.Out(x, face.KeelAt(x), mm));
            case FramingLine.FromChine(var mm):
                return new(from, to, x => face.Out(x, face.ChineAt(x), -mm));
            case FramingLine.Offsets(var name):
                var line = LineOnFace.Of(stringer, name, ground.Job.Offsets, ground.Hull);
                return new(Math.Max(from, line.FromX), Math.Min(to, line.ToX), line.At);
            default:
                return null;
        }
    }

    private static StringerPlace? At(
        FramingSpec stringer,
        FramePlane frame,
        SectionFace face,
        Run run
    )
    {
        // In the frame's own plane, which may be raked: the stringer's x there, by secant from the keel's.
        double x = frame.PositionMm;
        for (int i = 0; i < 20; i++)
        {
            double off = frame.Plane.OffMm(face.PointAt(run.At(x)));
            if (!(Math.Abs(off) > 1e-9))
            {
                break;
            }

            x -= off / frame.Plane.Aft.X;
        }

        if (!(x >= run.FromX - 1e-6 && x <= run.ToX + 1e-6))
        {
            return null;
        }

        Uv at = run.At(x),
            ahead = run.At(x - StepMm),
            abaft = run.At(x + StepMm);
        SurfacePoint p = face.Surface.At(at.U, at.V);
        Vec3 tangent = face.PointAt(abaft) - face.PointAt(ahead);
        if (!p.P.IsFinite || !tangent.IsFinite || Outside(face, at))
        {
            return null;
        }

        // Its plumb side's normal, level and outboard.
        Vec3 outboard = new Vec3(-tangent.Y, tangent.X, 0).Unit();
        double bevel = Math.Asin(p.Normal.Dot(outboard));
        Vec2 section = frame.Plane.FlatDirection(p.Normal).Unit().Left();
        Vec3 across = frame.Plane.Direction(section);
        across = across.Y < 0 ? -across : across;
        return new(
            stringer.Name,
            frame.Label,
            frame.PositionMm,
            frame.Plane.Flat(p.P),
            bevel * 180 / Math.PI,
            stringer.WidthMm * Math.Tan(bevel),
            Math.Asin(tangent.Unit().Dot(across)) * 180 / Math.PI
        );
    }

    /// <summary>Off the planking: inboard of the keel's side or past the chine.</summary>
    private static bool Outside(SectionFace face, Uv at) =>
        at.V < face.Keel(at.U).V || at.V > face.Chine(at.U).V;
}
