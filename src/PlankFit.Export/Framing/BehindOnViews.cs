using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>
/// Some of what lies behind, as a view of a whole layer draws it: its edges in dashes, its name beside it, and its side where it is on one only, so that nobody takes
/// the other side for its mirror image.
/// </summary>
internal static class BehindOnViews
{
    private const double ShadeGrey = 0.78;

    /// <summary>Beside a thing so near its name needs no leader, mm.</summary>
    private const double NearMm = 4;

    /// <summary>Short, since a place may be small on a view.</summary>
    private static readonly Pen Edge = new(0.25, 0, [1.2, 0.6]);

    private static readonly double[] AwayMm = [2.6, 5, 8, 12, 17, 23, 30, 40, 52, 66, 82];

    /// <param name="which">What is drawn; what is on one side only where nothing is said.</param>
    /// <param name="planks">Those of the view.</param>
    /// <param name="onPaper">Where a place of a plank, flat, comes to lie.</param>
    /// <param name="within">What words may not leave.</param>
    public static void Draw(
        SheetCanvas pad,
        BottomPlan plan,
        IReadOnlyList<Plank> planks,
        Func<Plank, Vec2, Vec2> onPaper,
        Box within,
        Func<FramingSpec, bool>? which = null
    )
    {
        List<(string Name, Box Around)> drawn = [];
        foreach (FramingSpec thing in plan.Job.Framing.Where(which ?? IsOneSided))
        {
            foreach (IGrouping<Side, Plank> side in planks.GroupBy(p => p.Side))
            {
                Vec2[][] covers = [.. Covers(plan, side, thing, onPaper)];
                foreach (Vec2[] cover in covers)
                {
                    pad.Closed(cover, Edge, Layers.Behind);
                }

                if (covers.Length > 0)
                {
                    drawn.Add((FramingWords.Sided(thing), Box.Around(covers.SelectMany(c => c))));
                }
            }
        }

        foreach ((string name, Box around) in drawn)
        {
            Name(pad, name, around, within);
        }

        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
    }

    /// <summary>Its ground in grey: drawn before all else, so that it is seen under a plank's number too.</summary>
    public static void Shade(
        SheetCanvas pad,
        BottomPlan plan,
        IReadOnlyList<Plank> planks,
        Func<Plank, Vec2, Vec2> onPaper
    )
    {
        foreach (
            Vec2[] cover in plan
                .Job.Framing.Where(IsOneSided)
                .SelectMany(thing => Covers(plan, planks, thing, onPaper))
        )
        {
            pad.Closed(cover, Pens.None, Layers.Behind, ShadeGrey);
        }
    }

    /// <summary>All of them in a sentence; empty where both sides are alike.</summary>
    public static string Said(BottomPlan plan) =>
        string.Join(", ", plan.Job.Framing.Where(IsOneSided).Select(FramingWords.Sided))
            is { Length: > 0 } names
            ? $" On one side only: {names}."
            : "";

    public static bool IsOneSided(FramingSpec thing) => thing.Only is not null;

    private static IEnumerable<Vec2[]> Covers(
        BottomPlan plan,
        IEnumerable<Plank> planks,
        FramingSpec thing,
        Func<Plank, Vec2, Vec2> onPaper
    ) =>
        from plank in planks
        from crossing in FramingWords.Crossings(plan, plank)
        where crossing.Of == thing && crossing.Cover.Length > 2
        select (Vec2[])[.. Thinning.Closed(crossing.Cover, 0.5).Select(p => onPaper(plank, p))];

    /// <summary>As near as may be, on a leader.</summary>
    private static void Name(SheetCanvas pad, string name, Box around, Box within)
    {
        ImmutableArray<(Polyline Line, Box Box)> marks =
        [
            .. pad
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer != Layers.Hull && l.Layer != Layers.Behind && l.Pen.WidthMm > 0)
                .Select(l => (l, Box.Around(l.Points))),
        ];
        Lettering[] places =
        [
            .. from size in new[] { Letters.Bench, Letters.Small }
            from away in AwayMm
            let half = Letters.Width(name, size) / 2
            from at in new[]
            {
                new Vec2(around.Middle.X, around.Top + away),
                new Vec2(around.Middle.X, around.Bottom - away),
                new Vec2(around.Right + half + away, around.Middle.Y),
                new Vec2(around.Left - half - away, around.Middle.Y),
                new Vec2(around.Right + half, around.Top + away),
                new Vec2(around.Left - half, around.Top + away),
                new Vec2(around.Right + half, around.Bottom - away),
                new Vec2(around.Left - half, around.Bottom - away),
            }
            let text = new Lettering(Layers.Text, Pen.Thin, at, name, size, Anchor.MiddleCentre)
            let quad = Quads.Around(text, 0.3)
            let near = Box.Around(quad)
            where !marks.Any(m => m.Box.Overlaps(near) && Quads.Struck(m.Line, quad))
            select text,
        ];
        Lettering? free = places.FirstOrDefault(p =>
            FreePlace.IsIn(within, p)
            && FreePlace.IsFree(p, pad.Letterings)
            && FreePlace.IsFree(p, pad.Shapes.OfType<CircleShape>())
            && !pad.Letterings.Any(l => Quads.Struck(p.At, around.Middle, Quads.Around(l, 0.2)))
        );
        if (free is null)
        {
            pad.TextAtFirst(places, within);
            return;
        }

        pad.Add([free]);
        var box = Box.Around(Quads.Around(free, 0.4));
        if (
            !box.Overlaps(around.Within(-NearMm))
            && Segments.Clip(around.Middle, free.At, box) is { } inside
        )
        {
            pad.Line(around.Middle, inside.From, Pens.Measure);
        }
    }
}
