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

    /// <summary>The same of a page's footer: letters that hang keep off the line below.</summary>
    private const double Apart = 1.65;
    private const string Measure = "measure the thick line of the frame.";
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
        string said =
            grid.Tiles.Length == 1
                ? $"{HowToPrint} {Measure}"
                : $"Page {page} of {grid.Tiles.Length}. {HowToPrint} Lay cross upon cross, codes beside codes; {Measure}";
        foreach (Lettering line in Words(title, said, left, room))
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

    /// <summary>The title and below it what to do, in letters as large as the footer holds.</summary>
    private static IEnumerable<Lettering> Words(string title, string said, Vec2 left, double room)
    {
        const double Smallest = 1.8,
            Largest = 3.2,
            HighMm = 17;
        for (double height = Largest; ; height -= 0.1)
        {
            double size = Math.Max(Smallest, height),
                lesser = Math.Max(Smallest, 0.75 * size);
            IReadOnlyList<string> names = Letters.Wrap(
                    LetterWidths.Drawable(title, true),
                    size,
                    room,
                    true
                ),
                words = Letters.Wrap(said, lesser, room);
            double high = Apart * ((names.Count * size) + (words.Count * lesser));
            if (high > HighMm && size > Smallest)
            {
                continue;
            }

            Vec2 at = left + new Vec2(0, HighMm + 0.5);
            return
            [
                .. names.Select((n, i) => Line(n, i, size, true)),
                .. words.Select(
                    (w, i) =>
                        Line(w, i, lesser, false) with
                        {
                            At =
                                at
                                - new Vec2(
                                    0,
                                    (Apart * names.Count * size) + (lesser * (1 + (i * Apart)))
                                ),
                        }
                ),
            ];

            Lettering Line(string text, int i, double of, bool bold) =>
                new(
                    Layer,
                    Pen.Thin,
                    at - new Vec2(0, of * (1 + (i * Apart))),
                    text,
                    of,
                    Bold: bold
                );
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
