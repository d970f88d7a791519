using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>What a sheet says of itself, besides the job and its revision.</summary>
/// <param name="Sheet">What kind of sheet it is.</param>
/// <param name="Of">Side, layer and face: "starboard, layer 1 inner, outer face up".</param>
/// <param name="Scale">"1:10", or a word where there is none.</param>
/// <param name="Forward">Direction of forward on the sheet, or null where each plank has its own arrow.</param>
internal sealed record TitleBlock(
    string Sheet,
    string Of,
    string Scale,
    Vec2? Forward,
    string Caution
)
{
    /// <summary>Where <see cref="Forward"/> is null: where on the sheet to look for the arrow; empty where nothing is drawn.</summary>
    public string Arrow { get; init; } = "forward: the arrow at each plank";
}

/// <summary>The border, and the strip along the foot of every sheet.</summary>
internal static class Frame
{
    public const double MarginMm = 8;
    private const double StripMm = 24;
    private const double CautionMm = 8;
    private const double PadMm = 2;
    private const double CloseLeading = 1.63;
    private const int MostLines = 4;
    private const double RaiseMm = 1.2;

    /// <summary>What is left for the sheet's matter.</summary>
    public static Box Inside(SheetFormat format) =>
        new(MarginMm, MarginMm + StripMm, format.WidthMm - MarginMm, format.HeightMm - MarginMm);

    public static void Draw(
        SheetCanvas pad,
        SheetFormat format,
        Job job,
        TitleBlock block,
        int page,
        int pages
    )
    {
        Box all = Inside(format) with { Bottom = MarginMm };
        pad.Rectangle(all, Pens.Frame);
        if (PlanWords.InMargin(job) is { Length: > 0 } margin)
        {
            bool wide = Letters.Width(margin, Letters.Bench, true) > all.Width;
            pad.Text(
                all.Left,
                all.Top + 1.2,
                margin,
                wide ? Letters.Small : Letters.Bench,
                bold: true
            );
        }

        double foot = all.Bottom + CautionMm,
            top = all.Bottom + StripMm;
        pad.Line(all.Left, top, all.Right, top, Pens.Frame);
        pad.Line(all.Left, foot, all.Right, foot, Pens.Rule);
        pad.Paragraph(
            all.Left + PadMm,
            foot - 1.4,
            all.Width - (2 * PadMm),
            block.Caution,
            Letters.Small
        );

        double[] parts = [0.23, 0.29, 0.10, 0.28, 0.10];
        double left = all.Left;
        for (int i = 0; i < parts.Length; i++)
        {
            double right = left + (parts[i] * all.Width);
            Box cell = new(left + PadMm, foot, right - PadMm, top);
            Fill(pad, cell, i, job, block, page, pages);
            if (i < parts.Length - 1)
            {
                pad.Line(right, foot, right, top, Pens.Rule);
            }

            left = right;
        }
    }

    /// <summary>
    /// The job's name in one line, in two of smaller letters where it is longer, and in up to four, a little closer, where these do not hold it: of names that are
    /// written in words none is cut.
    /// </summary>
    /// <returns>Whether the revision goes into one line below it, to leave it the room.</returns>
    private static bool Name(SheetCanvas pad, Box cell, double top, string name)
    {
        const double Smaller = 1.9;
        string shown = LetterWidths.Drawable(name, true);
        double size =
            Letters.Width(shown, Letters.Heading, true) <= cell.Width ? Letters.Heading
            : Letters.Wrap(shown, Smaller, cell.Width, true).Count <= 2 ? Smaller
            : Letters.Small;
        string[] lines = [.. Letters.Wrap(shown, size, cell.Width, true)];
        if (lines.Length > MostLines)
        {
            string rest = string.Join(' ', lines.Skip(MostLines - 1));
            lines = [.. lines.Take(MostLines - 1), Letters.Shortened(rest, size, cell.Width, true)];
        }

        double leading = lines.Length > 2 ? CloseLeading : Letters.Leading;
        top += lines.Length == MostLines ? RaiseMm : 0;
        for (int i = 0; i < lines.Length; i++)
        {
            pad.Text(cell.Left, top - size - (i * leading * size), lines[i], size, bold: true);
        }

        return lines.Length > 2;
    }

    private static void Fill(
        SheetCanvas pad,
        Box cell,
        int index,
        Job job,
        TitleBlock block,
        int page,
        int pages
    )
    {
        double top = cell.Top - 2.4;
        switch (index)
        {
            case 0:
                bool full = Name(pad, cell, top, job.Name);
                const string Revision = "revision of inputs";
                pad.Text(cell.Left, foot(full ? 1.1 : 5.6), Revision, Letters.Small);
                pad.Text(
                    cell.Left + (full ? Letters.Width(Revision, Letters.Small) + 1.5 : 0),
                    foot(full ? 1.1 : 1.8),
                    job.Revision,
                    full ? Letters.Small : Letters.Bench,
                    bold: true
                );
                break;
            case 1:
                double below = pad.Paragraph(
                    cell.Left,
                    top,
                    cell.Width,
                    block.Sheet,
                    Letters.Bench,
                    true
                );
                pad.Paragraph(cell.Left, below - 0.6, cell.Width, block.Of, Letters.Small);
                break;
            case 2:
                ForwardArrow.InBlock(pad, cell, block);
                break;
            case 3:
                pad.Text(cell.Left, top - Letters.Bench, block.Scale, Letters.Bench, bold: true);
                pad.Paragraph(
                    cell.Left,
                    top - (Letters.Bench * 1.7),
                    cell.Width,
                    LengthText.PaperToleranceText(job.Units) + " Angles to half a degree.",
                    Letters.Small
                );
                break;
            default:
                if (pages == 1)
                {
                    break;
                }

                pad.Text(cell.Left, top - Letters.Small, "page", Letters.Small);
                pad.Text(
                    cell.Left,
                    foot(5.2),
                    page.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Letters.Heading,
                    bold: true
                );
                pad.Text(cell.Left, foot(1.8), $"of {pages}", Letters.Small);
                break;
        }

        double foot(double above) => cell.Bottom + above;
    }
}
