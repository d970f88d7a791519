using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>One page's place: row 0 at the top, column 0 at the left, and its window in the drawing.</summary>
public sealed record Tile(int Row, int Column, Window Window)
{
    /// <summary>The row as a letter, the column as a number: "B3".</summary>
    public string Code { get; } =
        RowName(Row) + (Column + 1).ToString(CultureInfo.InvariantCulture);

    private static string RowName(int row) =>
        row < 26
            ? ((char)('A' + row)).ToString()
            : RowName((row / 26) - 1) + (char)('A' + (row % 26));
}

/// <summary>The pages that a drawing is cut into: all windows of one size, overlapping alike, the drawing in their middle.</summary>
/// <param name="Tiles">In reading order; those on which nothing is drawn are left out.</param>
public sealed record TileGrid(
    double PageWidthMm,
    double PageHeightMm,
    double OverlapMm,
    int Rows,
    int Columns,
    ImmutableArray<Tile> Tiles
)
{
    /// <summary>Upright or lying, whichever takes fewer pages; upright where it makes no difference.</summary>
    public static TileGrid Of(Drawing drawing, TilingOptions options)
    {
        if (!(options.OverlapMm >= 10 && options.MarginMm >= 0 && options.MarginMm <= 25))
        {
            throw new ArgumentException(
                $"Pages with an overlap of {options.OverlapMm} mm and margins of {options.MarginMm} mm: at least 10 mm are wanted for the one, 0 to 25 mm for the other."
            );
        }

        DrawingFaults.Refuse(drawing);
        (double width, double height) = options.Upright;
        TileGrid upright = Of(drawing, options, width, height);
        TileGrid lying = Of(drawing, options, height, width);
        return lying.Tiles.Length < upright.Tiles.Length ? lying : upright;
    }

    private static TileGrid Of(Drawing drawing, TilingOptions options, double width, double height)
    {
        double windowWidth = width - (2 * options.MarginMm);
        double windowHeight = height - (2 * options.MarginMm) - TilingOptions.FooterMm;
        int columns = Count(drawing.WidthMm, windowWidth, options.OverlapMm);
        int rows = Count(drawing.HeightMm, windowHeight, options.OverlapMm);
        double left = Start(drawing.WidthMm, windowWidth, options.OverlapMm, columns);
        double bottom = Start(drawing.HeightMm, windowHeight, options.OverlapMm, rows);
        if (options.FromCorner)
        {
            (left, bottom) = (0, 2 * bottom);
        }

        ImmutableArray<Tile>.Builder tiles = ImmutableArray.CreateBuilder<Tile>();
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                var least = new Vec2(
                    left + (column * (windowWidth - options.OverlapMm)),
                    bottom + ((rows - 1 - row) * (windowHeight - options.OverlapMm))
                );
                var window = new Window(least, least + new Vec2(windowWidth, windowHeight));
                if (TileContent.IsAnyIn(drawing, window))
                {
                    tiles.Add(new Tile(row, column, window));
                }
            }
        }

        return new(width, height, options.OverlapMm, rows, columns, tiles.DrainToImmutable());
    }

    private static int Count(double length, double window, double overlap) =>
        Math.Max(1, (int)Math.Ceiling((length - overlap) / (window - overlap)));

    private static double Start(double length, double window, double overlap, int count) =>
        (length - ((count * (window - overlap)) + overlap)) / 2;
}
