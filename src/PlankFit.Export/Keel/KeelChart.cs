using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>Half-width and bevel of a keel layer against the stations, both sides, with the limits of the stock.</summary>
internal static class KeelChart
{
    private const double ScaleColumnMm = 16;

    /// <summary>Broad enough to be seen where it runs along a level of the chart.</summary>
    private static readonly Pen Dashes = new(0.5, 0, [2.4, 1.6]);

    public static SheetPage Page(BottomPlan plan, KeelLayerPlan layer) =>
        new(
            SheetFormat.Bench(plan.Job),
            new(
                "The keel that the planks meet",
                $"{layer.Spec.Name}: half-width and bevel along the keel",
                "charts, not to scale",
                new Vec2(-1, 0),
                Cautions.Keel
            ),
            (pad, inside) => Draw(pad, inside.Within(4), plan, layer)
        );

    private static void Draw(SheetCanvas pad, Box box, BottomPlan plan, KeelLayerPlan layer)
    {
        Job job = plan.Job;
        ImmutableArray<KeelStation> between = layer.Between;
        if (between.IsEmpty)
        {
            pad.Paragraph(
                box.Left,
                box.Top,
                box.Width,
                "The planks nowhere meet this layer.",
                Letters.Bench
            );
            return;
        }

        double from = between.Min(r => r.PositionMm),
            to = between.Max(r => r.PositionMm);
        Box upper = new(
            box.Left + ScaleColumnMm,
            box.Bottom + (0.44 * box.Height),
            box.Right - 2,
            box.Top - 10
        );
        Box lower = new(
            box.Left + ScaleColumnMm,
            box.Bottom + 10,
            box.Right - 2,
            box.Bottom + (0.36 * box.Height)
        );
        double? stock = job.Keel.StockWidthMm / 2;
        double most = Math.Max(
                between.Max(r => Math.Max(r.WantedHalfWidthMm, r.HalfWidthMm)),
                stock ?? 0
            ),
            least = between.Min(r => Math.Min(r.WantedHalfWidthMm, r.HalfWidthMm));
        var widths = ChartAxis.OfLengths(
            upper,
            from,
            to,
            least < 0 ? least - 0.5 : Math.Max(0, least - 0.5),
            most + 0.5,
            job.Units
        );
        string heading = $"Half-width at the outer face, {SheetWords.Unit(job.Units)}";
        pad.Text(box.Left, box.Top - Letters.Bench, heading, Letters.Bench, bold: true);
        Legend(
            pad,
            box.Left + Letters.Width(heading, Letters.Bench, true) + 12,
            box.Top - (Letters.Bench / 2)
        );
        Levels(pad, widths, v => LengthText.PaperNumber(v, job.Units));
        Stations(pad, widths, plan);
        RunOut(pad, widths, layer);
        if (stock is { } half)
        {
            double y = widths.Y(half);
            pad.Line(upper.Left, y, upper.Right, y, Pens.Cut);
            pad.Text(
                upper.Right - 1,
                y + 1.2,
                $"half the stock, {LengthText.ForPaper(half, job.Units)}",
                Letters.Small,
                Anchor.BaselineRight
            );
        }

        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            KeelStation[] run = [.. between.Where(r => r.Side == side)];
            pad.Open(run.Select(r => widths.At(r.PositionMm, r.WantedHalfWidthMm)), Pens.Inner);
            pad.Open(
                run.Select(r => widths.At(r.PositionMm, r.HalfWidthMm)),
                side == Side.Starboard ? Pens.HullEdge : Pens.Seam
            );
            foreach (KeelStation row in layer.On(side).Where(r => r.Measured))
            {
                Vec2 at = widths.At(row.PositionMm, row.HalfWidthMm);
                pad.Dot(at, side == Side.Starboard ? 1 : 0.7);
            }
        }

        var bevels = ChartAxis.OfDegrees(
            lower,
            from,
            to,
            Math.Min(
                0,
                between.Min(r => Math.Min(r.Angles.BevelDegrees, r.Angles.PlankEndBevelDegrees))
            ),
            Math.Max(
                5,
                between.Max(r => Math.Max(r.Angles.BevelDegrees, r.Angles.PlankEndBevelDegrees))
            )
        );
        pad.Text(
            box.Left,
            lower.Top + 4,
            "Degrees: tilt of the planks' end cut (solid), bevel of the keel layer's side (dashed)",
            Letters.Bench,
            bold: true
        );
        Levels(pad, bevels, KeelWords.Degrees);
        Stations(pad, bevels, plan);
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            KeelStation[] run = [.. between.Where(r => r.Side == side)];
            pad.Open(
                run.Select(r => bevels.At(r.PositionMm, r.Angles.PlankEndBevelDegrees)),
                side == Side.Starboard ? Pens.HullEdge : Pens.Seam
            );
            pad.Open(run.Select(r => bevels.At(r.PositionMm, r.Angles.BevelDegrees)), Dashes);
        }
    }

    private static void Legend(SheetCanvas pad, double left, double y)
    {
        (Pen Pen, string Word)[] legend =
        [
            (Pens.HullEdge, "as built, starboard"),
            (Pens.Seam, "as built, port"),
            (Pens.Inner, "wanted by the planks"),
        ];
        foreach ((Pen pen, string word) in legend)
        {
            pad.Line(left, y, left + 12, y, pen);
            pad.Text(new(left + 14, y), word, Letters.Small, Anchor.MiddleLeft);
            left += 18 + Letters.Width(word, Letters.Small);
        }

        pad.Dot(new(left + 2, y), 1);
        pad.Text(new(left + 5, y), "measured", Letters.Small, Anchor.MiddleLeft);
    }

    private static void Levels(SheetCanvas pad, ChartAxis axis, Func<double, string> word)
    {
        foreach (double v in axis.Levels())
        {
            double y = axis.Y(v);
            pad.Line(axis.Box.Left, y, axis.Box.Right, y, Pens.Rule);
            pad.Text(new(axis.Box.Left - 1.5, y), word(v), Letters.Small, Anchor.MiddleRight);
        }
    }

    /// <summary>Where the layer begins or runs out: forward of it planks are left long.</summary>
    private static void RunOut(SheetCanvas pad, ChartAxis axis, KeelLayerPlan layer)
    {
        if (layer.RunsOutAtMm is { } at && at > axis.From && at < axis.To)
        {
            double x = axis.X(at);
            pad.Line(x, axis.Box.Bottom, x, axis.Box.Top, Pens.Net);
            pad.SpeakOf(PlaceAlong.Of(at, $"where {layer.Spec.Name} begins"));
            pad.Text(
                new(x, axis.Box.Top + 1.5),
                "forward of this planks are left long at the keel",
                Letters.Small
            );
            pad.SpeakOf("");
        }
    }

    private static void Stations(SheetCanvas pad, ChartAxis axis, BottomPlan plan)
    {
        double last = double.NegativeInfinity;
        foreach (StationOnHull station in plan.Hull.Stations)
        {
            double x = axis.X(station.PositionMm);
            pad.Line(x, axis.Box.Bottom, x, axis.Box.Top, Pens.Rule);
            string name = Letters.Shortened(station.Name, Letters.Small, 14);
            if (x - last > Letters.Width(name, Letters.Small) + 1.5)
            {
                pad.SpeakOf(PlaceAlong.Of(station.PositionMm, $"station {station.Name}"));
                pad.Text(new(x, axis.Box.Bottom - 4), name, Letters.Small, Anchor.BaselineCentre);
                pad.SpeakOf("");
                last = x;
            }
        }
    }
}
