using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>What a tape should read on the face that a layer is laid on, for the master plank, the first, the last and every fifth.</summary>
internal static class TapeReadings
{
    private const double EveryMm = 10;

    public static ImmutableArray<SeamCheck> Of(
        LayerFaces faces,
        HullSurface hull,
        SeamRow row,
        ImmutableArray<Plank> planks
    )
    {
        ImmutableArray<SeamCheck>.Builder checks = ImmutableArray.CreateBuilder<SeamCheck>();
        StationOnHull hook = Hook(faces.Inner, hull, row);
        for (int i = 0; i < row.Planks; i++)
        {
            if (i == 0 || i == row.Planks - 1 || i == row.Master || (i + 1) % 5 == 0)
            {
                TapedSeam? forward = Taped(faces, hook, row.Forward(i)),
                    after = Taped(faces, hook, row.After(i));
                double? diagonal =
                    row.Forward(i) is { } f && row.After(i) is { } a
                        ? Diagonal(faces.Inner, f, a)
                        : null;
                checks.Add(new(planks[i].Id, forward, after, diagonal));
                checks.Add(new(planks[i].Id.Twin, forward, after, diagonal));
            }
        }

        return checks.ToImmutable();
    }

    /// <summary>What a tape reads along keel or chine, on the layer's inner face, from a station to a seam; null where the seam does not cross that edge.</summary>
    public static double? AlongEdge(LayerFaces faces, StationOnHull from, Seam seam, PanelEdge edge)
    {
        if ((edge == PanelEdge.Lower ? seam.In.Edge : seam.Out.Edge) != edge)
        {
            return null;
        }

        double s = edge == PanelEdge.Lower ? MeetFace(faces.Inner, seam) : seam.Out.S;
        return End(faces.Inner, from, seam, edge, s).AlongMm;
    }

    /// <summary>The station that a layer's marks are measured from: the one nearest its master plank.</summary>
    public static StationOnHull Hook(LayerRegion inner, HullSurface hull, SeamRow row)
    {
        double u = row.After(row.Master)!.In.Uv.U;
        return hull.Stations.Where(s => s.U >= inner.UFrom).MinBy(s => Math.Abs(s.U - u))!;
    }

    /// <summary>Where a seam starts and ends on the inner face as a tape finds it: inboard, then outboard.</summary>
    public static (TapedEnd Inboard, TapedEnd Outboard) Ends(
        LayerRegion inner,
        StationOnHull hook,
        Seam seam
    ) =>
        (
            End(inner, hook, seam, seam.In.Edge, MeetFace(inner, seam)),
            End(inner, hook, seam, seam.Out.Edge, seam.Out.S)
        );

    /// <summary>The place on an edge of the inner face that a tape finds so far along it, within 1e-7 mm; from a place near it.</summary>
    public static Uv PlaceOf(LayerRegion inner, StationOnHull hook, TapedEnd end, Uv near)
    {
        (Func<double, Uv> curve, double from, double at) = end.At switch
        {
            PanelEdge.Lower => ((Func<double, Uv>)(u => new(u, inner.LowerV(u))), hook.U, near.U),
            PanelEdge.Upper => (u => new(u, inner.UpperV(u)), hook.U, near.U),
            PanelEdge.Transom => (v => new(inner.UTo, v), inner.LowerV(inner.UTo), near.V),
            _ => (v => new(inner.UFrom, v), inner.LowerV(inner.UFrom), near.V),
        };
        double miss = end.AlongMm - Along(inner, curve, from, at);
        double step = end.At is PanelEdge.Lower or PanelEdge.Upper ? 1 : 1e-3;
        for (int i = 0; i < 12 && Math.Abs(miss) > 1e-7; i++)
        {
            double rate = Along(inner, curve, at, at + step) / step,
                by = miss / rate;
            miss -= Along(inner, curve, at, at + by);
            at += by;
        }

        return curve(at);
    }

    private static TapedSeam? Taped(LayerFaces faces, StationOnHull hook, Seam? seam)
    {
        if (seam is null)
        {
            return null;
        }

        LayerRegion face = faces.Inner;
        double low = MeetFace(face, seam),
            high = seam.Out.S;
        return new(
            End(face, hook, seam, seam.In.Edge, low),
            End(face, hook, seam, seam.Out.Edge, high),
            Along(face, seam.Line.UvAt, low, high)
        );
    }

    /// <summary>Where the seam, carried to the inner face along normals, starts there: the keel's side cuts each face at a place of its own.</summary>
    public static double MeetFace(LayerRegion face, Seam seam)
    {
        if (seam.In.Edge != PanelEdge.Lower)
        {
            return seam.In.S;
        }

        double Level(double s)
        {
            Uv uv = seam.Line.UvAt(s);
            return uv.V - face.LowerV(uv.U);
        }

        double a = seam.In.S,
            b = a + 1,
            fa = Level(a),
            fb = Level(b);
        for (int i = 0; i < 20 && Math.Abs(b - a) > 1e-8; i++)
        {
            (a, fa, b) = (
                b,
                fb,
                Math.Clamp(b - (fb * (b - a) / (fb - fa)), seam.Line.From, seam.Line.To)
            );
            fb = Level(b);
        }

        return b;
    }

    private static TapedEnd End(
        LayerRegion face,
        StationOnHull hook,
        Seam seam,
        PanelEdge edge,
        double s
    )
    {
        Uv uv = seam.Line.UvAt(s);
        return edge switch
        {
            PanelEdge.Lower => new(
                edge,
                hook.Name,
                Along(face, u => new(u, face.LowerV(u)), hook.U, uv.U)
            ),
            PanelEdge.Upper => new(
                edge,
                hook.Name,
                Along(face, u => new(u, face.UpperV(u)), hook.U, uv.U)
            ),
            PanelEdge.Transom => new(
                edge,
                face.Panel.WordOf(PanelEdge.Lower),
                Along(face, v => new(face.UTo, v), face.LowerV(face.UTo), uv.V)
            ),
            _ => new(
                edge,
                face.Panel.WordOf(PanelEdge.Lower),
                Along(face, v => new(face.UFrom, v), face.LowerV(face.UFrom), uv.V)
            ),
        };
    }

    /// <summary>Signed length of a curve on the face, mm, from chords of about 10 mm corrected for their sagitta by halving (Richardson).</summary>
    private static double Along(LayerRegion face, Func<double, Uv> curve, double from, double to)
    {
        double rough = 0;
        Vec3 a = face.PointAt(curve(from)),
            z = face.PointAt(curve(to));
        rough = a.ChordTo(z);
        int n = 2 * Math.Max(2, (int)Math.Ceiling(rough / EveryMm / 2));
        double fine = Chords(face, curve, from, to, n),
            coarse = Chords(face, curve, from, to, n / 2);
        return Math.Sign(to - from) * (fine + ((fine - coarse) / 3));
    }

    private static double Chords(
        LayerRegion face,
        Func<double, Uv> curve,
        double from,
        double to,
        int n
    )
    {
        double sum = 0;
        Vec3 a = face.PointAt(curve(from));
        for (int i = 1; i <= n; i++)
        {
            Vec3 b = face.PointAt(curve(from + ((to - from) * i / n)));
            sum += a.ChordTo(b);
            a = b;
        }

        return sum;
    }

    /// <summary>The geodesic on the face between two corners, by aiming: the miss square across over the Jacobi field gives the next aim. Null where the aim does not settle: no number is better than a wrong one.</summary>
    public static double? Diagonal(LayerRegion face, Seam forward, Seam after)
    {
        Uv start = forward.Line.UvAt(MeetFace(face, forward)),
            end = after.Out.Uv;
        Vec3 from = face.PointAt(start),
            to = face.PointAt(end);
        Vec3 aim = to - from;
        double length = aim.Norm;
        for (int i = 0; i < 12 && length > 0; i++)
        {
            Geodesic line = GeodesicTracing.Trace(face.Surface, start, aim, 0, length, 1e-5);
            GeodesicPoint p = line.At(length);
            SurfacePoint under = face.Surface.At(p.Uv.U, p.Uv.V);
            Vec3 miss = to - under.P;
            double ahead = miss.Dot(p.Tangent),
                across = miss.Dot(under.Left(p.Tangent));
            if (Math.Abs(across) < 1e-4 && Math.Abs(ahead) < 1e-4)
            {
                return length;
            }

            SurfacePoint first = face.Surface.At(start.U, start.V);
            Vec3 t = first.UnitTangent(aim);
            double turn = across / p.B;
            aim = (Math.Cos(turn) * t) + (Math.Sin(turn) * first.Left(t));
            length += ahead;
        }

        return null;
    }
}
