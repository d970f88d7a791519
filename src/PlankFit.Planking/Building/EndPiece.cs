using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Building;

/// <summary>One stretch of boundary on a plank being built, in the order of the outline (counter-clockwise from outside).</summary>
internal sealed record EndPiece(
    BoundaryPiece Piece,
    EndRule Rule,
    Vec3[] Space,
    Vec2[] Net,
    Vec2[] Outer,
    Vec2[] Inner,
    double[] Bevels
)
{
    /// <summary>Unit direction out of the plank, square to the end's chord.</summary>
    public Vec2 Outward
    {
        get
        {
            Vec2 chord = (Net[^1] - Net[0]).Unit();
            return new(chord.Y, -chord.X);
        }
    }

    public double LengthMm => Net[0].ChordTo(Net[^1]);
}

/// <summary>Working out an end: its net line, its lines on both faces, its bevels.</summary>
internal sealed class EndPieces(
    LayerFaces faces,
    StripMap map,
    EndRules rules,
    KeelSideFace keelSide,
    double chordMm
)
{
    private LayerRegion Middle => faces.Middle;

    /// <param name="start">The seam at which the stretch starts, null where it starts at a corner of the region; <paramref name="end"/> likewise.</param>
    public EndPiece Work(BoundaryPiece piece, Seam? start, Seam? end)
    {
        Uv Curve(double lap) => Middle.OnLap(lap, piece.Edge);
        Vec3 Point(double lap) => Middle.PointAt(Curve(lap));
        double[] laps = ChordSampling.Parameters(Point, piece.From, piece.To, chordMm);
        double length = Point(piece.From).ChordTo(Point(piece.To));
        var track = TrackedCurve.Along(map, Curve, piece.From, piece.To, length, 30);
        Vec2[] net = Array.ConvertAll(laps, track.Flat);
        Vec3[] space = Array.ConvertAll(laps, l => Point(l));
        Vec3 middle = Point(piece.Middle);
        EndRule rule = rules.For(piece.Edge, middle.X);
        if (piece.Edge != PanelEdge.Lower || keelSide.SquareToPlank)
        {
            // The edge is carried along the surface normal: both faces end on the same line and the cut is square.
            return new(piece, rule, space, net, net, net, [0, 0, 0]);
        }

        double[] bevels =
        [
            Bevel(Curve(piece.From)),
            Bevel(Curve(piece.Middle)),
            Bevel(Curve(piece.To)),
        ];
        return new(
            piece,
            rule,
            space,
            net,
            FaceLine(faces.Outer, piece, start, end),
            FaceLine(faces.Inner, piece, start, end),
            bevels
        );
    }

    private double Bevel(Uv uv)
    {
        SurfacePoint p = Middle.Surface.At(uv.U, uv.V);
        return Math.Asin(Math.Clamp(keelSide.Normal(p.P, uv.U).Dot(p.Normal), -1, 1))
            * 180
            / Math.PI;
    }

    /// <summary>The keel's side on one face, pulled to the mid-surface along normals (the same u and v) and laid flat.</summary>
    private Vec2[] FaceLine(LayerRegion face, BoundaryPiece piece, Seam? start, Seam? end)
    {
        double from = start is null ? CornerU(face, piece.From) : SeamU(face, start);
        double to = end is null ? CornerU(face, piece.To) : SeamU(face, end);
        Uv Curve(double u) => new(u, face.LowerV(u));
        if (Math.Abs(from - to) < 1e-6)
        {
            return [map.Flat(map.Find(Curve(from), null)), map.Flat(map.Find(Curve(to), null))];
        }

        double[] u = ChordSampling.Parameters(x => Middle.PointAt(Curve(x)), from, to, chordMm);
        var track = TrackedCurve.Along(map, Curve, from, to, Math.Abs(to - from), 30);
        return Array.ConvertAll(u, track.Flat);
    }

    private static double CornerU(LayerRegion face, double lap) =>
        lap - Math.Floor(lap) < 1e-9 && ((int)Math.Round(lap) & 3) == 1 ? face.UTo : face.UFrom;

    /// <summary>The u at which a seam meets the keel's side on one face, by secant from where it meets it on the mid-surface.</summary>
    private static double SeamU(LayerRegion face, Seam seam)
    {
        double Level(double at)
        {
            Uv uv = seam.Line.UvAt(at);
            return uv.V - face.LowerV(uv.U);
        }

        double a = seam.In.S,
            fa = Level(a),
            s = a + 1,
            fs = Level(s);
        for (int i = 0; i < 30 && Math.Abs(s - a) > 1e-9; i++)
        {
            double next = Math.Clamp(s - (fs * (s - a) / (fs - fa)), seam.Line.From, seam.Line.To);
            (a, fa, s) = (s, fs, next);
            fs = Level(s);
        }

        return seam.Line.UvAt(s).U;
    }
}
