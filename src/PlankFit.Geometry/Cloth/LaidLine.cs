using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>
/// The line that a roll is laid along first: a curve on the ground and, past its ends, the straight courses that it runs out into. By arc length s, mm, 0 where
/// p is nought.
/// </summary>
public sealed class LaidLine
{
    private readonly Func<double, Uv> at;

    private LaidLine(Func<double, Uv> at, double from, double to)
    {
        this.at = at;
        From = from;
        To = to;
    }

    /// <summary>Where it begins and ends on or just past the ground, mm.</summary>
    public double From { get; }

    public double To { get; }

    public Uv At(double s) => at(s);

    /// <summary>The same with nought halfway along it.</summary>
    public LaidLine Halfway()
    {
        double middle = (From + To) / 2;
        return new(s => at(s + middle), From - middle, To - middle);
    }

    /// <summary>Places a step apart in a straight line from one to the next, as threads are laid, from nought out both ways.</summary>
    /// <returns>Before: how many of them lie before nought.</returns>
    internal (Uv[] Places, int Before) Stepped(ISurface surface, double stepMm)
    {
        List<Uv> before = OneWay(surface, -stepMm),
            after = OneWay(surface, stepMm);
        before.Reverse();
        return ([.. before, at(0), .. after], before.Count);
    }

    private List<Uv> OneWay(ISurface surface, double step)
    {
        // A chord falls short of its arc by step² k²/24 of it, some hundred thousandths: two corrections are more than enough.
        const int corrections = 3;
        var places = new List<Uv>();
        double s = 0;
        Vec3 last = surface.At(at(0).U, at(0).V).P;
        while (true)
        {
            double next = s + step;
            Vec3 p = default;
            for (int i = 0; i < corrections && next >= From && next <= To; i++)
            {
                Uv tried = at(next);
                p = surface.At(tried.U, tried.V).P;
                next += Math.Sign(step) * (Math.Abs(step) - p.ChordTo(last));
            }

            if (!(next >= From && next <= To))
            {
                return places;
            }

            places.Add(at(next));
            (s, last) = (next, surface.At(places[^1].U, places[^1].V).P);
        }
    }

    /// <summary>A straight course through a place, each way until it has left the ground, and so far past.</summary>
    /// <param name="pastMm">How much of it is wanted past the ground's edges.</param>
    /// <exception cref="GeodesicException">It cannot be followed so far.</exception>
    public static LaidLine Straight(ClothGround ground, Uv through, Vec3 direction, double pastMm)
    {
        const double toleranceMm = 1e-4,
            farthest = 1e6;
        Geodesic course = GeodesicTracing.Trace(
            ground.Surface,
            through,
            direction,
            farthest,
            farthest,
            toleranceMm,
            at => ground.OutMm(at) < pastMm
        );
        return new(
            s => course.UvAt(s),
            Left(ground, course, course.From, pastMm),
            Left(ground, course, course.To, pastMm)
        );
    }

    /// <summary>A curve on the ground with straight courses past both its ends, so far.</summary>
    /// <param name="curve">From <paramref name="from"/> to <paramref name="to"/> in a parameter of its own.</param>
    public static LaidLine Along(
        ClothGround ground,
        Func<double, Uv> curve,
        double from,
        double to,
        double pastMm
    )
    {
        const int chords = 4000;
        const double toleranceMm = 1e-4;
        double[] s = new double[chords + 1];
        Vec3 before = Point(ground, curve(from)),
            second = before,
            lastButOne = before;
        for (int i = 1; i <= chords; i++)
        {
            Vec3 p = Point(ground, curve(from + ((to - from) * i / chords)));
            s[i] = s[i - 1] + before.ChordTo(p);
            (lastButOne, before) = (before, p);
            second = i == 1 ? p : second;
        }

        double length = s[^1];
        Geodesic ahead = GeodesicTracing.Trace(
                ground.Surface,
                curve(from),
                Point(ground, curve(from)) - second,
                0,
                pastMm,
                toleranceMm
            ),
            behind = GeodesicTracing.Trace(
                ground.Surface,
                curve(to),
                before - lastButOne,
                0,
                pastMm,
                toleranceMm
            );
        Uv On(double at)
        {
            int i = Array.BinarySearch(s, at);
            i = Math.Clamp(i >= 0 ? i : ~i - 1, 0, chords - 1);
            double part = (i + ((at - s[i]) / (s[i + 1] - s[i]))) / chords;
            return curve(from + ((to - from) * part));
        }

        return new(
            at =>
                at < 0 ? ahead.UvAt(-at)
                : at > length ? behind.UvAt(at - length)
                : On(at),
            -pastMm,
            length + pastMm
        );
    }

    private static Vec3 Point(ClothGround ground, Uv at) => ground.Surface.At(at.U, at.V).P;

    /// <summary>Where a course has left the ground by so much, going out from 0.</summary>
    private static double Left(ClothGround ground, Geodesic course, double end, double pastMm)
    {
        double inside = 0,
            outside = end;
        for (int i = 0; i < 60; i++)
        {
            double middle = (inside + outside) / 2;
            if (ground.OutMm(course.UvAt(middle)) < pastMm)
            {
                inside = middle;
            }
            else
            {
                outside = middle;
            }
        }

        return outside;
    }
}
