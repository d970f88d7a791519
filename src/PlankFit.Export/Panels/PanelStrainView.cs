using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;

namespace PlankFit.Export.Panels;

/// <summary>The strain map: the darker, the more the sheet is strained, with the signed figures written on it and a scale beside it.</summary>
internal static class PanelStrainView
{
    /// <summary>The grey of the largest strain; light enough that figures on it stay legible in a photocopy.</summary>
    private const double Darkest = 0.5;

    private const double ScaleMm = 4;
    private const double ScaleWidthMm = 70;

    public static void Draw(SheetCanvas pad, PanelView view, PanelBehind behind)
    {
        StrainField field = view.Plan.Flat.Strain;
        double most = Math.Abs(field.Worst.Leading);
        if (most >= 5e-6)
        {
            Cells(pad, view, field, most);
        }

        behind.Outline(pad, view.Placing);
        view.Outline(pad);
        view.Stations(pad);
        if (most >= 5e-6)
        {
            Mark(pad, view, field.Worst);
        }

        view.StationNames(pad, Letters.Bench);
        if (most >= 5e-6)
        {
            Figures(pad, view);
        }

        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
    }

    private static void Cells(SheetCanvas pad, PanelView view, StrainField field, double most)
    {
        for (int i = 0; i < field.Columns; i++)
        {
            for (int j = 0; j < field.Rows; j++)
            {
                StrainSample[] corners =
                [
                    field[i, j],
                    field[i + 1, j],
                    field[i + 1, j + 1],
                    field[i, j + 1],
                ];
                double mean = corners.Average(c => Math.Abs(c.Leading)),
                    grey = 1 - ((1 - Darkest) * Math.Min(1, mean / most));
                // In steps, so that the bands can be told apart and matched with the scale.
                grey = 1 - (Math.Round((1 - grey) * 20) / 20);
                if (grey < 1)
                {
                    pad.Closed(
                        Grown([.. corners.Select(c => view.Placing[c.Flat])]),
                        Pens.None,
                        Layers.Hull,
                        grey
                    );
                }
            }
        }
    }

    /// <summary>A little over its neighbours, or the paper would show between them.</summary>
    private static IEnumerable<Vec2> Grown(Vec2[] cell)
    {
        const double ByMm = 0.05;
        Vec2 middle = (1.0 / cell.Length) * cell.Aggregate(new Vec2(0, 0), (sum, p) => sum + p);
        return cell.Select(p => p.ChordTo(middle) > 0 ? p + (ByMm * (p - middle).Unit()) : p);
    }

    /// <summary>Signed figures at keel, middle and chine of every station that leaves room for them.</summary>
    private static void Figures(SheetCanvas pad, PanelView view)
    {
        FlatPanel flat = view.Plan.Flat;
        double taken = double.PositiveInfinity;
        foreach (StationOnHull station in view.Plan.Stations)
        {
            double u = Math.Clamp(station.U, flat.Patch.UFrom, flat.Patch.UTo);
            if (view.OnKeel(u).ChordTo(view.OnChine(u)) < 5 * Letters.Small)
            {
                continue;
            }

            double widest = Letters.Width("+0.000", Letters.Small);
            StrainSample[] rows =
            [
                .. new[] { 0.1, 0.5, 0.9 }.Select(t =>
                    StrainField.At(flat.Patch, flat.Map, u, flat.Patch.V(u, t))
                ),
            ];
            Vec2[] places = [.. rows.Select(r => view.Placing[r.Flat])];
            // To the after side of the station's line, except at the after end.
            bool inside = places.Min(p => p.X) - widest - 2 > view.Extent.Left;
            double shift = inside ? -widest - 0.8 : 0.8;
            if (places.Max(p => p.X) + shift + widest + 0.8 > taken)
            {
                continue;
            }

            taken = places.Min(p => p.X) + shift;
            for (int k = 0; k < rows.Length; k++)
            {
                // Above or below where the ring stands.
                pad.TextAtFirst(
                    new[] { 0, 3.6, -3.6 }.Select(up => new Lettering(
                        Layers.Text,
                        Pen.Thin,
                        places[k] + new Vec2(shift, up),
                        Figure(rows[k].Leading),
                        Letters.Small,
                        Anchor.MiddleLeft
                    )),
                    view.Extent.Within(-Letters.Small)
                );
            }
        }

        static string Figure(double strain) =>
            Math.Abs(strain) < 5e-6 ? "0" : PanelWords.Signed(strain).Replace(" %", "");
    }

    /// <summary>A ring about the place of the largest strain.</summary>
    private static void Mark(SheetCanvas pad, PanelView view, StrainSample worst) =>
        pad.Add([new CircleShape(Layers.Marks, Pens.Cut, view.Placing[worst.Flat], 2)]);

    /// <summary>What the scale of greys takes and what is said beside it, mm.</summary>
    public static double ScaleHeight(PanelPlan plan, PanelBehind behind, double width)
    {
        string said = Said(plan, behind);
        double words =
            said.Length == 0
                ? 0
                : Letters.Wrap(said, Letters.Bench, WordsWidth(plan, width)).Count
                    * Letters.Bench
                    * Letters.Leading;
        return IsStrained(plan) ? Math.Max(ScaleMm + (2.5 * Letters.Bench), words) : words;
    }

    private static bool IsStrained(PanelPlan plan) => Most(plan) >= 5e-6;

    private static double Most(PanelPlan plan) => Math.Abs(plan.Flat.Worst.Leading);

    private static double WordsWidth(PanelPlan plan, double width) =>
        IsStrained(plan) ? width - ScaleWidthMm - 12 : width - 2;

    private static string Said(PanelPlan plan, PanelBehind behind)
    {
        string more = behind.Words("dashed");
        return IsStrained(plan)
                ? "strain by size; figures on the map in percent, with their sign; the ring is the largest"
                    + more
            : more.Length == 0 ? ""
            : more[2..];
    }

    /// <summary>The scale of greys at the head of a box, and what is said of the map.</summary>
    public static void Scale(SheetCanvas pad, Box box, PanelPlan plan, PanelBehind behind)
    {
        const double width = ScaleWidthMm,
            height = ScaleMm;
        (double left, double top) = (box.Left, box.Top);
        double most = Most(plan),
            wide = WordsWidth(plan, box.Width + 2);
        if (!IsStrained(plan))
        {
            pad.Paragraph(left, top, wide, Said(plan, behind), Letters.Bench);
            return;
        }

        int steps = (int)Math.Round((1 - Darkest) * 20);
        for (int k = 0; k <= steps; k++)
        {
            double grey = 1 - (k / 20.0);
            double from = Math.Max(0, (k - 0.5) / steps),
                to = Math.Min(1, (k + 0.5) / steps);
            pad.Rectangle(
                new(left + (width * from), top - height, left + (width * to), top),
                new Pen(0.1, grey),
                grey
            );
        }

        pad.Rectangle(new(left, top - height, left + width, top), Pens.Rule);
        double figures = top - height - 1.2 - Letters.Bench;
        pad.Text(left, figures, "0", Letters.Bench, Anchor.BaselineCentre);
        pad.Text(
            left + (width / 2),
            figures,
            Size(0.5 * most),
            Letters.Bench,
            Anchor.BaselineCentre
        );
        pad.Text(left + width, figures, Size(most), Letters.Bench, Anchor.BaselineCentre);
        pad.Paragraph(
            left + width + 10,
            top - height + 0.8 + Letters.Bench,
            wide,
            Said(plan, behind),
            Letters.Bench
        );

        string Size(double strain) => PanelWords.Signed(strain)[1..];
    }
}
