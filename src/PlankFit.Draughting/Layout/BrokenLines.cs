using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Lines that stop short of the letterings on a sheet and go on behind them; what is filled stays whole.</summary>
internal static class BrokenLines
{
    private const double ClearMm = 0.3;

    /// <summary>A stump shorter than this looks like a slip of the pen, mm.</summary>
    private const double StumpMm = 0.8;

    public static ImmutableArray<Shape> Of(ImmutableArray<Shape> shapes, string[] layers)
    {
        (Vec2[] Quad, Box Box)[] words =
        [
            .. shapes
                .OfType<Lettering>()
                .Select(l => Quads.Tight(l, ClearMm))
                .Select(q => (q, Box.Around(q))),
        ];
        return
        [
            .. shapes.SelectMany(s =>
                s is Polyline line && line.Pen.WidthMm > 0 && layers.Contains(line.Layer)
                    ? Of(line, words)
                    : [s]
            ),
        ];
    }

    private static IEnumerable<Shape> Of(Polyline line, (Vec2[] Quad, Box Box)[] words)
    {
        Box around = Box.Around(line.Points).Within(-ClearMm);
        Vec2[][] there =
        [
            .. words
                .Where(w => w.Box.Overlaps(around) && Quads.Struck(line, w.Quad))
                .Select(w => w.Quad),
        ];
        if (there.Length == 0)
        {
            yield return line;
            yield break;
        }

        if (line.Fill is not null)
        {
            yield return line with
            {
                Pen = Pens.None,
            };
        }

        Vec2[] chain = line.Closed ? [.. line.Points, line.Points[0]] : [.. line.Points];
        foreach (List<Vec2> part in Quads.Outside(chain, there))
        {
            if (part.Zip(part.Skip(1), (a, b) => a.ChordTo(b)).Sum() > StumpMm)
            {
                yield return new Polyline(line.Layer, line.Pen, [.. part], false);
            }
        }
    }
}
