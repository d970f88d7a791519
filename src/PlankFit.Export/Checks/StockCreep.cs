using PlankFit.Export.Words;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Checks;

/// <summary>The stock's true width, and how far the outermost seams creep along the keel where it is not what the job says.</summary>
internal static class StockCreep
{
    public const int Stacked = 10;
    private const double RowMm = 4.2;

    /// <summary>What a stack of ten is out by: a tenth of it each plank, 0.1, 0.2 and 0.5 mm; in inches the nearest that a tape shows.</summary>
    private static readonly double[] MetricMm = [1, 2, 5];
    private static readonly double[] InchMm = [25.4 / 32, 25.4 / 16, 3 * 25.4 / 16];

    /// <summary>
    /// How far the outermost seam moves along the keel, mm, where every plank is out by so much: half the master plank, which is laid on its own line,
    /// and all between that are used as wide as they come (tapered ones are sawn to their line), over the sine of the angle at the keel.
    /// </summary>
    public static double AlongKeelMm(PlankLayerPlan layer, bool forward, double eachMm)
    {
        int between = layer.Starboard.Count(p =>
            p.Kind == PlankKind.Full
            && (
                forward
                    ? p.Number > layer.Starboard[0].Number && p.Number < layer.MasterNumber
                    : p.Number > layer.MasterNumber && p.Number < layer.Starboard[^1].Number
            )
        );
        return eachMm * (between + 0.5) / Math.Sin(layer.Planks.AngleDegrees * Math.PI / 180);
    }

    /// <summary>Returns where the words end.</summary>
    /// <param name="noteMm">Height of the letters.</param>
    public static double Draw(
        SheetCanvas pad,
        Box box,
        PlankLayerPlan layer,
        LengthUnit unit,
        double noteMm
    )
    {
        double top = pad.Paragraph(
            box.Left,
            box.Top,
            box.Width,
            $"TRUE WIDTH OF THE STOCK, the mean of ten: lay {Stacked} planks edge to edge against a tape. They should read {LengthText.ForPaper(Stacked * layer.Planks.WidthMm, unit)}; "
                + "they read ____________ , a tenth of it is ____________ .",
            noteMm
        );
        double[] offs = LengthUnits.IsMetric(unit) ? MetricMm : InchMm;
        double[] x = [box.Left, .. offs.Select((_, i) => box.Right - ((offs.Length - i) * 21))];
        top -= 0.6;
        (string Name, double[] Figures, Pen Below)[] rows =
        [
            ("where the ten are over or under by", offs, Pens.Tick),
            (
                $"the foremost seam creeps along the {layer.Panel.WordOf(PanelEdge.Lower)} by",
                [.. offs.Select(o => AlongKeelMm(layer, true, o / Stacked))],
                Pens.Rule
            ),
            (
                "the aftermost seam by",
                [.. offs.Select(o => AlongKeelMm(layer, false, o / Stacked))],
                Pens.Rule
            ),
        ];
        foreach ((string name, double[] figures, Pen below) in rows)
        {
            top = Row(pad, x, top, name, figures, unit, below);
        }

        return pad.Paragraph(
            box.Left,
            top - 1.2,
            box.Width,
            "Over: away from the master plank; under: towards it. Where a seam would creep by more than the limit, put the true width in the job and run again "
                + "before sawing.",
            noteMm
        );
    }

    /// <summary>One row; returns where the next begins.</summary>
    private static double Row(
        SheetCanvas pad,
        double[] x,
        double top,
        string name,
        double[] figures,
        LengthUnit unit,
        Pen below
    )
    {
        const double LineMm = Letters.Small * Letters.Leading;
        IReadOnlyList<string> lines = Letters.Wrap(
            LetterWidths.Drawable(name),
            Letters.Small,
            x[1] - x[0] - 1
        );
        double height = RowMm + ((lines.Count - 1) * LineMm),
            y = top - (height / 2);
        for (int i = 0; i < lines.Count; i++)
        {
            pad.Text(
                x[0],
                y + ((((lines.Count - 1) / 2.0) - i) * LineMm),
                lines[i],
                Letters.Small,
                Anchor.MiddleLeft
            );
        }

        for (int i = 0; i < figures.Length; i++)
        {
            pad.Text(
                x[i + 1],
                y,
                PlankWords.Small(figures[i], unit),
                Letters.Bench,
                Anchor.MiddleLeft,
                true
            );
        }

        pad.Line(x[0], top - height, x[^1] + 21, top - height, below);
        return top - height;
    }
}
