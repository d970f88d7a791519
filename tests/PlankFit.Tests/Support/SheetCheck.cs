using System.Globalization;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Support;

/// <summary>What makes a sheet hard to read: letterings that overlap, that are too small, or that leave the frame; and lines through letterings.</summary>
internal static class SheetCheck
{
    /// <summary>Letterings nearer than this read as one: a third of the smallest letter, mm.</summary>
    private const double ApartMm = 0.6;

    /// <summary>How far g, j, p, q, y and the comma hang below the baseline, in heights of capitals (measured on Inter: 0.28).</summary>
    private const double Hang = 0.28;

    /// <summary>The corners of a lettering, from the lower left, counter-clockwise; below the baseline where something hangs there.</summary>
    public static Vec2[] Corners(Lettering text)
    {
        Vec2 along = text.Along(),
            up = along.Left(),
            from = text.LeftEnd();
        double below = text.Text.IndexOfAny([.. "gjpqy,;()/Q"]) >= 0 ? Hang * text.HeightMm : 0;
        Vec2 foot = from - (below * up),
            width = text.WidthMm() * along,
            height = (text.HeightMm + below) * up;
        return [foot, foot + width, foot + width + height, foot + height];
    }

    /// <summary>Everything wrong with the letterings of a sheet, in words; empty where they are as they should be.</summary>
    public static IEnumerable<string> Faults(Drawing sheet, double leastHeightMm = 1.8)
    {
        Lettering[] texts = [.. sheet.Shapes.OfType<Lettering>()];
        Vec2[][] corners = [.. texts.Select(Corners)];
        (Vec2 low, Vec2 high) = Frame(sheet);
        for (int i = 0; i < texts.Length; i++)
        {
            if (texts[i].HeightMm < leastHeightMm)
            {
                yield return $"{sheet.Title}: \"{texts[i].Text}\" is {Mm(texts[i].HeightMm)} mm high";
            }

            if (
                corners[i]
                    .Any(p =>
                        p.X < low.X - 1e-6
                        || p.X > high.X + 1e-6
                        || p.Y < low.Y - 1e-6
                        || p.Y > high.Y + 1e-6
                    )
            )
            {
                yield return $"{sheet.Title}: \"{texts[i].Text}\" at {At(texts[i])} leaves the frame";
            }

            for (int j = 0; j < i; j++)
            {
                if (Overlap(corners[i], corners[j], ApartMm))
                {
                    yield return $"{sheet.Title}: \"{texts[i].Text}\" at {At(texts[i])} lies on \"{texts[j].Text}\" at {At(texts[j])}";
                }
            }
        }

        foreach (Polyline line in sheet.Shapes.OfType<Polyline>())
        {
            if (
                line.Points.Any(p =>
                    p.X < low.X - 0.01
                    || p.X > high.X + 0.01
                    || p.Y < low.Y - 0.01
                    || p.Y > high.Y + 0.01
                )
            )
            {
                yield return $"{sheet.Title}: a line on layer {line.Layer} leaves the frame";
            }
        }
    }

    /// <summary>Lines that run through letterings, in words.</summary>
    /// <param name="which">Which letterings are looked at.</param>
    public static IEnumerable<string> Struck(Drawing sheet, Func<Lettering, bool> which)
    {
        foreach (Lettering text in sheet.Shapes.OfType<Lettering>().Where(which))
        {
            Vec2[] box = Corners(text);
            foreach (Polyline line in sheet.Shapes.OfType<Polyline>())
            {
                int count = line.Closed ? line.Points.Length : line.Points.Length - 1;
                for (int i = 0; i < count; i++)
                {
                    Vec2 a = line.Points[i],
                        b = line.Points[(i + 1) % line.Points.Length];
                    if (line.Pen.WidthMm > 0 && Overlap(box, [a, b], 0))
                    {
                        yield return $"{sheet.Title}: a line on layer {line.Layer} runs through \"{text.Text}\" at {At(text)}";
                    }
                }
            }
        }
    }

    /// <summary>Dots and rings that come upon letterings, in words; a ring's own number stands in its middle.</summary>
    public static IEnumerable<string> Ringed(Drawing sheet) =>
        from circle in sheet.Shapes.OfType<CircleShape>()
        where circle.Pen.WidthMm > 0 || circle.Fill < 0.9
        from text in sheet.Shapes.OfType<Lettering>()
        where text.At.ChordTo(circle.Centre) > 1e-6 && Overlap(Corners(text), Octagon(circle), 0)
        select $"{sheet.Title}: a circle on layer {circle.Layer} comes upon \"{text.Text}\" at {At(text)}";

    /// <summary>Inside the circle, and so never told where there is nothing.</summary>
    private static Vec2[] Octagon(CircleShape circle) =>
        [
            .. Enumerable
                .Range(0, 8)
                .Select(i => Math.SinCos(i * Math.PI / 4))
                .Select(a => circle.Centre + (circle.RadiusMm * new Vec2(a.Cos, a.Sin))),
        ];

    /// <summary>The border of a framed sheet; the paper's edge where there is none.</summary>
    private static (Vec2 Low, Vec2 High) Frame(Drawing sheet)
    {
        Polyline? border = sheet
            .Shapes.OfType<Polyline>()
            .Where(p => p.Layer == "frame" && p.Closed && p.Points.Length == 4)
            .MaxBy(p =>
                (p.Points.Max(v => v.X) - p.Points.Min(v => v.X))
                * (p.Points.Max(v => v.Y) - p.Points.Min(v => v.Y))
            );
        return border is null
            ? (new Vec2(0, 0), new Vec2(sheet.WidthMm, sheet.HeightMm))
            : (
                new Vec2(border.Points.Min(v => v.X), border.Points.Min(v => v.Y)),
                new Vec2(border.Points.Max(v => v.X), border.Points.Max(v => v.Y))
            );
    }

    /// <summary>
    /// Whether two convex shapes come nearer than so much: no side of either separates them by it (separating axes). A shape of two points is a line.
    /// </summary>
    private static bool Overlap(Vec2[] a, Vec2[] b, double apartMm) =>
        !Parted(a, b, apartMm) && !Parted(b, a, apartMm);

    private static bool Parted(Vec2[] a, Vec2[] b, double apartMm)
    {
        for (int i = 0; i < a.Length; i++)
        {
            Vec2 side = a[(i + 1) % a.Length] - a[i];
            if (side.Norm == 0)
            {
                continue;
            }

            Vec2 across = side.Unit().Left();
            double aLow = a.Min(p => p.Dot(across)),
                aHigh = a.Max(p => p.Dot(across)),
                bLow = b.Min(p => p.Dot(across)),
                bHigh = b.Max(p => p.Dot(across));
            if (aHigh + apartMm <= bLow + 1e-9 || bHigh + apartMm <= aLow + 1e-9)
            {
                return true;
            }
        }

        return false;
    }

    private static string At(Lettering text) => $"({Mm(text.At.X)}, {Mm(text.At.Y)})";

    private static string Mm(double mm) => mm.ToString("0.0", CultureInfo.InvariantCulture);
}
