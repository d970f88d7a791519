using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Comparing;

/// <summary>Pictures in rows and columns on pages: as few pages as can be, and of the grids with so few that with the largest pictures.</summary>
internal readonly record struct PictureGrid(int Across, int Down, double CellWidthMm, double RowMm)
{
    private const int Fewest = 3,
        Most = 5;
    private const double GapMm = 6,
        RowGapMm = 3;

    /// <param name="tall">What a picture and its words take up the page, mm, where so many stand side by side.</param>
    public static PictureGrid Of(int count, Box inside, Func<int, double> tall) =>
        Enumerable
            .Range(Fewest, Most - Fewest + 1)
            .Select(across =>
            {
                double each = tall(across);
                int down = Math.Max(1, (int)((inside.Height + RowGapMm) / (each + RowGapMm)));
                return new PictureGrid(
                    across,
                    down,
                    CellMm(inside, across),
                    // What is left over stands between the rows and not below the last.
                    (inside.Height + RowGapMm) / down
                );
            })
            .MinBy(g => ((count - 1) / (g.Across * g.Down), g.Across));

    /// <summary>How wide each is where so many stand side by side, mm.</summary>
    public static double CellMm(Box inside, int across) =>
        (inside.Width - ((across - 1) * GapMm)) / across;

    /// <summary>The upper left corner of one of a page's.</summary>
    public Vec2 Corner(Box inside, int place) =>
        new(
            inside.Left + (place % Across * (CellWidthMm + GapMm)),
            inside.Top - (place / Across * RowMm)
        );
}
