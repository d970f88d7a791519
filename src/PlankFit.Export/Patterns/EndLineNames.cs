using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Patterns;

/// <summary>
/// The name of every end line of a pattern in true size: which edge it meets, and at a bevelled end which face. The word stands on the plank, a thin line
/// leads from it to its own; a piece too small for them has its words beside it. Both are on the layer of the text, so that no machine takes them for work.
/// </summary>
internal static class EndLineNames
{
    /// <summary>Lines of the two faces nearer than this are one pencil line, mm.</summary>
    private const double ApartMm = 0.25;

    /// <summary>Of an edge's name, in the smallest letters.</summary>
    private const double NameMm = 16;

    private const double ClearMm = 1;
    private const double BesideMm = 4;

    /// <summary>Tried in turn: smaller where the plank is.</summary>
    private static readonly double[] Heights = [5, 3.5, 2.5, 1.8];

    /// <param name="shift">Added to the plank's own (s, n).</param>
    /// <param name="there">What is drawn already and must stay clear.</param>
    public static IEnumerable<Shape> Of(Plank plank, Vec2 shift, IEnumerable<Shape> there)
    {
        Vec2[] net = [.. Thinning.Closed(plank.FlatNet, 0.2).Select(p => p + shift)];
        Vec2 middle = Interior.DeepestPoint(net, out _);
        var taken = new List<Box>();
        var lines = new List<(Vec2 A, Vec2 B)>();
        foreach (Shape shape in there)
        {
            if (shape is Lettering text)
            {
                taken.Add(Segments.Around(text).Within(-ClearMm));
            }
            else if (
                shape is Polyline line
                && (
                    line.Layer is Layers.Marks or Layers.Behind
                    || line.Layer.StartsWith("fasten-", StringComparison.Ordinal)
                )
            )
            {
                lines.AddRange(Sides([.. Thinning.Open(line.Points, 0.2)], line.Closed));
            }
        }

        lines.AddRange(Sides(net, true));
        foreach ((string name, IReadOnlyList<Vec2> line, double[] parts) in Names(plank))
        {
            (Vec2 On, Vec2 At, Lettering Text, Box Box) place =
                Place(name, line, parts) ?? Beside(name, line, parts[0]);

            taken.Add(place.Box.Within(-ClearMm));
            lines.Add((place.On, place.At));
            yield return new Polyline(Layers.Text, Pens.Measure, [place.On, place.At], false);
            yield return place.Text;
        }

        (Vec2 On, Vec2 At, Lettering Text, Box Box)? Place(
            string name,
            IReadOnlyList<Vec2> line,
            double[] parts
        )
        {
            foreach (double height in Heights)
            {
                foreach (double part in parts)
                {
                    Vec2 on = Along(line, part) + shift,
                        inward = (middle - on).Unit();
                    for (double far = 3 * height; far < 12 * height; far += height)
                    {
                        Vec2 at = on + (far * inward);
                        Lettering text = new(
                            Layers.Text,
                            Pen.Thin,
                            at + new Vec2(inward.X >= 0 ? 1 : -1, 0),
                            name,
                            height,
                            inward.X >= 0 ? Anchor.MiddleLeft : Anchor.MiddleRight
                        );
                        Box box = Segments.Around(text);
                        if (IsFree(box, on, at))
                        {
                            return (on, at, text, box);
                        }
                    }
                }
            }

            return null;
        }

        // A corner piece too small for its words has them to its right, one under the other.
        (Vec2 On, Vec2 At, Lettering Text, Box Box) Beside(
            string name,
            IReadOnlyList<Vec2> line,
            double part
        )
        {
            double height = Heights[^2];
            var cut = Box.Around(plank.FlatCut);
            Vec2 on = Along(line, part) + shift,
                at = shift + new Vec2(cut.Right + BesideMm, cut.Top - height);
            while (true)
            {
                Lettering text = new(
                    Layers.Text,
                    Pen.Thin,
                    at + new Vec2(1, 0),
                    name,
                    height,
                    Anchor.MiddleLeft
                );
                Box box = Segments.Around(text);
                if (!taken.Any(t => t.Overlaps(box)))
                {
                    return (on, at, text, box);
                }

                at -= new Vec2(0, height);
            }
        }

        bool IsFree(Box box, Vec2 on, Vec2 at) =>
            FlatPolygon.Holds(net, box.Middle)
            && !taken.Any(t => t.Overlaps(box) || Segments.Clip(on, at, t) is not null)
            && !lines.Any(l => Segments.Clip(l.A, l.B, box.Within(-ClearMm)) is not null);
    }

    /// <summary>Each line with its name and the parts of its length at which a leader may meet it; leaders to the two faces keep apart.</summary>
    private static IEnumerable<(string Name, IReadOnlyList<Vec2> Line, double[] Parts)> Names(
        Plank plank
    )
    {
        foreach (PlankEnd end in plank.Ends)
        {
            // The line of a panel may have any name, and a small piece has no room for it.
            string edge = Letters.Shortened(end.Word, Letters.Small, NameMm);
            if (
                end.OuterLine.Length > 1
                && end.InnerLine.Length > 1
                && end.OuterLine[0].ChordTo(end.InnerLine[0]) > ApartMm
            )
            {
                yield return ($"{edge}, outer face", end.OuterLine, [0.65, 0.8, 0.5, 0.35]);
                yield return ($"{edge}, inner face", end.InnerLine, [0.35, 0.2, 0.5, 0.65]);
            }
            else if (end.NetLine.Length > 1)
            {
                yield return ($"{edge}, net end", end.NetLine, [0.5, 0.65, 0.35, 0.8, 0.2]);
            }
        }
    }

    private static IEnumerable<(Vec2 A, Vec2 B)> Sides(IReadOnlyList<Vec2> points, bool closed)
    {
        for (int i = 1; i < points.Count; i++)
        {
            yield return (points[i - 1], points[i]);
        }

        if (closed)
        {
            yield return (points[^1], points[0]);
        }
    }

    /// <summary>The point at a part of a chain's length.</summary>
    private static Vec2 Along(IReadOnlyList<Vec2> line, double part)
    {
        double left =
            part * Enumerable.Range(1, line.Count - 1).Sum(i => line[i].ChordTo(line[i - 1]));
        for (int i = 1; i < line.Count; i++)
        {
            double here = line[i].ChordTo(line[i - 1]);
            if (left <= here && here > 0)
            {
                return line[i - 1] + (left / here * (line[i] - line[i - 1]));
            }

            left -= here;
        }

        return line[^1];
    }
}
