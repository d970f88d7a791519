using System.Collections.Immutable;
using PlankFit.Draughting.Layout;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>Under each page's window: its code, the drawing's title, how to print and to lay the pages together, and a map of all pages.</summary>
internal static class PageFooter
{
    public const string Layer = "page";

    private const double MapWidthMm = 40;
    private const double MapHeightMm = 17;

    /// <summary>Baseline to baseline, in heights of capitals.</summary>
    private const double Leading = 1.45;
    private const string HowToPrint = "Full size: print at 100 %, never fitted to the page.";

    public static IEnumerable<Shape> OfTile(
        TileGrid grid,
        Tile tile,
        string title,
        Vec2 corner,
        double width
    )
    {
        var code = new Lettering(
            Layer,
            Pen.Thin,
            corner + new Vec2(0, 6),
            tile.Code,
            8,
            Bold: true
        );
        yield return code;
        Vec2 left = corner + new Vec2(Math.Max(24, code.WidthMm() + 5), 0);
        double room = width - (left.X - corner.X) - MapWidthMm - 4;
        int page = grid.Tiles.IndexOf(tile) + 1;
        foreach (
            Lettering line in Lines(title, left + new Vec2(0, 15.7), 3.2, room, true)
                .Concat(
                    Lines(
                        $"Page {page} of {grid.Tiles.Length}. {HowToPrint} Lay cross upon cross, codes beside codes; measure the thick line of the frame.",
                        left + new Vec2(0, 8.2),
                        2.4,
                        room,
                        false
                    )
                )
        )
        {
            yield return line;
        }

        foreach (Shape shape in Map(grid, tile, corner + new Vec2(width, 0)))
        {
            yield return shape;
        }
    }

    public static IEnumerable<Shape> OfLongPage(string title, Vec2 corner, double width) =>
        [
            .. Lines(title, corner + new Vec2(0, 16), 4, width, true),
            .. Lines(
                $"{HowToPrint} Measure the check square before you cut.",
                corner + new Vec2(0, 7.8),
                2.8,
                width,
                false
            ),
        ];

    /// <summary>All pages, in the footer's right corner; this one black, those on which nothing is drawn left out.</summary>
    private static IEnumerable<Shape> Map(TileGrid grid, Tile here, Vec2 corner)
    {
        double cell = Math.Min(
            MapWidthMm / (grid.Columns * grid.PageWidthMm),
            MapHeightMm / (grid.Rows * grid.PageHeightMm)
        );
        var size = new Vec2(cell * grid.PageWidthMm, cell * grid.PageHeightMm);
        foreach (Tile tile in grid.Tiles)
        {
            Vec2 least =
                corner
                + new Vec2(
                    (tile.Column - grid.Columns) * size.X,
                    (grid.Rows - 1 - tile.Row) * size.Y
                );
            ImmutableArray<Vec2> points =
            [
                least,
                least + new Vec2(size.X, 0),
                least + size,
                least + new Vec2(0, size.Y),
            ];
            yield return new Polyline(Layer, Pen.Thin, points, true, tile == here ? 0.25 : null);
        }
    }

    /// <summary>Words within their room, nothing of them cut off: in one line as they are, else in lines of smaller letters.</summary>
    /// <param name="top">Of the first line's capitals.</param>
    private static IEnumerable<Lettering> Lines(
        string text,
        Vec2 top,
        double height,
        double room,
        bool bold
    )
    {
        const double Smallest = 1.8,
            LinesHighMm = 6.2;
        text = LetterWidths.Drawable(text, bold);
        IReadOnlyList<string> lines = Letters.Wrap(text, height, room, bold);
        while (height > Smallest && ((lines.Count - 1) * Leading * height) + height > LinesHighMm)
        {
            height = Math.Max(Smallest, height - 0.1);
            lines = Letters.Wrap(text, height, room, bold);
        }

        return lines.Select(
            (line, i) =>
                new Lettering(
                    Layer,
                    Pen.Thin,
                    top - new Vec2(0, height * (1 + (i * Leading))),
                    line,
                    height,
                    Bold: bold
                )
        );
    }
}
