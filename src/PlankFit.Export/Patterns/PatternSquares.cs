namespace PlankFit.Export.Patterns;

/// <summary>Squares on a pattern's page to lay a rule against before anything is cut: 100 mm, and 4 in where inches are used.</summary>
internal static class PatternSquares
{
    public const double MetricMm = 100;

    public static void Draw(SheetCanvas pad, bool metric, double left, double bottom)
    {
        Square(pad, left, bottom, MetricMm, "100 mm both ways");
        if (!metric)
        {
            Square(pad, left + MetricMm + 8, bottom, 101.6, "4\" both ways");
        }
    }

    private static void Square(
        SheetCanvas pad,
        double left,
        double bottom,
        double side,
        string text
    )
    {
        pad.Rectangle(new(left, bottom, left + side, bottom + side), Pens.Measure);
        pad.Text(
            left + (side / 2),
            bottom + (side / 2),
            text,
            Letters.Heading,
            Anchor.MiddleCentre
        );
    }
}
