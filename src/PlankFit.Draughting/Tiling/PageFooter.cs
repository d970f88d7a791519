using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>Under each page's window: its code, the drawing's title, how to print and to lay the pages together, and a map of all pages.</summary>
internal static class PageFooter
{
    public const string Layer = "page";

    private const double MapWidthMm = 40;
    private const double MapHeightMm = 17;
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
        yield return Fitted(title, left + new Vec2(0, 12.5), 3.2, room, true);
        yield return Fitted(
            $"Page {page} of {grid.Tiles.Length}. {HowToPrint}",
            left + new Vec2(0, 7.5),
            2.4,
            room,
            false
        );
        yield return Fitted(
            "Lay cross upon cross, codes beside codes; measure the check square.",
            left + new Vec2(0, 3),
            2.4,
            room,
            false
        );
        foreach (Shape shape in Map(grid, tile, corner + new Vec2(width, 0)))
        {
            yield return shape;
        }
    }

    public static IEnumerable<Shape> OfLongPage(string title, Vec2 corner, double width) =>
        [
            Fitted(title, corner + new Vec2(0, 12), 4, width, true),
            Fitted(
                $"{HowToPrint} Measure the check square before you cut.",
                corner + new Vec2(0, 5),
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

    /// <summary>Lettering no wider than its room: smaller first, then shortened.</summary>
    private static Lettering Fitted(string text, Vec2 at, double height, double room, bool bold)
    {
        const double Smallest = 2;
        text = LetterWidths.Drawable(text, bold);
        double width = LetterWidths.TextWidth(text, height, bold);
        double fitting = width <= room ? height : Math.Max(Smallest, height * room / width);
        while (text.Length > 1 && LetterWidths.TextWidth(text, fitting, bold) > room)
        {
            text = text[..^2].TrimEnd() + "…";
        }

        return new Lettering(Layer, Pen.Thin, at, text, fitting, Bold: bold);
    }
}
