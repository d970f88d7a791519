using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;

namespace PlankFit.Planking.Joints;

/// <summary>Where a butt may lie on one thing behind a plank.</summary>
internal static class BackedPlaces
{
    /// <summary>Timber that runs flatter than this along a plank makes no end for it, degrees: a proposal.</summary>
    private const double LeastAngleDegrees = 30;

    /// <summary>Lines along the plank on which a square butt is held against the backing's edges, and how far the outer ones are inside the plank's, mm.</summary>
    private const int Levels = 5;
    private const double InsideMm = 0.5;

    /// <summary>A backing that ends further than this from the plank's edge does not carry its whole width, mm.</summary>
    private const double EndsMm = 5;

    public static IEnumerable<JointPlace> On(
        JointedShape shape,
        JointStock stock,
        FramingCrossing behind
    )
    {
        if (behind.Centre.IsDefaultOrEmpty || behind.Centre.Length < 2)
        {
            return [];
        }

        Vec2 chord = behind.Centre[^1] - behind.Centre[0];
        double angle = Math.Abs(Math.Atan2(chord.Y, chord.X)) * 180 / Math.PI;
        if (angle < LeastAngleDegrees || angle > 180 - LeastAngleDegrees)
        {
            return [];
        }

        return stock.Cut == ButtCut.AlongBacking
            ? Along(shape, stock, behind)
            : Square(shape, stock, behind, Math.Sin(angle * Math.PI / 180));
    }

    /// <summary>Along the middle of the backing, sawn straight: one place, where both pieces bear enough in spite of the backing's own curve.</summary>
    private static IEnumerable<JointPlace> Along(
        JointedShape shape,
        JointStock stock,
        FramingCrossing behind
    )
    {
        ImmutableArray<Vec2> centre = behind.Centre;
        Vec2 a = centre[0],
            b = centre[^1];
        if (a.Y > b.Y)
        {
            (a, b) = (b, a);
        }

        Vec2 along = (b - a).Unit();
        double off = centre.Max(p => Math.Abs(along.Cross(p - a)));
        double at = a.X - (a.Y * along.X / along.Y);
        double cut = Math.Atan2(along.Y, along.X) * 180 / Math.PI;
        if (
            off > (behind.Of.WidthMm / 2) - stock.BearingMm
            || shape.Across(at, cut) is not { } line
            || a.ChordTo(line[0]) > EndsMm
            || b.ChordTo(line[1]) > EndsMm
        )
        {
            yield break;
        }

        yield return new(at, cut, line.Max(p => p.X), line.Min(p => p.X), behind.Of.Name, true)
        {
            Line = line,
        };
    }

    /// <summary>Square to the plank: wherever the whole width of both pieces bears enough, from the middle outwards by steps.</summary>
    private static IEnumerable<JointPlace> Square(
        JointedShape shape,
        JointStock stock,
        FramingCrossing behind,
        double sin
    )
    {
        double low = double.NegativeInfinity,
            high = double.PositiveInfinity,
            bearing = stock.BearingMm / sin;
        double least = shape.Plank.FlatNet.Min(p => p.Y) + InsideMm,
            most = shape.Plank.FlatNet.Max(p => p.Y) - InsideMm;
        for (int k = 0; k < Levels; k++)
        {
            double n = least + ((most - least) * k / (Levels - 1));
            if (Crossed(behind.Cover, n) is not { } crossed)
            {
                yield break;
            }

            low = Math.Max(low, crossed.From + bearing);
            high = Math.Min(high, crossed.To - bearing);
        }

        if (!(low <= high))
        {
            yield break;
        }

        double middle = (low + high) / 2;
        int steps = (int)((high - middle) / stock.GridMm);
        foreach (int k in Enumerable.Range(-steps, (2 * steps) + 1))
        {
            double at = middle + (k * stock.GridMm);
            if (JointPlaces.Square(shape, at, 0, behind.Of.Name, true) is { } place)
            {
                yield return place;
            }
        }
    }

    /// <summary>The stretch of a line along the plank that a strip covers; null where it covers none.</summary>
    private static (double From, double To)? Crossed(ImmutableArray<Vec2> strip, double n)
    {
        double from = double.PositiveInfinity,
            to = double.NegativeInfinity;
        for (int i = 0; i < strip.Length; i++)
        {
            Vec2 a = strip[i],
                b = strip[(i + 1) % strip.Length];
            if (a.Y <= n != b.Y <= n)
            {
                double s = a.X + ((n - a.Y) / (b.Y - a.Y) * (b.X - a.X));
                from = Math.Min(from, s);
                to = Math.Max(to, s);
            }
        }

        return from < to ? (from, to) : null;
    }
}
