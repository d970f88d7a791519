using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A developable strip laid flat by its rulings, without strain. Along the strip the flat ruling turns by the rate of the
/// ruling's direction within the tangent plane, and the lower edge moves with its own rate resolved along the ruling and
/// square to it; both are integrated by Simpson's rule over each ruling segment. A point of the surface is found on its ruling
/// and keeps its distance along it.
/// </summary>
public sealed class RulingMap : IFlatMap
{
    private readonly SurfacePatch patch;
    private readonly int hand;
    private readonly Strip[] strips;

    public RulingMap(SurfacePatch patch, RulingSet rulings)
    {
        this.patch = patch;
        hand = patch.Handedness;
        strips = new Strip[rulings.Segments.Length];
        double angle = hand * Math.PI / 2;
        Vec2 foot = default;
        for (int k = 0; k < strips.Length; k++)
        {
            Strip strip = new(
                this,
                rulings.Segments[k],
                (k == 0 ? 0 : -0.5, k == strips.Length - 1 ? 1 : 1.5),
                angle,
                foot
            );
            (angle, foot) = strip.FlatAt(1);
            strips[k] = strip;
        }
    }

    public Vec2 At(double u, double v)
    {
        Vec3 x = patch.Surface.At(u, v).P;
        // Rates at an end ask for places a little past it; there the edges are not asked.
        double within = Math.Clamp(u, patch.UFrom, patch.UTo),
            low = patch.Lower(within),
            width = patch.Upper(within) - low,
            across = width != 0 ? (v - low) / width : 0;
        int lo = 0,
            hi = strips.Length;
        while (hi - lo > 1)
        {
            int mid = (lo + hi) / 2;
            (lo, hi) = strips[mid].StartU(across) <= u ? (mid, hi) : (lo, mid);
        }

        // That is right where rulings are straight in u and v, near enough elsewhere. The rulings are only followed from
        // there: carried on past the panel they cross, so that a search over all of them could go astray.
        while (lo > 0 && strips[lo].Start.Ahead(x) < 0)
        {
            lo--;
        }

        while (lo < strips.Length - 1 && strips[lo + 1].Start.Ahead(x) >= 0)
        {
            lo++;
        }

        return strips[lo].Lay(x);
    }

    /// <summary>By central differences over a tenth of a millimetre, good to about 1e-7.</summary>
    public (Vec2 Du, Vec2 Dv) RatesAt(double u, double v)
    {
        SurfacePoint s = patch.Surface.At(u, v);
        double hu = 0.1 / s.Du.Norm,
            hv = 0.1 / s.Dv.Norm;
        return (
            (At(u + hu, v) - At(u - hu, v)) / (2 * hu),
            (At(u, v + hv) - At(u, v - hv)) / (2 * hv)
        );
    }

    /// <summary>A ruling in space: foot on the lower edge, unit direction, the square direction in the tangent plane, and the rates of the flat.</summary>
    private readonly record struct Line(
        Vec3 Foot,
        Vec3 Along,
        Vec3 Square,
        int Hand,
        double TurnRate,
        double FootAlong,
        double FootSquare
    )
    {
        /// <summary>How far a point lies beyond the ruling, towards greater u.</summary>
        public double Ahead(Vec3 x) => -Hand * (x - Foot).Dot(Square);
    }

    private Line At(RulingNode node)
    {
        EdgePoint a = patch.OnLower(node.P),
            b = patch.OnUpper(node.Q);
        Vec3 r = b.P - a.P;
        double length = r.Norm;
        r = r.Unit();
        Vec3 n = a.Normal + b.Normal;
        n = (n - (n.Dot(r) * r)).Unit();
        // The better normal is that of the ruled surface itself; the surface's own only says which side.
        Vec3 ruled = a.Rate.Cross(r).Unit() + b.Rate.Cross(r).Unit();
        n = ruled.Norm > 0.1 ? (ruled.Dot(n) > 0 ? ruled.Unit() : -ruled.Unit()) : n;
        Vec3 e = n.Cross(r);
        double turn = ((b.Rate.Dot(e) * node.QRate) - (a.Rate.Dot(e) * node.PRate)) / length;
        return new(a.P, r, e, hand, turn, a.Rate.Dot(r) * node.PRate, a.Rate.Dot(e) * node.PRate);
    }

    private sealed class Strip
    {
        private readonly RulingMap map;
        private readonly RulingSegment segment;
        private readonly (double From, double To) reach;
        private readonly Line middle;
        private readonly Line end;
        private readonly double angle;
        private readonly Vec2 foot;
        private readonly Vec2[] rate = new Vec2[3];

        /// <param name="reach">Within which the ruling is sought; beyond it a point is laid as if in the tangent plane of the last.</param>
        public Strip(
            RulingMap map,
            RulingSegment segment,
            (double From, double To) reach,
            double angle,
            Vec2 foot
        )
        {
            (this.map, this.segment, this.reach, this.angle, this.foot) = (
                map,
                segment,
                reach,
                angle,
                foot
            );
            (Start, middle, end) = (
                map.At(segment.Start),
                map.At(segment.Middle),
                map.At(segment.End)
            );
            Line[] lines = [Start, middle, end];
            for (int k = 0; k < 3; k++)
            {
                Vec2 r = Direction(Angle(k / 2.0));
                rate[k] = (lines[k].FootAlong * r) + (lines[k].FootSquare * r.Left());
            }
        }

        public Line Start { get; }

        /// <summary>The u of the strip's first ruling, the given part of the way across.</summary>
        public double StartU(double across) =>
            segment.Start.P + (across * (segment.Start.Q - segment.Start.P));

        public (double Angle, Vec2 Foot) FlatAt(double t)
        {
            (double w0, double w1, double w2) = Integral(t);
            return (Angle(t), foot + (w0 * rate[0]) + (w1 * rate[1]) + (w2 * rate[2]));
        }

        public Vec2 Lay(Vec3 x)
        {
            // Secant on how far the point lies beyond the ruling; the strips are narrow, so that three or four steps do.
            double ahead0 = Start.Ahead(x),
                ahead1 = end.Ahead(x);
            double t0 = 0,
                t1 = 1;
            double t = Math.Abs(ahead0 - ahead1) > 0 ? ahead0 / (ahead0 - ahead1) : 0.5;
            t = Math.Clamp(t, reach.From, reach.To);
            Line line = map.At(Node(t));
            for (int k = 0; k < 12; k++)
            {
                double ahead = line.Ahead(x);
                if (Math.Abs(ahead) < 1e-10)
                {
                    break;
                }

                (t0, ahead0, t1, ahead1) =
                    Math.Abs(ahead0) < Math.Abs(ahead1)
                        ? (t0, ahead0, t, ahead)
                        : (t, ahead, t1, ahead1);
                double slope = (ahead1 - ahead0) / (t1 - t0);
                if (!double.IsFinite(slope) || slope == 0)
                {
                    break;
                }

                t = Math.Clamp(t - (ahead / slope), reach.From, reach.To);
                line = map.At(Node(t));
            }

            (double angle, Vec2 foot) = FlatAt(t);
            Vec2 r = Direction(angle);
            Vec3 d = x - line.Foot;
            return foot + (d.Dot(line.Along) * r) + (d.Dot(line.Square) * r.Left());
        }

        private double Angle(double t)
        {
            (double w0, double w1, double w2) = Integral(t);
            return angle + (w0 * Start.TurnRate) + (w1 * middle.TurnRate) + (w2 * end.TurnRate);
        }

        private RulingNode Node(double t)
        {
            double a = (1 - t) * (1 - (2 * t)),
                b = 4 * t * (1 - t),
                c = t * ((2 * t) - 1);
            RulingSegment s = segment;
            SurfacePatch patch = map.patch;
            double Keep(double u) => Math.Clamp(u, patch.UFrom, patch.UTo);
            return new(
                Keep((a * s.Start.P) + (b * s.Middle.P) + (c * s.End.P)),
                Keep((a * s.Start.Q) + (b * s.Middle.Q) + (c * s.End.Q)),
                s.Start.PRate,
                s.Start.QRate
            );
        }

        /// <summary>Weights of the three rates in the integral from 0 to t of the parabola through them.</summary>
        private static (double W0, double W1, double W2) Integral(double t) =>
            (
                t - (1.5 * t * t) + (2.0 / 3 * t * t * t),
                (2 * t * t) - (4.0 / 3 * t * t * t),
                (-0.5 * t * t) + (2.0 / 3 * t * t * t)
            );

        private static Vec2 Direction(double angle) => new(Math.Cos(angle), Math.Sin(angle));
    }
}
