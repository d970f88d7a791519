using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Views;

/// <summary>A line that stops short of every lettering already on the sheet and goes on behind it.</summary>
internal static class BrokenLine
{
    private const double ClearMm = 0.7;

    public static void Draw(
        SheetCanvas pad,
        Vec2 from,
        Vec2 to,
        Pen pen,
        string layer = Layers.Hull
    )
    {
        double length = from.ChordTo(to);
        if (length < 1e-6)
        {
            return;
        }

        List<(double From, double To)> gaps = [];
        foreach (Lettering text in pad.Letterings)
        {
            if (Segments.Clip(from, to, Segments.Around(text).Within(-ClearMm)) is { } covered)
            {
                gaps.Add((covered.From.ChordTo(from), covered.To.ChordTo(from)));
            }
        }

        double at = 0;
        foreach ((double start, double end) in gaps.OrderBy(g => g.From).Append((length, length)))
        {
            // A stump shorter than this looks like a slip of the pen.
            if (start - at > 1)
            {
                pad.Line(Along(at), Along(start), pen, layer);
            }

            at = Math.Max(at, end);
        }

        Vec2 Along(double mm) => from + (mm / length * (to - from));
    }
}
