namespace PlankFit.Export.Views;

/// <summary>Names of stations in a row, each over its own mark; where they would crowd some are left out.</summary>
internal static class StationNames
{
    private const double ApartMm = 2;

    /// <param name="marks">The name and where its station stands across the sheet.</param>
    /// <param name="baseline">Of the names, up the sheet.</param>
    public static void Row(
        SheetCanvas pad,
        IEnumerable<(string Name, double X)> marks,
        double baseline
    )
    {
        double taken = double.NegativeInfinity;
        foreach ((string name, double x) in marks.OrderBy(m => m.X))
        {
            string shown = Letters.Shortened(name, Letters.Bench, 30);
            double half = Letters.Width(shown, Letters.Bench) / 2;
            if (x - half < taken + ApartMm)
            {
                continue;
            }

            pad.Text(x, baseline, shown, Letters.Bench, Anchor.BaselineCentre);
            taken = x + half;
        }
    }
}
