using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The corner at the chine in full size, square to the chine's run, at the middle station: every layer, the topside, the trim and the rounding.</summary>
internal static class ChineSketch
{
    private const double ShownMm = 60;

    public static SheetPage Page(Job job, SettingUpSpec spec, SettingUpPlan setting)
    {
        CornerRow row = setting.Corners[setting.Corners.Length / 2];
        return new(
            SheetFormat.Bench(job),
            SettingUpPages.Block($"the corner at the chine, station {row.Station}") with
            {
                Scale = "1:1",
            },
            (pad, inside) => Draw(pad, inside.Within(4), job, spec, row)
        );
    }

    private static void Draw(Pad pad, Box box, Job job, SettingUpSpec spec, CornerRow row)
    {
        // The bottom lies level on the sheet, outer face down, inboard to the left; the topside rises at the corner's angle.
        var corner = new Vec2(box.Left + (0.5 * box.Width), box.Bottom + 32);
        double whole = job.Layers.Sum(l => l.ThicknessMm),
            z = 0;
        double turn = Math.PI - (row.CornerDegrees * Math.PI / 180);

        // Depths run upward from the outer face; the outer corner is where the two outer faces meet.
        TrimRow last = row.Trims[^1];
        bool bottomOver = spec.Topside!.Lap == ChineLap.BottomLapsTopside;
        var up = new Vec2(Math.Cos(turn), Math.Sin(turn));
        Vec2 into = new(-Math.Sin(turn), Math.Cos(turn));
        int plank = row.Trims.Length;
        for (int i = job.Layers.Length - 1; i >= 0; i--)
        {
            LayerSpec layer = job.Layers[i];
            double next = z + layer.ThicknessMm;
            if (layer is PlankLayerSpec)
            {
                TrimRow trim = row.Trims[--plank];

                // Beside the outer corner, so that the sketch needs no table.
                double outer = End(spec, turn, z, whole),
                    inner = End(spec, turn, next, whole);
                Vec2[] shape =
                [
                    corner + new Vec2(-ShownMm, z),
                    corner + new Vec2(outer, z),
                    corner + new Vec2(inner, next),
                    corner + new Vec2(-ShownMm, next),
                ];
                pad.Closed(shape, Pens.Outer, Layers.Marks, 0.85);
                pad.Text(
                    new(corner.X - ShownMm - 2, corner.Y + ((z + next) / 2)),
                    trim.Layer,
                    Letters.Small,
                    Anchor.MiddleRight
                );
            }

            z = next;
        }

        double thick = spec.Topside.ThicknessMm;
        double from = bottomOver ? whole / Math.Sin(turn) : 0,
            fromInner = bottomOver
                ? (whole - (thick * Math.Cos(turn))) / Math.Sin(turn)
                : Inner(turn, thick);
        pad.Closed(
            [
                corner + (from * up),
                corner + (ShownMm * up),
                corner + (ShownMm * up) + (thick * into),
                corner + (fromInner * up) + (thick * into),
            ],
            Pens.Outer
        );
        Vec2 word = corner + ((ShownMm + 6) * up);
        pad.Text(word, "topside", Letters.Small, Anchor.MiddleLeft);
        Rounding(pad, corner, up, row, spec);
        pad.Paragraph(
            box.Left,
            box.Top,
            box.Width * 0.45,
            $"Seen along the chine, full size, outer faces below and to the right. Corner {SettingUpPages.Degrees(row.CornerDegrees).TrimStart('+', ' ')} inside. The rounding begins {LengthText.ForPaper(row.TangentMm, job.Units)} from the corner on each face and takes {LengthText.ForPaper(row.OffCornerMm, job.Units)} off it.",
            Letters.Bench
        );
    }

    /// <summary>Where a face of the bottom at a depth ends, from the outer corner.</summary>
    private static double End(SettingUpSpec spec, double turn, double depth, double whole)
    {
        double thick = spec.Topside!.ThicknessMm;
        double outer = depth / Math.Tan(turn);
        double inner = outer - (thick / Math.Sin(turn));
        return spec.Topside.Lap switch
        {
            ChineLap.BottomLapsTopside => outer,
            ChineLap.TopsideLapsBottom => inner,
            _ => depth / whole * ((whole / Math.Tan(turn)) - (thick / Math.Sin(turn))),
        };
    }

    /// <summary>How far up the topside its inner face begins where it runs down to the outer corner: to the bottom's outer face.</summary>
    private static double Inner(double turn, double thick) => -thick / Math.Tan(turn);

    private static void Rounding(Pad pad, Vec2 corner, Vec2 up, CornerRow row, SettingUpSpec spec)
    {
        Vec2 a = corner - new Vec2(row.TangentMm, 0),
            b = corner + (row.TangentMm * up);
        Vec2 centre = a + new Vec2(0, spec.CornerRadiusMm);
        double from = -Math.PI / 2,
            turn = Math.Atan2((b - centre).Y, (b - centre).X) - from;
        pad.Open(
            Enumerable
                .Range(0, 25)
                .Select(i => from + (turn * i / 24))
                .Select(t => centre + (spec.CornerRadiusMm * new Vec2(Math.Cos(t), Math.Sin(t)))),
            Pens.Cut
        );
        pad.Dot(a, 0.8);
        pad.Dot(b, 0.8);
    }
}
