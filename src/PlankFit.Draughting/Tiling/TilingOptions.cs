namespace PlankFit.Draughting.Tiling;

/// <summary>How a large drawing is cut into pages.</summary>
/// <param name="MarginMm">White on all four sides; home printers want 5 to 10 mm.</param>
/// <param name="OverlapMm">What neighbouring pages have in common; the crosses lie in its middle, so at least 10 mm.</param>
/// <param name="Inches">Whether a 4 inch check square is wanted beside the one of 100 mm.</param>
public sealed record TilingOptions(
    Paper Paper,
    double MarginMm = 10,
    double OverlapMm = 12,
    bool Inches = false
)
{
    /// <summary>Whether the first page begins at the drawing's upper left corner, where its words are; else the drawing lies in the pages' middle.</summary>
    public bool FromCorner { get; init; }

    /// <summary>Under the window of each page: the page's code, the title, what to do, the map.</summary>
    internal const double FooterMm = 20;

    /// <summary>A sheet of its own size in place of the paper, mm: for a roll.</summary>
    public (double WidthMm, double HeightMm)? Sheet { get; init; }

    /// <summary>Width and height, upright. A4 and A3: ISO 216; Letter: 8 1/2 by 11 in.</summary>
    internal (double Width, double Height) Upright =>
        Sheet
        ?? Paper switch
        {
            Paper.A3 => (297, 420),
            Paper.Letter => (8.5 * 25.4, 11 * 25.4),
            _ => (210, 297),
        };
}

/// <summary>What a page is printed on.</summary>
public enum Paper
{
    A4,
    A3,
    Letter,
}
