using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>The map from a layer's surface to one flat plank: strip coordinates about the plank's own line, with the mean-length correction.</summary>
internal sealed class StripMap
{
    private readonly FermiStrip strip;
    private readonly StripScale scale;
    private readonly LayerRegion region;

    private readonly double zeroS;

    private StripMap(LayerRegion region, FermiStrip strip, StripScale scale, double zeroS)
    {
        this.zeroS = zeroS;
        this.region = region;
        this.strip = strip;
        this.scale = scale;
    }

    public Geodesic Line => strip.Centre;

    public static StripMap About(
        LayerRegion region,
        Geodesic line,
        double zeroS,
        double widthMm,
        Tracing tracing
    )
    {
        double mean = widthMm * widthMm / 12;
        var scale = StripScale.Along(line, _ => mean, line.From, line.To, zeroS, 60);
        return new(region, new(line, tracing.PerpendicularStepMm), scale, zeroS);
    }

    /// <summary>How far the own line was followed, laid flat, mm.</summary>
    public double FlatFrom => scale.Flat(Line.From);

    public double FlatTo => scale.Flat(Line.To);

    public Vec2 Flat(Fermi f) => new(scale.Flat(f.S), f.T);

    /// <summary>Strip coordinates of a flat place: the scale is inverted by Newton, which its slope within a thousandth of 1 makes a matter of three steps.</summary>
    public Fermi Fermi(Vec2 flat)
    {
        double s = Math.Clamp(flat.X + zeroS, Line.From, Line.To);
        for (int i = 0; i < 20; i++)
        {
            double step = (scale.Flat(s) - flat.X) / scale.Rate(s);
            s -= step;
            if (Math.Abs(step) < 1e-10)
            {
                break;
            }
        }

        return new(s, flat.Y);
    }

    /// <summary>Flat length for each length along the own line.</summary>
    public double Rate(double s) => scale.Rate(s);

    /// <summary>The surface's parameters at strip coordinates.</summary>
    public Uv On(Fermi f) => strip.At(f).Uv;

    /// <summary>Strip coordinates of a place on the surface, to 1e-6 mm, from a guess or from the nearest point of the line.</summary>
    public Fermi Find(Uv uv, Fermi? guess)
    {
        Vec3 point = region.PointAt(uv);
        return strip.Find(uv, point, guess ?? Nearest(point), 1e-6);
    }

    private Fermi Nearest(Vec3 point)
    {
        double best = Line.From,
            least = double.PositiveInfinity;
        for (int i = 0; i <= 40; i++)
        {
            double s = Line.From + ((Line.To - Line.From) * i / 40);
            double d = Line.Under(s).P.ChordTo(point);
            (best, least) = d < least ? (s, d) : (best, least);
        }

        return new(best, 0);
    }
}

/// <summary>A curve on the surface followed in strip coordinates: found exactly at nodes, splined between.</summary>
internal sealed class TrackedCurve
{
    private readonly CubicSpline s,
        t;
    private readonly StripMap map;
    private readonly double from,
        to;

    private TrackedCurve(StripMap map, double from, double to, CubicSpline s, CubicSpline t)
    {
        this.map = map;
        (this.from, this.to) = (from, to);
        this.s = s;
        this.t = t;
    }

    /// <param name="from">The curve's parameter at its start; it may fall towards <paramref name="to"/>.</param>
    /// <param name="lengthMm">Rough length of the curve; nodes are set about every <paramref name="nodeMm"/>.</param>
    public static TrackedCurve Along(
        StripMap map,
        Func<double, Uv> curve,
        double from,
        double to,
        double lengthMm,
        double nodeMm
    )
    {
        int n = Math.Max(6, (int)Math.Ceiling(lengthMm / nodeMm));
        double[] p = new double[n + 1],
            s = new double[n + 1],
            t = new double[n + 1];
        Fermi? guess = null;
        for (int i = 0; i <= n; i++)
        {
            p[i] = (double)i / n;
            Fermi f = map.Find(curve(from + ((to - from) * p[i])), guess);
            (s[i], t[i]) = (f.S, f.T);

            // Two nodes foretell the third.
            guess = i == 0 ? f : new((2 * f.S) - s[i - 1], (2 * f.T) - t[i - 1]);
        }

        return new(map, from, to, CubicSpline.Through(p, s), CubicSpline.Through(p, t));
    }

    public Fermi At(double p)
    {
        double part = (p - from) / (to - from);
        return new(s.At(part), t.At(part));
    }

    public Vec2 Flat(double p) => map.Flat(At(p));
}
