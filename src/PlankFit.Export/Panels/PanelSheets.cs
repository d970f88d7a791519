using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Export.Words;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Panels;

/// <summary>The bottom developed, for the wall: a page to set it out by, a page with its strain and the seams of every layer.</summary>
public static class PanelSheets
{
    private const double GapMm = 6;
    private const string Seams =
        "seams of the layers; starboard, outer face up; port is its mirror image";

    /// <param name="of">What the panel is of: what lies behind is taken from it.</param>
    public static ImmutableArray<Drawing> Pages(BottomPlan of, PanelPlan plan)
    {
        Job job = of.Job;
        var behind = PanelBehind.Of(of, plan);
        var format = SheetFormat.Wall(job);
        Box inside = Frame.Inside(format).Within(GapMm);
        // Room to the sides for the figures of the ends.
        var ratio = Ratio.Fitting(
            PanelView.TrueExtent(plan),
            inside.Width - 6,
            0.42 * inside.Height,
            job.Units
        );
        double each = (PanelView.TrueExtent(plan).Height * ratio.Factor) + 16;
        // The strain goes under the setting out where there is room for both.
        bool together =
            SettingOutHeight(plan, ratio)
                + each
                + PanelStrainView.ScaleHeight(plan, behind, inside.Width)
                + 2
            <= inside.Height;
        List<SheetPage> pages =
        [
            new(
                format,
                Block(plan, "starboard, outer face up; port is its mirror image", ratio),
                (pad, box) =>
                {
                    Box room = box.Within(GapMm);
                    SettingOut(pad, room, job, plan, ratio);
                    if (together)
                    {
                        double top = room.Top - SettingOutHeight(plan, ratio) - 4;
                        StrainMap(pad, room with { Top = top }, plan, behind, ratio);
                    }
                }
            ),
        ];
        List<PanelRow> views =
        [
            .. plan.Layers.Select(l => new PanelRow(
                each + MoreLines(Heading(plan, l, behind), inside.Width),
                (pad, box) => Layer(pad, box, (plan, l), behind, ratio)
            )),
        ];
        if (!together)
        {
            views.Insert(
                0,
                new(
                    each + PanelStrainView.ScaleHeight(plan, behind, inside.Width),
                    (pad, box) => StrainMap(pad, box, plan, behind, ratio)
                )
            );
        }

        foreach (ImmutableArray<PanelRow> rows in PanelRow.Pages(views, inside.Height - 10))
        {
            pages.Add(
                new(
                    format,
                    Block(plan, together ? Seams : "strain; " + Seams, ratio),
                    (pad, box) => PanelRow.Draw(pad, box.Within(GapMm), rows)
                )
            );
        }

        return SheetPage.Numbered(job, pages);
    }

    private static TitleBlock Block(PanelPlan plan, string of, Ratio ratio) =>
        new(
            $"The {plan.Panel.Name} laid flat",
            of,
            ratio.ToString(),
            new Vec2(1, 0),
            Cautions.Panel
        );

    private static PanelView In(Box box, PanelPlan plan, Ratio ratio, double lift = 0)
    {
        Box thing = PanelView.TrueExtent(plan);
        return new(
            plan,
            Placing.Centred(
                thing,
                box with
                {
                    Bottom = box.Bottom + lift,
                },
                ratio.Factor,
                ratio.Factor
            )
        );
    }

    /// <summary>The view, its dimension and the taller of the two columns beneath.</summary>
    private static double SettingOutHeight(PanelPlan plan, Ratio ratio) =>
        (PanelView.TrueExtent(plan).Height * ratio.Factor)
        + 34
        + Math.Max(62, PanelTable.Height(plan) + 6);

    private static void SettingOut(SheetCanvas pad, Box box, Job job, PanelPlan plan, Ratio ratio)
    {
        LengthUnit unit = job.Units;
        FlatPanel flat = plan.Flat;
        double height = PanelView.TrueExtent(plan).Height * ratio.Factor;
        Box upper = box with { Bottom = Math.Max(box.Bottom, box.Top - height - 30) };
        PanelView view = In(upper, plan, ratio, 8);
        view.Outline(pad);
        view.Stations(pad);
        view.StationNames(pad, Letters.Bench);

        // The base line with its length, and the two diagonals.
        Vec2 left = view.Placing[default],
            right = view.Placing[new(BaseLength(flat), 0)];
        pad.Line(left, right, Pens.Net);
        double y = view.Extent.Bottom - 9;
        DimensionLine.Across(
            pad,
            left.X,
            right.X,
            y,
            "base line " + LengthText.ForPaper(BaseLength(flat), unit)
        );
        // From below the stations' names down.
        double names = 1.6 + Letters.Bench + 1;
        pad.Line(left.X, left.Y - names, left.X, y - 1, Pens.Measure);
        pad.Line(right.X, right.Y - names, right.X, y - 1, Pens.Measure);

        double top = upper.Bottom - 2,
            half = (box.Width / 2) - 4;
        double at = top;
        at =
            pad.Paragraph(box.Left, at, half, PanelWords.Verdict(plan, unit), Letters.Bench, true)
            - 1.5;
        at = pad.Paragraph(box.Left, at, half, PanelWords.Strain(plan), Letters.Bench, true) - 1.5;
        at = pad.Paragraph(box.Left, at, half, PanelWords.Method(plan, unit), Letters.Bench) - 2;
        foreach ((string what, string figure) in Sizes(plan, unit))
        {
            pad.Text(box.Left, at - Letters.Bench, what, Letters.Bench);
            pad.Text(
                box.Left + half,
                at - Letters.Bench,
                figure,
                Letters.Bench,
                Anchor.BaselineRight,
                true
            );
            at -= Letters.Bench * Letters.Leading;
        }

        double column = box.Left + half + 8;
        PanelTable.Draw(pad, plan, unit, column, top, box.Right - column);
        pad.Paragraph(
            column,
            top - PanelTable.Height(plan) - 2,
            box.Right - column,
            $"Along the base line from its after end, and off it towards the {plan.Panel.WordOf(PanelEdge.Upper)}; {SheetUnit(unit)}.",
            Letters.Small
        );
        pad.BreakAroundLetters(Layers.Hull, Layers.Marks);
    }

    /// <summary>Lengths and diagonals that a tape can check.</summary>
    internal static IEnumerable<(string What, string Figure)> Sizes(PanelPlan plan, LengthUnit unit)
    {
        FlatPanel f = plan.Flat;
        string lower = plan.Panel.WordOf(PanelEdge.Lower),
            upper = plan.Panel.WordOf(PanelEdge.Upper);
        Vec2 Corner(double u, bool chine) =>
            f.Map.At(u, chine ? f.Patch.Upper(u) : f.Patch.Lower(u));
        string L(double mm) => LengthText.ForPaper(mm, unit);
        yield return (
            $"{lower}, on the hull / in the flat",
            $"{L(f.LowerEdge.SurfaceMm)} / {L(f.LowerEdge.FlatMm)}"
        );
        yield return (
            $"{upper}, on the hull / in the flat",
            $"{L(f.UpperEdge.SurfaceMm)} / {L(f.UpperEdge.FlatMm)}"
        );
        (double from, double to) = (f.Patch.UFrom, f.Patch.UTo);
        yield return (
            $"diagonal, {lower} forward to {upper} aft",
            L(Corner(from, false).ChordTo(Corner(to, true)))
        );
        if (!f.Patch.ClosesAt(from, 1))
        {
            yield return (
                $"diagonal, {lower} aft to {upper} forward",
                L(Corner(to, false).ChordTo(Corner(from, true)))
            );
        }

        yield return ("area of one side, on the hull", PlanWords.Area(f.SurfaceAreaMm2, unit));
    }

    private static double BaseLength(FlatPanel flat) =>
        flat
            .Map.At(flat.Patch.UFrom, flat.Patch.Lower(flat.Patch.UFrom))
            .ChordTo(flat.Map.At(flat.Patch.UTo, flat.Patch.Lower(flat.Patch.UTo)));

    private static string SheetUnit(LengthUnit unit) => SheetWords.Unit(unit);

    private static void StrainMap(
        SheetCanvas pad,
        Box box,
        PanelPlan plan,
        PanelBehind behind,
        Ratio ratio
    )
    {
        pad.Text(
            box.Left,
            box.Top - Letters.Heading,
            "Strain. " + PanelWords.Strain(plan),
            Letters.Heading,
            bold: true
        );
        PanelStrainView.Scale(
            pad,
            box with
            {
                Left = box.Left + 2,
                Top = box.Top - Letters.Heading - 4,
            },
            plan,
            behind
        );
        double used = PanelStrainView.ScaleHeight(plan, behind, box.Width);
        PanelStrainView.Draw(
            pad,
            In(box with { Top = box.Top - 6 - used }, plan, ratio, 3),
            behind
        );
    }

    private static PanelSeams? Below(PanelPlan plan, PanelSeams layer) =>
        plan.Layers.LastOrDefault(l => l.Layer < layer.Layer);

    private static string Heading(PanelPlan plan, PanelSeams layer, PanelBehind behind) =>
        LetterWidths.Drawable(
            $"Layer {plan.Panel.Letter}{layer.Layer}, {layer.Name}: seams between planks"
                + behind.Words("grey")
                + (Below(plan, layer) is null ? "" : "; thin grey lines: seams of the layer below")
        );

    /// <summary>What a heading takes beyond its first line, mm.</summary>
    private static double MoreLines(string heading, double width) =>
        (Letters.Wrap(heading, Letters.Heading, width, bold: true).Count - 1)
        * Letters.Heading
        * Letters.Leading;

    private static void Layer(
        SheetCanvas pad,
        Box box,
        (PanelPlan Plan, PanelSeams Layer) of,
        PanelBehind behind,
        Ratio ratio
    )
    {
        (PanelPlan plan, PanelSeams layer) = of;
        PanelSeams? below = Below(plan, layer);
        string heading = Heading(plan, layer, behind);
        pad.Paragraph(box.Left, box.Top, box.Width, heading, Letters.Heading, bold: true);
        PanelView view = In(
            box with
            {
                Top = box.Top - 6 - MoreLines(heading, box.Width),
            },
            plan,
            ratio,
            3
        );
        behind.Shade(pad, view.Placing);
        if (below is not null)
        {
            view.Seams(pad, below, LayerInPlan.SeamBelow, Layers.Behind);
        }

        view.Outline(pad);
        view.Stations(pad);
        view.StationNames(pad, Letters.Bench);
        view.Seams(pad, layer, Pens.Seam, Layers.Hull);
        view.Numbers(pad, layer);
        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
    }
}
