using System.Globalization;
using PlankFit.Geometry.Primitives;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Nest;

/// <summary>
/// What a cut sheet must not do, whatever job it is of: a letter on a letter, a line or an arrow through a letter or a ring, rings on each other, anything beyond
/// the frame or smaller than what can be read. Judged by what is drawn alone.
/// </summary>
internal static class StripLaws
{
    private const double LeastLetterMm = 1.8;

    /// <summary>Lines end at a ring, on its own line.</summary>
    private const double RingLineMm = 0.1;

    public static IEnumerable<string> Faults(Drawing sheet) =>
        SheetCheck
            .Faults(sheet, LeastLetterMm)
            .Concat(SheetCheck.Struck(sheet, _ => true))
            .Concat(
                Rings(sheet)
                    .Concat(Dark(sheet))
                    .Concat(BrokenFigures.In(sheet))
                    .Select(f => $"{sheet.Title}: {f}")
            );

    /// <summary>Rings are clear of each other, of letters that are not their own and of every line.</summary>
    private static IEnumerable<string> Rings(Drawing sheet)
    {
        CircleShape[] rings = [.. sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill == 1)];
        Lettering[] texts = [.. sheet.Shapes.OfType<Lettering>()];
        for (int i = 0; i < rings.Length; i++)
        {
            CircleShape ring = rings[i];
            Lettering[] own = [.. texts.Where(t => t.At.ChordTo(ring.Centre) < 1e-9)];
            if (own.Length != 1)
            {
                yield return $"the ring at {At(ring.Centre)} has {own.Length} numbers";
            }
            else if (own[0].WidthMm() > 2 * ring.RadiusMm)
            {
                yield return $"{own[0].Text} is wider than its ring at {At(ring.Centre)}";
            }

            foreach (CircleShape other in rings.Take(i))
            {
                if (other.Centre.ChordTo(ring.Centre) < other.RadiusMm + ring.RadiusMm)
                {
                    yield return $"rings on each other at {At(ring.Centre)}";
                }
            }

            foreach (Lettering text in texts.Except(own))
            {
                if (Distance(SheetCheck.Corners(text), ring.Centre) < ring.RadiusMm)
                {
                    yield return $"\"{text.Text}\" stands in the ring at {At(ring.Centre)}";
                }
            }

            foreach (Polyline line in sheet.Shapes.OfType<Polyline>())
            {
                if (
                    line.Pen.WidthMm > 0
                    && Distance(line, ring.Centre) < ring.RadiusMm - RingLineMm
                )
                {
                    yield return $"a line on layer {line.Layer} runs through the ring at {At(ring.Centre)}";
                }
            }
        }
    }

    /// <summary>Heads of arrows and dots are clear of letters and rings.</summary>
    private static IEnumerable<string> Dark(Drawing sheet)
    {
        Lettering[] texts = [.. sheet.Shapes.OfType<Lettering>()];
        CircleShape[] rings = [.. sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill == 1)];
        foreach (Polyline head in sheet.Shapes.OfType<Polyline>().Where(p => p.Fill < 0.5))
        {
            if (texts.Any(t => head.Points.Any(p => Distance(SheetCheck.Corners(t), p) == 0)))
            {
                yield return $"an arrow's head stands on letters at {At(head.Points[0])}";
            }

            if (rings.Any(r => Distance(head, r.Centre) < r.RadiusMm - RingLineMm))
            {
                yield return $"an arrow's head stands in a ring at {At(head.Points[0])}";
            }
        }

        foreach (CircleShape dot in sheet.Shapes.OfType<CircleShape>().Where(c => c.Fill < 0.5))
        {
            if (texts.Any(t => Distance(SheetCheck.Corners(t), dot.Centre) < dot.RadiusMm))
            {
                yield return $"a dot stands on letters at {At(dot.Centre)}";
            }

            if (rings.Any(r => r.Centre.ChordTo(dot.Centre) < r.RadiusMm))
            {
                yield return $"a dot stands in a ring at {At(dot.Centre)}";
            }
        }
    }

    private static double Distance(Polyline line, Vec2 p) =>
        line.Closed && line.Fill < 0.5
            ? Distance([.. line.Points], p)
            : Enumerable
                .Range(0, line.Closed ? line.Points.Length : line.Points.Length - 1)
                .Min(i => Distance(line.Points[i], line.Points[(i + 1) % line.Points.Length], p));

    /// <summary>From a convex shape, whichever way it turns; nought inside it.</summary>
    private static double Distance(Vec2[] shape, Vec2 p)
    {
        (Vec2 A, Vec2 B)[] sides = [.. shape.Select((a, i) => (a, shape[(i + 1) % shape.Length]))];
        double[] turns = [.. sides.Select(s => (s.B - s.A).Cross(p - s.A))];
        return turns.All(t => t >= 0) || turns.All(t => t <= 0)
            ? 0
            : sides.Min(s => Distance(s.A, s.B, p));
    }

    private static double Distance(Vec2 a, Vec2 b, Vec2 p)
    {
        Vec2 side = b - a;
        double along = side.Norm > 0 ? Math.Clamp((p - a).Dot(side) / side.Dot(side), 0, 1) : 0;
        return p.ChordTo(a + (along * side));
    }

    private static string At(Vec2 p) =>
        string.Create(CultureInfo.InvariantCulture, $"({p.X:0.0}, {p.Y:0.0})");
}
