using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Timber;

/// <summary>Area of a plank on its mid-thickness surface, mm², and the centre of that area in space, on the plank's own side, mm.</summary>
internal readonly record struct PlankBody(double AreaMm2, Vec3 Centre, double ErrorMm)
{
    /// <summary>The outline turns by more than this at a corner, not along a curve: sine of 3 degrees.</summary>
    private const double Corner = 0.052;

    /// <summary>A stretch of the plank longer than this takes four places along it, a shorter one three, mm.</summary>
    private const double LongMm = 250;

    // Gauss and Legendre's places and weights on -1 to 1.
    private static readonly (double At, double Share)[] Two =
    [
        (-0.5773502691896257, 1),
        (0.5773502691896257, 1),
    ];
    private static readonly (double At, double Share)[] Three =
    [
        (-0.7745966692414834, 5.0 / 9),
        (0, 8.0 / 9),
        (0.7745966692414834, 5.0 / 9),
    ];
    private static readonly (double At, double Share)[] Four =
    [
        (-0.8611363115940526, 0.34785484513745385),
        (-0.33998104358485626, 0.6521451548625461),
        (0.33998104358485626, 0.6521451548625461),
        (0.8611363115940526, 0.34785484513745385),
    ];

    /// <summary>
    /// By quadrature over the flat net shape, each place carried to the surface. The shape is cut across its line at every corner, so that between cuts its
    /// edges are smooth. A second quadrature with two places on every stretch tells the error.
    /// </summary>
    public static PlankBody Of(Plank plank)
    {
        double[] cuts = Cuts(plank.FlatNet);
        (double area, Vec3 moment) = Sum(plank, cuts, false);
        (double rough, Vec3 roughMoment) = Sum(plank, cuts, true);
        Vec3 centre = moment / area;
        return new(area, centre, centre.ChordTo(roughMoment / rough));
    }

    private static (double Area, Vec3 Moment) Sum(Plank plank, double[] cuts, bool rough)
    {
        double area = 0;
        Vec3 moment = Vec3.Zero;
        for (int i = 1; i < cuts.Length; i++)
        {
            double half = (cuts[i] - cuts[i - 1]) / 2,
                middle = (cuts[i] + cuts[i - 1]) / 2;
            (double At, double Share)[] rule =
                rough ? Two
                : half > LongMm / 2 ? Four
                : Three;
            foreach ((double at, double share) in rule)
            {
                double s = middle + (half * at);
                foreach ((double low, double high) in Chords(plank.FlatNet, s))
                {
                    foreach ((double across, double part) in Two)
                    {
                        double n = ((low + high) / 2) + ((high - low) / 2 * across);
                        (Vec3 p, double rate) = plank.Map.Measured(new(s, n));
                        double d = half * share * (high - low) / 2 * part * rate;
                        area += d;
                        moment += d * p;
                    }
                }
            }
        }

        return (area, moment);
    }

    /// <summary>Places along the plank at which its outline has a corner, from the least to the greatest.</summary>
    private static double[] Cuts(ImmutableArray<Vec2> outline)
    {
        var at = new SortedSet<double> { outline.Min(p => p.X), outline.Max(p => p.X) };
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 here = outline[i],
                into = here - outline[(i + outline.Length - 1) % outline.Length],
                on = outline[(i + 1) % outline.Length] - here;
            if (Math.Abs(into.Cross(on)) > Corner * into.Norm * on.Norm || into.Dot(on) < 0)
            {
                at.Add(here.X);
            }
        }

        return [.. at];
    }

    /// <summary>The stretches of the line at s that lie inside, by their n.</summary>
    private static List<(double Low, double High)> Chords(ImmutableArray<Vec2> outline, double s)
    {
        var crossings = new List<double>(4);
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 a = outline[i],
                b = outline[(i + 1) % outline.Length];
            if (a.X > s != b.X > s)
            {
                crossings.Add(a.Y + ((s - a.X) / (b.X - a.X) * (b.Y - a.Y)));
            }
        }

        crossings.Sort();
        var chords = new List<(double, double)>(1);
        for (int i = 1; i < crossings.Count; i += 2)
        {
            chords.Add((crossings[i - 1], crossings[i]));
        }

        return chords;
    }
}
