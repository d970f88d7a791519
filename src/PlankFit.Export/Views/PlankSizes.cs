using PlankFit.Export.Sheets;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Views;

/// <summary>Each plank's length and width as sawn in columns, to know planks by when they lie in a heap; the two sides are alike.</summary>
internal sealed class PlankSizes
{
    private const double GapMm = 7;

    private readonly (string Number, string Size)[] rows;
    private readonly string title;
    private readonly double letters;
    private readonly double numbers;
    private readonly double widthMm;
    private readonly int across;
    private readonly int down;

    private PlankSizes(PlankLayerPlan layer, LengthUnit unit, double widthMm, double letters)
    {
        rows =
        [
            .. layer.Starboard.Select(p =>
                (
                    p.Id.Short,
                    LengthText.PaperNumber(p.CutLengthMm, unit, RoundTo.Up)
                        + " × "
                        + LengthText.PaperNumber(AcrossMm(p), unit, RoundTo.Up)
                )
            ),
        ];
        title =
            $"To know the planks by: length × width as sawn, {SheetWords.Unit(unit)}, starboard and port alike";
        this.letters = letters;
        this.widthMm = widthMm;
        numbers = rows.Max(r => Letters.Width(r.Number, letters, true)) + 2;
        double sizes = rows.Max(r => Letters.Width(r.Size, letters));
        across = Math.Clamp((int)(widthMm / (numbers + sizes + GapMm)), 1, rows.Length);
        down = (rows.Length + across - 1) / across;
    }

    private static double AcrossMm(Plank p) => p.FlatCut.Max(v => v.Y) - p.FlatCut.Min(v => v.Y);

    public double HeightMm => Letters.Heading + 3 + (down * letters * Letters.Leading);

    /// <summary>In the largest lettering that fits the height, or null where none does.</summary>
    public static PlankSizes? Fitting(
        PlankLayerPlan layer,
        LengthUnit unit,
        double widthMm,
        double heightMm
    ) =>
        new[] { Letters.Heading, 3, Letters.Bench }
            .Select(h => new PlankSizes(layer, unit, widthMm, h))
            .FirstOrDefault(t => t.HeightMm <= heightMm);

    public void Draw(SheetCanvas pad, double left, double top)
    {
        pad.Text(left, top - Letters.Bench, title, Letters.Bench, bold: true);
        for (int i = 0; i < rows.Length; i++)
        {
            double x = left + (i / down * widthMm / across),
                y = top - Letters.Heading - 3 - letters - (i % down * letters * Letters.Leading);
            pad.Text(x + numbers - 2, y, rows[i].Number, letters, Anchor.BaselineRight, true);
            pad.Text(x + numbers, y, rows[i].Size, letters);
        }
    }
}
