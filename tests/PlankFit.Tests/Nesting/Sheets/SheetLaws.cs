using NetTopologySuite.Geometries;
using PlankFit.Tests.Nesting.Sheets.Guillotine;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting.Sheets;

/// <summary>What every cutting of a sheet must keep, asked of its rectangles by NetTopologySuite and of its tree of cuts by walking it.</summary>
internal static class SheetLaws
{
    /// <summary>Sums of doubles, mm.</summary>
    private const double Near = 1e-6;

    private static readonly GeometryFactory Nts = new();

    public static List<string> Broken(
        double lengthMm,
        double widthMm,
        IReadOnlyList<SheetItem> items,
        double kerfMm,
        SheetCutting cutting
    )
    {
        List<string> broken = [];
        Envelope sheet = new(-Near, lengthMm + Near, -Near, widthMm + Near);
        Polygon[] boxes = [.. cutting.Places.Select(p => Box(p.Box))];
        for (int i = 0; i < boxes.Length; i++)
        {
            SheetItem item = items[cutting.Places[i].Item];
            if (!sheet.Contains(boxes[i].EnvelopeInternal))
            {
                broken.Add($"rectangle {i} is not inside the sheet");
            }

            if (
                Math.Abs(boxes[i].EnvelopeInternal.Width - item.LengthMm) > Near
                || Math.Abs(boxes[i].EnvelopeInternal.Height - item.WidthMm) > Near
            )
            {
                broken.Add($"rectangle {i} is not as large as asked, or turned");
            }

            for (int j = 0; j < i; j++)
            {
                if (boxes[i].Common(boxes[j]).Area > Near)
                {
                    broken.Add($"rectangles {j} and {i} overlap");
                }

                double apart = boxes[i].Distance(boxes[j]);
                if (apart < kerfMm - Near)
                {
                    broken.Add($"rectangles {j} and {i} are {apart} mm apart");
                }
            }
        }

        foreach (IGrouping<int, SheetPlace> many in cutting.Places.GroupBy(p => p.Item))
        {
            if (many.Count() > (items[many.Key].Most ?? int.MaxValue))
            {
                broken.Add($"item {many.Key} is cut {many.Count()} times");
            }
        }

        double value = cutting.Places.Sum(p => items[p.Item].Value);
        if (Math.Abs(value - cutting.Value) > 1e-9 * (1 + Math.Abs(value)))
        {
            broken.Add($"worth {value}, and {cutting.Value} is said");
        }

        if (cutting.UpperBound < value * (1 - 1e-9))
        {
            broken.Add($"worth {value}, more than the bound {cutting.UpperBound}");
        }

        List<SheetPlace> leaves = [];
        broken.AddRange(Tree(cutting.Cuts, new(0, 0, lengthMm, widthMm), items, kerfMm, leaves));
        if (!leaves.ToHashSet().SetEquals(cutting.Places) || leaves.Count != cutting.Places.Length)
        {
            broken.Add("the tree of cuts and the list of rectangles are not the same");
        }

        return broken;
    }

    /// <summary>Every node is the box that the cuts above it leave, every cut goes from edge to edge of it, and every leaf holds its rectangle.</summary>
    private static IEnumerable<string> Tree(
        SheetNode node,
        SheetBox box,
        IReadOnlyList<SheetItem> items,
        double kerfMm,
        List<SheetPlace> leaves
    )
    {
        if (!Same(node.Box, box))
        {
            yield return $"a part is said to be {node.Box}, and the cuts leave {box}";
        }

        if (node.Item is { } k)
        {
            if (items[k].LengthMm > box.LengthMm + Near || items[k].WidthMm > box.WidthMm + Near)
            {
                yield return $"item {k} is larger than {box}";
            }

            leaves.Add(
                new(k, node.Box with { LengthMm = items[k].LengthMm, WidthMm = items[k].WidthMm })
            );
        }

        if (node.First is null)
        {
            yield break;
        }

        double first = node.AtMm - (node.AcrossLength ? box.X : box.Y),
            second = (node.AcrossLength ? box.LengthMm : box.WidthMm) - first - kerfMm;
        if (first <= 0 || second <= 0)
        {
            yield return $"a cut at {node.AtMm} is not inside {box}";
        }

        SheetBox one = node.AcrossLength
                ? box with
                {
                    LengthMm = first,
                }
                : box with
                {
                    WidthMm = first,
                },
            two = node.AcrossLength
                ? box with
                {
                    X = node.AtMm + kerfMm,
                    LengthMm = second,
                }
                : box with
                {
                    Y = node.AtMm + kerfMm,
                    WidthMm = second,
                };
        foreach (
            string fault in Tree(node.First, one, items, kerfMm, leaves)
                .Concat(Tree(node.Second!, two, items, kerfMm, leaves))
        )
        {
            yield return fault;
        }
    }

    private static bool Same(SheetBox a, SheetBox b) =>
        Math.Abs(a.X - b.X) < Near
        && Math.Abs(a.Y - b.Y) < Near
        && Math.Abs(a.LengthMm - b.LengthMm) < Near
        && Math.Abs(a.WidthMm - b.WidthMm) < Near;

    private static Polygon Box(SheetBox b) =>
        (Polygon)Nts.ToGeometry(new Envelope(b.X, b.X + b.LengthMm, b.Y, b.Y + b.WidthMm));
}
