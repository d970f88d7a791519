using System.Collections.Immutable;
using PlankFit.Draughting.Layout;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>Full-size drawings on paper: cut into pages for a printer at home, or on one long page for a shop with a roll.</summary>
public static class Tiler
{
    private static readonly Pen Frame = new(0.09, 0.6);

    /// <summary>Pages of one paper size, in reading order, each with its crosses, check square, code and map.</summary>
    public static ImmutableArray<Drawing> Pages(Drawing drawing, TilingOptions options)
    {
        var grid = TileGrid.Of(drawing, options);
        // A word on the edge of a page would lie on the next by half.
        Drawing settled = drawing with
        {
            Shapes = SettledWords.Of(drawing.Shapes, [.. grid.Tiles.Select(t => ToBox(t.Window))]),
        };
        return [.. grid.Tiles.Select(tile => Page(settled, grid, tile, options))];
    }

    /// <summary>One page as large as the drawing asks; a PDF takes no page longer than 5,080 mm.</summary>
    public static Drawing LongPage(Drawing given, TilingOptions options)
    {
        DrawingFaults.Refuse(given);
        Drawing drawing = given with
        {
            Shapes = SettledWords.Of(given.Shapes, [new(0, 0, given.WidthMm, given.HeightMm)]),
        };

        // A narrow drawing still gets a window that holds its check squares.
        var room = new Vec2(
            Math.Max(drawing.WidthMm, options.Inches ? 236 : 130),
            Math.Max(drawing.HeightMm, 130)
        );
        Vec2 least = -0.5 * (room - new Vec2(drawing.WidthMm, drawing.HeightMm));
        if (
            CheckSquares.Clear(new(least, least + room), drawing.Shapes, options.Inches)
            is not { } squares
        )
        {
            var band = new Vec2(0, CheckSquares.BandMm);
            (least, room) = (least - band, room + band);
            squares = CheckSquares.InBand(least, options.Inches);
        }

        Vec2 move = Corner(options) - least;
        return new(
            drawing.Title,
            room.X + (2 * options.MarginMm),
            room.Y + (2 * options.MarginMm) + TilingOptions.FooterMm,
            [
                .. drawing.Shapes.Concat(squares).Select(shape => Placed.By(shape, move)),
                .. PageFooter.OfLongPage(
                    drawing.Title,
                    new(options.MarginMm, options.MarginMm),
                    room.X
                ),
            ]
        );
    }

    private static Drawing Page(Drawing drawing, TileGrid grid, Tile tile, TilingOptions options)
    {
        var shown = TileContent.In(drawing, tile.Window, grid.Tiles).ToList();
        (Vec2 least, Vec2 most) = (tile.Window.Least, tile.Window.Most);
        ImmutableArray<Vec2> frame = [least, new(most.X, least.Y), most, new(least.X, most.Y)];
        Vec2 move = Corner(options) - least;
        IEnumerable<Shape> onWindow = new Shape[]
        {
            new Polyline(PageFooter.Layer, Frame, frame, true),
        }
            .Concat(shown)
            .Concat(CheckSquares.OnPage(tile.Window, options.Inches))
            .Concat(SeamCrosses.Of(grid, tile, drawing.Shapes));
        return new(
            $"{drawing.Title}, page {tile.Code}",
            grid.PageWidthMm,
            grid.PageHeightMm,
            [
                .. onWindow.Select(shape => Placed.By(shape, move)),
                .. PageFooter.OfTile(
                    grid,
                    tile,
                    drawing.Title,
                    new(options.MarginMm, options.MarginMm),
                    tile.Window.Width
                ),
            ]
        );
    }

    private static Box ToBox(Window window) =>
        new(window.Least.X, window.Least.Y, window.Most.X, window.Most.Y);

    /// <summary>Where the window's lower left corner lies on the page.</summary>
    private static Vec2 Corner(TilingOptions options) =>
        new(options.MarginMm, options.MarginMm + TilingOptions.FooterMm);
}
