using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Patterns;

/// <summary>The arrow forward on a full-size pattern with its word, beside the plank's name where both lie on wood.</summary>
internal static class PatternArrow
{
    private const string Word = "forward";
    private const double UsualMm = 50;
    private const double AsideMm = 70;
    private const double LeastMm = 12;

    /// <param name="within">The shape that must hold it: the plank's, or that of one of its pieces.</param>
    /// <param name="name">Where the plank's name is centred, flat.</param>
    /// <param name="nameMm">How wide the name is.</param>
    public static void Draw(
        SheetCanvas pad,
        Plank plank,
        IReadOnlyList<Vec2> within,
        Placing at,
        Vec2 name,
        double nameMm
    )
    {
        Vec2 forward = ForwardArrow.OnFlat(plank);
        for (double length = UsualMm; length >= LeastMm; length *= 0.8)
        {
            double beside = (nameMm / 2) + (length / 2) + 4;
            foreach (double dx in new[] { -AsideMm, AsideMm, -beside, beside, 0 })
            {
                // Over or under the name only where there is no room beside it.
                double dy = dx == 0 ? (length / 2) + 12 : 0;
                foreach (Vec2 middle in new[] { name + new Vec2(dx, -dy), name + new Vec2(dx, dy) })
                {
                    Vec2 word = WordAt(middle, forward, length);
                    if (Fits(plank, within, middle, forward, length, word))
                    {
                        ForwardArrow.Draw(pad, at[middle], forward, length);
                        pad.Text(at[word], Word, Letters.Heading, Anchor.MiddleCentre);
                        return;
                    }
                }
            }
        }

        // A piece too small for the word: the arrow alone, under the name.
        ForwardArrow.Draw(pad, at[name - new Vec2(0, LeastMm)], forward, LeastMm);
    }

    /// <summary>Behind the tail, just clear of it.</summary>
    private static Vec2 WordAt(Vec2 middle, Vec2 forward, double length)
    {
        double half = Letters.Width(Word, Letters.Heading) / 2,
            behind =
                1.5
                + Math.Min(
                    half / Math.Max(1e-3, Math.Abs(forward.X)),
                    Letters.Heading / 2 / Math.Max(1e-3, Math.Abs(forward.Y))
                );
        return middle - (((length / 2) + behind) * forward);
    }

    private static bool Fits(
        Plank plank,
        IReadOnlyList<Vec2> within,
        Vec2 middle,
        Vec2 forward,
        double length,
        Vec2 word
    )
    {
        double half = (Letters.Width(Word, Letters.Heading) / 2) + 1,
            high = (Letters.Heading / 2) + 1;
        Vec2[] corners =
        [
            middle + (length / 2 * forward),
            middle - (length / 2 * forward),
            word + new Vec2(-half, -high),
            word + new Vec2(half, -high),
            word + new Vec2(half, high),
            word + new Vec2(-half, high),
        ];
        return corners.All(c => FlatPolygon.Holds(within, c))
            && plank.Marks.All(m => (m.At + (16 * m.Inward)).ChordTo(word) > half + 4);
    }
}
