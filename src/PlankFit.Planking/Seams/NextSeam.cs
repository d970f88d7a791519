using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>The next seam outward from one that is laid.</summary>
internal sealed class NextSeam(LayerRegion region, PlankLayerSpec spec, Tracing tracing)
{
    /// <summary>A tapered plank keeps at least this part of the stock's width; a proposal, no source.</summary>
    public const double NarrowestTaper = 0.6;

    /// <summary>Seams are kept within the stock's width so far past the plank's net ends as well, mm: what is left long is sawn from the same stock.</summary>
    private const double PastEndsMm = 60;

    /// <summary>So often a seam is laid anew to bring the width to the stock's, and so often at most while it is wider.</summary>
    private const int Passes = 3,
        MostPasses = 8;

    /// <summary>Step of the perpendiculars by which widths are measured, mm; good to 1e-4 mm in a width.</summary>
    public const double MeasureStepMm = 80;

    /// <summary>The next seam on one side (−1 forward, +1 aft) with the width as nearly constant as geodesics allow and never above the stock; null where it passes the region by.</summary>
    public Seam? AtWidth(Seam seam, int side) => Laid(seam, side, 0);

    /// <summary>The next seam of a plank that is tapered so as to turn the family by an angle (radians, positive counter-clockwise seen from outside).</summary>
    public Seam? Tapered(Seam seam, int side, double turn, out double turned)
    {
        double length = seam.LengthMm + (2 * PastEndsMm);
        double most = (1 - NarrowestTaper) * spec.WidthMm / length;
        turned = Math.Clamp(turn, -most, most);
        return Laid(seam, side, turned);
    }

    /// <summary>The next seam that leaves the keel at the angle asked for, its place chosen so that the plank is nowhere wider than the stock; null where it does not start from the keel.</summary>
    public Seam? AtAngle(Seam seam, int side)
    {
        Seam? parallel = AtWidth(seam, side);
        if (parallel is null || parallel.In.Edge != PanelEdge.Lower)
        {
            return null;
        }

        double low = seam.In.Uv.U,
            u = parallel.In.Uv.U,
            widthLow = 0;
        for (int i = 0; i < 12; i++)
        {
            Geodesic line = tracing.Line(
                region,
                new(u, region.LowerV(u)),
                KeelAngle.Direction(region, u, spec.Heads, spec.AngleDegrees)
            );
            Seam? found = Crossings.Find(region, line);
            if (found is null || found.In.Edge != PanelEdge.Lower)
            {
                return null;
            }

            double width = Widest(seam, found);
            if (width <= Most && width > Most - 1e-4)
            {
                return found;
            }

            // Aim a hair inside, so that the last step ends on the safe side.
            double next = u + ((Most - 5e-5 - width) * (u - low) / (width - widthLow));
            (low, widthLow, u) = (u, width, next);
        }

        throw new GeodesicException(
            $"no seam at {spec.AngleDegrees:0.#} degrees is found next to the one that leaves the {region.Panel.WordOf(PanelEdge.Lower)} there",
            seam.In.Uv
        );
    }

    /// <summary>As wide as a plank may be, mm.</summary>
    private double Most => spec.WidthMm - StockRoom.SpareMm;

    /// <summary>The greatest width of the plank between two seams, mm, over its net length and a little more, measured square to the first.</summary>
    public double Widest(Seam seam, Seam next)
    {
        Span(seam, next, null, out double widest);
        return widest;
    }

    private Seam? Laid(Seam seam, int side, double turn)
    {
        double from = seam.In.S - PastEndsMm,
            to = seam.Out.S + PastEndsMm;
        Seam? next = null;
        double target = spec.WidthMm;
        for (int pass = 0; pass < MostPasses; pass++)
        {
            (from, to) = (Math.Max(from, seam.Line.From), Math.Min(to, seam.Line.To));
            Neighbour n = Wish(seam, side, turn, from, to, target);
            double foot = (from + to) / 2;
            Geodesic line = Neighbours.Trace(region, seam.Line, n, foot, tracing);
            next = Crossings.Find(region, line);
            if (next is null)
            {
                return null;
            }

            (from, to) = Span(seam, next, new(foot, side * target), out double widest);
            bool fits = widest <= Most + 1e-5;
            if ((pass > 0 && fits && widest > Most - 0.01) || (pass + 1 >= Passes && fits))
            {
                break;
            }

            target *= (Most - 2e-5) / widest;
        }

        return next;
    }

    private Neighbour Wish(Seam seam, int side, double turn, double from, double to, double target)
    {
        // A positive turn widens the plank outboard on the after side and narrows it there on the forward side.
        double slope = side * turn;
        double wideEnd = slope >= 0 ? to : from;
        Neighbour n = Neighbours.Fit(seam.Line, from, to, s => target + (slope * (s - wideEnd)));
        return side * target / Neighbours.Greatest(seam.Line, n, from, to) * n;
    }

    /// <summary>The stretch of the first seam abreast of both seams' inside stretches, with a little more at both ends, and the greatest distance across on it.</summary>
    /// <param name="foot">Where on the first seam the line of the next was begun, and about how far across; null where that is not known.</param>
    private (double From, double To) Span(Seam seam, Seam next, Fermi? foot, out double widest)
    {
        var strip = new FermiStrip(seam.Line, MeasureStepMm);
        const int nodes = 7;
        double[] s = new double[nodes],
            t = new double[nodes];
        double low = Math.Max(next.Line.From, next.In.S - PastEndsMm),
            high = Math.Min(next.Line.To, next.Out.S + PastEndsMm);
        for (int i = 0; i < nodes; i++)
        {
            Uv uv = next.Line.UvAt(low + ((high - low) * i / (nodes - 1)));
            Vec3 point = region.PointAt(uv);
            Fermi guess =
                i == 0 ? Abreast(seam.Line, foot, low) ?? Nearest(seam.Line, point)
                : i == 1 ? new(s[0] + ((high - low) / (nodes - 1)), t[0])
                : i == 2 ? new((2 * s[1]) - s[0], (2 * t[1]) - t[0])
                : new(
                    (3 * (s[i - 1] - s[i - 2])) + s[i - 3],
                    (3 * (t[i - 1] - t[i - 2])) + t[i - 3]
                );
            Fermi f = strip.Find(uv, point, guess, 1e-5);
            (s[i], t[i]) = (f.S, f.T);
        }

        double from = Math.Max(seam.Line.From, Math.Min(seam.In.S - PastEndsMm, s[0]));
        double to = Math.Min(seam.Line.To, Math.Max(seam.Out.S + PastEndsMm, s[^1]));
        CubicSpline across = AcrossAlong.Through(seam.Line, s, t);
        widest = Peak.Of(at => Math.Abs(across.At(at)), from, to, 24);
        return (from, to);
    }

    /// <summary>What lies abreast of a place on a line that runs along with this one from a foot on.</summary>
    private static Fermi? Abreast(Geodesic line, Fermi? foot, double s) =>
        foot is { } f ? new(Math.Clamp(f.S + s, line.From, line.To), f.T) : null;

    private static Fermi Nearest(Geodesic line, Vec3 point)
    {
        double best = line.From,
            least = double.PositiveInfinity;
        for (int i = 0; i <= 24; i++)
        {
            double s = line.From + ((line.To - line.From) * i / 24);
            double d = line.Under(s).P.ChordTo(point);
            (best, least) = d < least ? (s, d) : (best, least);
        }

        return new(best, 0);
    }
}
