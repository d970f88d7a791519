using System.Globalization;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>Half-width and bevel of a keel layer against the stations, both sides, with the limits of the stock.</summary>
internal static class KeelChart
{
    private const double ScaleColumnMm = 16;

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

    private static void Draw(Pad pad, Box box, BottomPlan plan, KeelLayerPlan layer)
    {
        Job job = plan.Job;
        var between = layer.Between;
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
            box.Top - 12
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
        var widths = new Axis(
            upper,
            from,
            to,
            Math.Max(0, least - (0.1 * (most - least)) - 1),
            most + (0.05 * most)
        );
        pad.Text(
            box.Left,
            box.Top - Letters.Bench,
            $"Half-width at the outer face, {SheetWords.Unit(job.Units)}",
            Letters.Bench,
            bold: true
        );
        Legend(pad, box.Left + 75, box.Top - (Letters.Bench / 2));
        Levels(pad, widths, 5, v => LengthText.PaperNumber(v, job.Units));
        Stations(pad, widths, plan, job);
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

        double lowest = Math.Min(
                0,
                between.Min(r => Math.Min(r.BevelDegrees, r.PlankEndBevelDegrees))
            ),
            highest = Math.Max(
                5,
                between.Max(r => Math.Max(r.BevelDegrees, r.PlankEndBevelDegrees))
            );
        var bevels = new Axis(lower, from, to, lowest, highest * 1.05);
        pad.Text(
            box.Left,
            lower.Top + 4,
            "Degrees: tilt of the planks' end cut (solid), bevel of the keel layer's side (dashed)",
            Letters.Bench,
            bold: true
        );
        Levels(pad, bevels, 4, v => v.ToString("0.0", CultureInfo.InvariantCulture));
        Stations(pad, bevels, plan, job);
        KeelStation[] starboard = [.. between.Where(r => r.Side == Side.Starboard)];
        pad.Open(
            starboard.Select(r => bevels.At(r.PositionMm, r.PlankEndBevelDegrees)),
            Pens.HullEdge
        );
        pad.Open(starboard.Select(r => bevels.At(r.PositionMm, r.BevelDegrees)), Pens.Inner);
    }

    private static void Legend(Pad pad, double left, double y)
    {
        (Pen Pen, string Word)[] legend =
        [
            (Pens.HullEdge, "there, starboard"),
            (Pens.Seam, "there, port"),
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

    private static void Levels(Pad pad, Axis axis, int count, Func<double, string> word)
    {
        for (int i = 0; i <= count; i++)
        {
            double v = axis.Low + ((axis.High - axis.Low) * i / count),
                y = axis.Y(v);
            pad.Line(axis.Box.Left, y, axis.Box.Right, y, Pens.Rule);
            pad.Text(new(axis.Box.Left - 1.5, y), word(v), Letters.Small, Anchor.MiddleRight);
        }
    }

    private static void Stations(Pad pad, Axis axis, BottomPlan plan, Job job)
    {
        double last = double.NegativeInfinity;
        foreach (StationOnHull station in plan.Hull.Stations)
        {
            double x = axis.X(station.PositionMm);
            pad.Line(x, axis.Box.Bottom, x, axis.Box.Top, Pens.Rule);
            string name = Letters.Shortened(station.Name, Letters.Small, 14);
            if (x - last > Letters.Width(name, Letters.Small) + 1.5)
            {
                pad.Text(new(x, axis.Box.Bottom - 4), name, Letters.Small, Anchor.BaselineCentre);
                last = x;
            }
        }
    }

    /// <summary>A chart's box and what its edges stand for.</summary>
    private readonly record struct Axis(Box Box, double From, double To, double Low, double High)
    {
        public double X(double x) => Box.Left + ((x - From) / (To - From) * Box.Width);

        public double Y(double y) => Box.Bottom + ((y - Low) / (High - Low) * Box.Height);

        public Vec2 At(double x, double y) => new(X(x), Y(y));
    }
}
