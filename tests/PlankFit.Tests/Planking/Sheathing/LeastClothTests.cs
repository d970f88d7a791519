using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>What comes off rolls against every way there is, found by plain counting: few pieces on one roll, and stretches out of rolls on hand and rolls to buy.</summary>
public sealed class LeastClothTests
{
    private const double Roll = 1270;

    /// <summary>By chance: two or three pieces, every order, turning and height; the least is what is found, and no more than its area's bound beside it says.</summary>
    [Fact]
    public void FewPiecesTakeTheLeastOfTheRoll() =>
        Assert.All(
            Enumerable.Range(1, 30),
            seed =>
            {
                var draw = new Draw(seed);
                bool over = draw.Heads();
                Vec2[][] shapes =
                [
                    .. Enumerable.Range(0, draw.Whole(2, 3)).Select(_ => Shape(draw)),
                ];
                double length =
                        RollPacking
                            .Of([.. shapes.Select(s => s.ToImmutableArray())], Roll, over)
                            .LengthMm,
                    least = Least(shapes, [], over);
                Assert.Equal(least, length, 1e-5);
                Assert.True(length >= (shapes.Sum(s => FlatPolygon.Area(s)) / Roll) - 1e-6);
            }
        );

    /// <summary>By chance: each stretch on each of the rolls on hand, on each that may be bought, or on none; the least left, then paid, then off bought rolls.</summary>
    [Fact]
    public void StretchesTakeTheLeastOfRolls() =>
        Assert.All(
            Enumerable.Range(1, 60),
            seed =>
            {
                var draw = new Draw(seed);
                RollPart[] parts =
                [
                    .. Enumerable
                        .Range(0, draw.Whole(1, 4))
                        .Select(_ => new RollPart(draw.Whole(5, 60) * 100, draw.Whole(1, 3))),
                ];
                bool priced = draw.Heads();
                ClothRoll[] rolls =
                [
                    .. Enumerable
                        .Range(0, draw.Whole(1, 3))
                        .Select(i => new ClothRoll(Roll, draw.Whole(8, 90) * 100)
                        {
                            Count = draw.Heads() ? draw.Whole(1, 2) : null,
                            Price = priced ? draw.Whole(10, 90) : null,
                        }),
                ];
                RollShare[] shares = RollSharing.Of(rolls, parts);
                Assert.Equal(
                    Enumerable.Range(0, parts.Length),
                    shares.SelectMany(s => s.Parts).Order()
                );
                Assert.All(
                    shares.Where(s => s.Roll is not null),
                    s => Assert.True(s.Parts.Sum(i => parts[i].LengthMm) <= s.Roll!.LengthMm + 1e-6)
                );
                Assert.All(
                    rolls.Where(r => r.Count is not null),
                    r =>
                        Assert.True(
                            shares.Count(s => ReferenceEquals(s.Roll, r)) <= r.Count,
                            "more of a roll than there are"
                        )
                );
                Assert.All(
                    shares.Where(s => s.Roll is not null),
                    s => Assert.Equal(s.Roll!.Count is not null, s.OnHand)
                );
                (int, double, double) found = (
                    shares.Where(s => s.Roll is null).Sum(s => s.Parts.Sum(i => parts[i].Pieces)),
                    shares
                        .Where(s => s.Roll is not null && !s.OnHand)
                        .Sum(s => priced ? s.Roll!.Price!.Value : s.Roll!.LengthMm),
                    shares
                        .Where(s => s.Roll is not null && !s.OnHand)
                        .Sum(s => s.Parts.Sum(i => parts[i].LengthMm))
                );
                Assert.Equal(Best(rolls, parts, priced), found);
            }
        );

    /// <summary>Of more stretches than are tried, as many as there are find a roll that can be bought.</summary>
    [Fact]
    public void ManyStretchesFindTheirRolls()
    {
        RollPart[] parts = [.. Enumerable.Range(1, 30).Select(i => new RollPart(100 * i, 1))];
        RollShare[] shares = RollSharing.Of([new(Roll, 3000)], parts);
        Assert.DoesNotContain(shares, s => s.Roll is null);
        Assert.Equal(Enumerable.Range(0, parts.Length), shares.SelectMany(s => s.Parts).Order());
        // No fewer than their length asks for, and first fit by falling lengths takes no more than 11/9 of the least and one.
        double least = Math.Ceiling(parts.Sum(p => p.LengthMm) / 3000);
        Assert.InRange(shares.Length, least, (11 * least / 9) + 1);
    }

    /// <summary>Of every stretch its place is tried: a roll on hand, one of each kind to buy for each stretch, or none.</summary>
    private static (int, double, double) Best(ClothRoll[] rolls, RollPart[] parts, bool priced)
    {
        List<(ClothRoll Roll, bool OnHand)> places = [];
        foreach (ClothRoll roll in rolls)
        {
            places.AddRange(
                Enumerable.Repeat((roll, roll.Count is not null), roll.Count ?? parts.Length)
            );
        }

        (int, double, double)? best = null;
        int[] at = new int[parts.Length];
        Next(0);
        return best!.Value;

        void Next(int part)
        {
            if (part < parts.Length)
            {
                for (int place = -1; place < places.Count; place++)
                {
                    at[part] = place;
                    Next(part + 1);
                }

                return;
            }

            int left = 0;
            double paid = 0,
                off = 0;
            for (int place = 0; place < places.Count; place++)
            {
                double on = parts.Where((_, i) => at[i] == place).Sum(p => p.LengthMm);
                if (on > places[place].Roll.LengthMm + 1e-6)
                {
                    return;
                }

                if (on > 0 && !places[place].OnHand)
                {
                    off += on;
                    paid += priced ? places[place].Roll.Price!.Value : places[place].Roll.LengthMm;
                }
            }

            left = parts.Where((_, i) => at[i] < 0).Sum(p => p.Pieces);
            (int, double, double) now = (left, paid, off);
            best = best is { } was && was.CompareTo(now) <= 0 ? was : now;
        }
    }

    /// <summary>The shortest of all orders, turnings and heights (at both edges of the roll and by whole widths of the piece), by going over the corners.</summary>
    private static double Least(Vec2[][] left, List<Vec2[]> laid, bool over)
    {
        if (left.Length == 0)
        {
            return laid.Max(s => s.Max(p => p.X));
        }

        double best = double.PositiveInfinity;
        for (int i = 0; i < left.Length; i++)
        {
            Vec2[][] rest = [.. left.Where((_, j) => j != i)];
            foreach (Vec2[] turned in Turned(left[i], over))
            {
                double width = turned.Max(p => p.Y);
                foreach (double y in Heights(width))
                {
                    Vec2[] up = [.. turned.Select(p => p + new Vec2(0, y))];
                    double x = laid.Select(l => Push(l, up)).Append(0).Max();
                    best = Math.Min(
                        best,
                        Least(rest, [.. laid, [.. up.Select(p => p + new Vec2(x, 0))]], over)
                    );
                }
            }
        }

        return best;
    }

    private static IEnumerable<double> Heights(double width)
    {
        yield return 0;
        if (Roll - width >= 1)
        {
            yield return Roll - width;
        }

        for (int i = 1; (i + 1) * width <= Roll && i < 8; i++)
        {
            yield return i * width;
        }
    }

    private static IEnumerable<Vec2[]> Turned(Vec2[] shape, bool over)
    {
        double length = shape.Max(p => p.X),
            width = shape.Max(p => p.Y);
        yield return shape;
        yield return [.. shape.Select(p => new Vec2(length - p.X, width - p.Y))];
        if (over)
        {
            yield return [.. shape.Select(p => new Vec2(p.X, width - p.Y))];
            yield return [.. shape.Select(p => new Vec2(length - p.X, p.Y))];
        }
    }

    /// <summary>How far to the right the second must go to clear the first: between corners both edges are straight, so that corners decide.</summary>
    private static double Push(Vec2[] first, Vec2[] second)
    {
        double low = Math.Max(first.Min(p => p.Y), second.Min(p => p.Y)),
            high = Math.Min(first.Max(p => p.Y), second.Max(p => p.Y));
        return high - low < 1e-9
            ? double.NegativeInfinity
            : first
                .Concat(second)
                .Select(p => p.Y)
                .Append(low)
                .Append(high)
                .Where(y => y >= low && y <= high)
                .SelectMany(y => new[] { Math.Max(low, y - 1e-7), Math.Min(high, y + 1e-7) })
                .Max(y => Side(first, y, true) - Side(second, y, false));
    }

    private static double Side(Vec2[] shape, double y, bool right)
    {
        List<double> x = [];
        for (int i = 0; i < shape.Length; i++)
        {
            (Vec2 a, Vec2 b) = (shape[i], shape[(i + 1) % shape.Length]);
            if (Math.Min(a.Y, b.Y) <= y && Math.Max(a.Y, b.Y) >= y)
            {
                x.AddRange(
                    Math.Abs(a.Y - b.Y) < 1e-12
                        ? [a.X, b.X]
                        : [a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y))]
                );
            }
        }

        return right ? x.Max() : x.Min();
    }

    /// <summary>A four-sided piece, slanted at both ends, counter-clockwise from its lower left.</summary>
    private static Vec2[] Shape(Draw draw)
    {
        double length = draw.Between(800, 5000),
            width = draw.Between(250, 1200),
            a = draw.Between(0, 0.4) * length,
            b = draw.Between(0.6, 1) * length;
        return draw.Heads()
            ? [new(0, 0), new(length, 0), new(b, width), new(a, width)]
            : [new(a, 0), new(b, 0), new(length, width), new(0, width)];
    }
}
