using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Sheets;

/// <summary>The arrow that says which way is forward.</summary>
internal static class ForwardArrow
{
    /// <summary>A plain arrow with a solid head, its middle at a point.</summary>
    public static void Draw(SheetCanvas pad, Vec2 middle, Vec2 direction, double lengthMm)
    {
        Vec2 d = direction.Unit(),
            tip = middle + (lengthMm / 2 * d),
            tail = middle - (lengthMm / 2 * d),
            neck = tip - (0.3 * lengthMm * d);
        pad.Line(tail, neck, Pens.Cut);
        pad.Closed(
            [tip, neck + (0.13 * lengthMm * d.Left()), neck - (0.13 * lengthMm * d.Left())],
            Pens.Cut,
            Layers.Marks,
            0
        );
    }

    public static void InBlock(SheetCanvas pad, Box cell, TitleBlock block)
    {
        if (block.Forward is { } d)
        {
            pad.Text(
                cell.Middle.X,
                cell.Top - 4.2,
                "forward",
                Letters.Small,
                Anchor.BaselineCentre
            );
            Draw(pad, new(cell.Middle.X, cell.Bottom + 5.5), d, 9);
        }
        else
        {
            pad.Paragraph(cell.Left, cell.Top - 2.4, cell.Width, block.Arrow, Letters.Small);
        }
    }

    /// <summary>
    /// The direction of forward on a flat plank (s, n): that in which the hull's x falls fastest over the net outline, by least squares, so that it
    /// holds for every plank however it lies.
    /// </summary>
    public static Vec2 OnFlat(Plank plank)
    {
        int count = plank.FlatNet.Length;
        double sMean = plank.FlatNet.Average(p => p.X),
            nMean = plank.FlatNet.Average(p => p.Y),
            xMean = plank.Outline.Average(p => p.X),
            ss = 0,
            sn = 0,
            nn = 0,
            sx = 0,
            nx = 0;
        for (int i = 0; i < count; i++)
        {
            double s = plank.FlatNet[i].X - sMean,
                n = plank.FlatNet[i].Y - nMean,
                x = plank.Outline[i].X - xMean;
            ss += s * s;
            sn += s * n;
            nn += n * n;
            sx += s * x;
            nx += n * x;
        }

        return new Vec2((sn * nx) - (nn * sx), (sn * sx) - (ss * nx)).Unit();
    }
}
