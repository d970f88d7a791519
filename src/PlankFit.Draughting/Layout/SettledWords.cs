using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>
/// Words on a drawing in true size moved, by as little as it takes, to where they can be read: wholly inside one of its pages, on no other word, and no line through
/// them; smaller where the plank is. Words on a plank stay on it where they can, and a leader follows its word.
/// </summary>
public static class SettledWords
{
    /// <summary>Words keep this from the edge of their page, mm.</summary>
    private const double EdgeMm = 1;

    private const double LeastMm = 1.8;
    private const double StepMm = 3;
    private const int Steps = 16;

    private static readonly double[] Sizes = [1, 0.75, 0.55];

    /// <summary>Steps away from a place, the nearest first.</summary>
    private static readonly ImmutableArray<Vec2> Around =
    [
        .. Enumerable
            .Range(-Steps, (2 * Steps) + 1)
            .SelectMany(x =>
                Enumerable
                    .Range(-Steps, (2 * Steps) + 1)
                    .Select(y => new Vec2(StepMm * x, StepMm * y))
            )
            .OrderBy(v => v.Norm),
    ];

    /// <param name="pages">Where words may stand; each in one of them.</param>
    public static ImmutableArray<Shape> Of(ImmutableArray<Shape> shapes, IReadOnlyList<Box> pages)
    {
        Shape[] settled = [.. shapes];
        var there = new Obstacles(shapes);
        Box[] rooms = [.. pages.Select(p => p.Within(EdgeMm))];
        for (int i = 0; i < settled.Length; i++)
        {
            if (settled[i] is not Lettering text)
            {
                continue;
            }

            int lead = LeaderOf(settled, text);
            Polyline? leader = lead < 0 ? null : (Polyline)settled[lead];
            if (
                rooms.Any(r => FreePlace.IsIn(r, text)) && there.IsFree(text, i, leader, settled)
                || Place(text, i, leader, rooms, there, settled) is not { } found
            )
            {
                continue;
            }

            settled[i] = found.Text;
            if (found.Leader is { } moved)
            {
                settled[lead] = moved;
            }
        }

        return [.. settled];
    }

    private static (Lettering Text, Polyline? Leader)? Place(
        Lettering text,
        int index,
        Polyline? leader,
        Box[] rooms,
        Obstacles there,
        Shape[] shapes
    )
    {
        Polyline? plank = shapes
            .OfType<Polyline>()
            .FirstOrDefault(l =>
                l.Layer == Layers.Cut && l.Closed && FlatPolygon.Holds(l.Points, Middle(text))
            );
        foreach (bool onPlank in plank is null ? [false] : new[] { true, false })
        {
            foreach (double size in Sizes.Where(s => s == 1 || s * text.HeightMm >= LeastMm))
            {
                Lettering sized = text with { HeightMm = size * text.HeightMm };
                foreach (
                    Lettering at in Homes(sized, rooms)
                        .SelectMany(home =>
                            Around.Select(away => sized with { At = sized.At + home + away })
                        )
                )
                {
                    if (
                        (onPlank && !FlatPolygon.Holds(plank!.Points, Middle(at)))
                        || !rooms.Any(r => FreePlace.IsIn(r, at))
                        || !there.IsFree(at, index, leader, shapes)
                    )
                    {
                        continue;
                    }

                    if (leader is null)
                    {
                        return (at, null);
                    }

                    Polyline led = leader with { Points = [leader.Points[0], Foot(at)] };
                    if (!Quads.Struck(led, Quads.Around(at, 0.1)) && !Strikes(led, index, shapes))
                    {
                        return (at, led);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>By how much a word must move to come into each of the two pages nearest to it.</summary>
    private static IEnumerable<Vec2> Homes(Lettering text, Box[] rooms)
    {
        var box = Box.Around(Quads.Around(text, 0.01));
        return rooms
            .Where(r => r.Width > box.Width && r.Height > box.Height)
            .Select(r => new Vec2(
                Math.Max(0, r.Left - box.Left) - Math.Max(0, box.Right - r.Right),
                Math.Max(0, r.Bottom - box.Bottom) - Math.Max(0, box.Top - r.Top)
            ))
            .OrderBy(v => v.Norm)
            .Take(2);
    }

    private static Vec2 Middle(Lettering text) => Box.Around(Quads.Around(text, 0)).Middle;

    /// <summary>The line of two points that ends beside a word; -1 where there is none.</summary>
    private static int LeaderOf(Shape[] shapes, Lettering text)
    {
        var near = Box.Around(Quads.Around(text, 1.5));
        return text.Anchor is not (Anchor.MiddleLeft or Anchor.MiddleRight)
            ? -1
            : Array.FindIndex(
                shapes,
                s =>
                    s is Polyline { Layer: Layers.Text, Points.Length: 2, Closed: false } l
                    && near.Holds(l.Points[1])
            );
    }

    /// <summary>Where a leader comes to a word: beside its anchor, as it did before.</summary>
    private static Vec2 Foot(Lettering text) =>
        text.At + new Vec2(text.Anchor == Anchor.MiddleLeft ? -1 : 1, 0);

    private static bool Strikes(Polyline leader, int own, Shape[] shapes)
    {
        var box = Box.Around([leader.Points[0], leader.Points[^1]]);
        for (int i = 0; i < shapes.Length; i++)
        {
            if (
                i != own
                && shapes[i] is Lettering other
                && !FreePlace.IsFar(other, box)
                && Quads.Struck(leader, Quads.Around(other, 0.2))
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The lines of a drawing, each stretch with its box: a drawing has thousands, and a word tries hundreds of places.</summary>
    private sealed class Obstacles
    {
        private const double ClearMm = 0.3;
        private readonly (Vec2 A, Vec2 B, Box Box)[] lines;
        private readonly (Vec2 Centre, double RadiusMm)[] rounds;

        public Obstacles(ImmutableArray<Shape> shapes)
        {
            lines =
            [
                .. shapes
                    .OfType<Polyline>()
                    .Where(l => l.Pen.WidthMm > 0 && l.Layer != Layers.Text)
                    .SelectMany(l =>
                        Enumerable
                            .Range(0, l.Closed ? l.Points.Length : l.Points.Length - 1)
                            .Select(i => (l.Points[i], l.Points[(i + 1) % l.Points.Length]))
                            .Select(s => (s.Item1, s.Item2, Box.Around([s.Item1, s.Item2])))
                    ),
            ];
            rounds = [.. shapes.OfType<CircleShape>().Select(c => (c.Centre, c.RadiusMm))];
        }

        public bool IsFree(Lettering text, int own, Polyline? leader, Shape[] shapes)
        {
            Vec2[] quad = Quads.Around(text, ClearMm);
            var box = Box.Around(quad);
            foreach ((Vec2 a, Vec2 b, Box stretch) in lines)
            {
                if (
                    stretch.Left <= box.Right
                    && box.Left <= stretch.Right
                    && stretch.Bottom <= box.Top
                    && box.Bottom <= stretch.Top
                    && Quads.Struck(a, b, quad)
                )
                {
                    return false;
                }
            }

            foreach ((Vec2 centre, double radius) in rounds)
            {
                if (box.Within(-radius).Holds(centre))
                {
                    return false;
                }
            }

            for (int i = 0; i < shapes.Length; i++)
            {
                if (
                    i != own
                    && (
                        shapes[i] is Lettering other && !FreePlace.IsFree(text, [other])
                        // Leaders move with their words, and are looked at where they are now.
                        || shapes[i] is Polyline { Layer: Layers.Text } line
                            && line != leader
                            && Quads.Struck(line, quad)
                    )
                )
                {
                    return false;
                }
            }

            return true;
        }
    }
}
