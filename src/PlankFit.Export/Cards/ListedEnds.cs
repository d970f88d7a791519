using PlankFit.Export.Words;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>The ends of a plank one under the other in a cell of the list: each in words, with its two sketches beside.</summary>
internal static class ListedEnds
{
    private const double SketchMm = 15;
    private const double SketchHighMm = 8.2;
    private const double TopMm = 1.6;
    private const double GapMm = 1;
    private const double LineMm = Letters.Small * Letters.Leading;

    /// <summary>The height that all of a plank's ends need in a cell of this width, mm.</summary>
    public static double HeightMm(
        Plank plank,
        double widthMm,
        double thicknessMm,
        LengthUnit unit
    ) => TopMm + plank.Ends.Sum(e => EndMm(plank, e, widthMm, thicknessMm, unit) + GapMm);

    public static void Draw(
        SheetCanvas pad,
        Box cell,
        Plank plank,
        double thicknessMm,
        LengthUnit unit
    )
    {
        double spare =
            Math.Max(0, cell.Height - HeightMm(plank, cell.Width, thicknessMm, unit))
            / Math.Max(2, plank.Ends.Length);
        double y = cell.Top - TopMm;
        foreach (PlankEnd end in plank.Ends)
        {
            var reading = EndReading.Of(plank, end, thicknessMm);
            pad.Paragraph(
                cell.Left,
                y,
                TextMm(cell.Width),
                EndFigures.Line(plank, end, thicknessMm, unit),
                Letters.Small
            );
            double x = cell.Right - (1.5 * SketchMm) + (reading.FacesOutboard ? 4 : -4);
            EndSketches.Lean(pad, new(x, y - 4), end, reading.FacesOutboard);
            if (Math.Abs(end.BevelDegrees) >= EndReading.SquareWithinDegrees)
            {
                EndSketches.Bevel(pad, new(x + SketchMm, y - 4.2), end, reading.FacesOutboard);
            }

            y -= EndMm(plank, end, cell.Width, thicknessMm, unit) + GapMm + spare;
        }
    }

    private static double TextMm(double cellMm) => cellMm - (2 * SketchMm);

    private static double EndMm(
        Plank plank,
        PlankEnd end,
        double cellMm,
        double thicknessMm,
        LengthUnit unit
    )
    {
        string line = EndFigures.Line(plank, end, thicknessMm, unit);
        int lines = Letters.Wrap(line, Letters.Small, TextMm(cellMm)).Count;
        return Math.Max(SketchHighMm, lines * LineMm);
    }
}
