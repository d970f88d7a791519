using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Checks;

/// <summary>The table of readings: what the tape should say above, a blank for what it says below.</summary>
internal static class CheckTable
{
    private const double HeadMm = 13;
    private const double MostRowMm = 12;
    private const double ContinuedMm = 9;

    private static readonly double[] Widths =
    [
        0.085,
        0.135,
        0.135,
        0.135,
        0.135,
        0.135,
        0.135,
        0.105,
    ];

    public static void Draw(
        SheetCanvas pad,
        Box inside,
        (BottomPlan Plan, TapeAdvice? Advice) of,
        PlankLayerPlan layer,
        Side side,
        SeamCheck[] checks,
        bool withNotes
    )
    {
        LengthUnit unit = of.Plan.Job.Units;
        Box box = inside.Within(4);
        string station = checks
            .SelectMany(c => new[] { c.Forward, c.After })
            .OfType<TapedSeam>()
            .SelectMany(s => new[] { s.Inboard, s.Outboard })
            .Where(e => e.At is PanelEdge.Lower or PanelEdge.Upper)
            .Select(e => e.From)
            .FirstOrDefault("-");
        double[] x = Columns(box);
        Head(pad, box, x, layer.Panel, station);
        double top = box.Top - HeadMm,
            below = withNotes ? CheckNotes.HeightMm : ContinuedMm,
            row = Math.Min(MostRowMm, (top - box.Bottom - below) / checks.Length);
        foreach (SeamCheck check in checks)
        {
            Row(
                pad,
                x,
                (top, row),
                check,
                of.Advice?.Limits.GetValueOrDefault(check.PlankId),
                layer,
                unit
            );
            top -= row;
        }

        for (int i = 0; i < x.Length; i++)
        {
            pad.Line(x[i], box.Top, x[i], top, Pens.Rule);
        }

        if (withNotes)
        {
            CheckNotes.Draw(
                pad,
                box with
                {
                    Top = top - 3,
                },
                layer,
                side,
                station,
                unit,
                of.Advice is not null
            );
        }
        else
        {
            pad.Text(box.Left, top - 6, "Continued on the next page.", Letters.Bench);
        }
    }

    private static double[] Columns(Box box)
    {
        double[] x = new double[Widths.Length + 1];
        x[0] = box.Left;
        for (int i = 0; i < Widths.Length; i++)
        {
            x[i + 1] = x[i] + (Widths[i] * box.Width);
        }

        return x;
    }

    private static void Head(SheetCanvas pad, Box box, double[] x, Panel panel, string station)
    {
        string lower = panel.WordOf(PanelEdge.Lower),
            upper = panel.WordOf(PanelEdge.Upper);
        string[] seams = ["", "forward seam", "", "", "after seam", "", "", ""];
        string[] heads =
        [
            "plank",
            $"a: along {lower} from",
            $"b: along {upper} from",
            "c: taped, end to end",
            $"a: along {lower} from",
            $"b: along {upper} from",
            "c: taped, end to end",
            "d: diagonal",
        ];
        for (int i = 0; i < heads.Length; i++)
        {
            if (seams[i].Length > 0)
            {
                pad.Text(x[i] + 1.5, box.Top - 4.2, seams[i], Letters.Bench, bold: true);
            }

            pad.Text(
                x[i] + 1.5,
                box.Top - 8.2,
                Letters.Shortened(heads[i], Letters.Small, x[i + 1] - x[i] - 2),
                Letters.Small
            );
        }

        foreach (int i in new[] { 1, 2, 4, 5 })
        {
            pad.Text(
                x[i] + 1.5,
                box.Top - 11.4,
                Letters.Shortened($"station {station}", Letters.Small, x[i + 1] - x[i] - 2, true),
                Letters.Small,
                bold: true
            );
        }

        pad.Line(box.Left, box.Top, box.Right, box.Top, Pens.Frame);
        pad.Line(box.Left, box.Top - HeadMm, box.Right, box.Top - HeadMm, Pens.Frame);
    }

    private static void Row(
        SheetCanvas pad,
        double[] x,
        (double Top, double Row) at,
        SeamCheck check,
        CheckLimits? limits,
        PlankLayerPlan layer,
        LengthUnit unit
    )
    {
        (double top, double row) = at;
        bool master = check.PlankId.Number == layer.MasterNumber;
        pad.Text(x[0] + 1.5, top - 4, check.PlankId.ToString(), Letters.Bench, bold: true);
        if (master)
        {
            pad.Text(x[0] + 1.5, top - 7.8, "master", Letters.Small);
        }

        Seam(pad, x[1..5], at, check.Forward, limits?.ForwardSeamMm, layer.Panel, unit);
        Seam(pad, x[4..8], at, check.After, limits?.AfterSeamMm, layer.Panel, unit);
        Cell(
            pad,
            x[7..9],
            at,
            check.DiagonalMm is { } d ? LengthText.PaperNumber(d, unit) : null,
            limits?.DiagonalMm,
            unit
        );
        pad.Line(x[0], top - row, x[^1], top - row, Pens.Rule);
    }

    private static void Seam(
        SheetCanvas pad,
        double[] x,
        (double Top, double Row) at,
        TapedSeam? seam,
        double? limitMm,
        Panel panel,
        LengthUnit unit
    )
    {
        TapedEnd?[] ends = [seam?.Inboard, seam?.Outboard];
        for (int i = 0; i < 2; i++)
        {
            Cell(
                pad,
                x[i..(i + 2)],
                at,
                ends[i] is { } end ? Place(end, panel, unit) : null,
                null,
                unit
            );
        }

        Cell(
            pad,
            x[2..4],
            at,
            seam is null ? null : LengthText.PaperNumber(seam.LengthMm, unit),
            limitMm,
            unit
        );
    }

    /// <summary>1204.5 aft; 88 fwd; stem, 120 up: where a seam runs out at stem or transom, from the keel's corner along that edge.</summary>
    private static string Place(TapedEnd end, Panel panel, LengthUnit unit)
    {
        string length = LengthText.PaperNumber(Math.Abs(end.AlongMm), unit);
        return end.At switch
        {
            PanelEdge.Lower or PanelEdge.Upper => $"{length} {(end.AlongMm >= 0 ? "aft" : "fwd")}",
            _ => $"{panel.WordOf(end.At)}, {length}",
        };
    }

    private static void Cell(
        SheetCanvas pad,
        double[] x,
        (double Top, double Row) at,
        string? should,
        double? limitMm,
        LengthUnit unit
    )
    {
        (double left, double right) = (x[0], x[1]);
        (double top, double row) = at;
        if (should is null)
        {
            pad.Text(
                (left + right) / 2,
                top - (row / 2) - 0.9,
                "none",
                Letters.Small,
                Anchor.BaselineCentre
            );
            return;
        }

        double room = right - left - 2.5;
        bool fits = Letters.Width(should, Letters.Bench) <= room;
        double y = top - 3.8;
        foreach (
            string line in fits
                ? [should]
                : Letters.Wrap(LetterWidths.Drawable(should), Letters.Small, room)
        )
        {
            pad.Text(left + 1.5, y, line, fits ? Letters.Bench : Letters.Small);
            y -= Letters.Small * Letters.Leading;
        }

        if (limitMm is { } limit)
        {
            pad.Text(
                right - 1.5,
                top - row + 1.8,
                "±" + LengthText.PaperNumber(limit, unit, RoundTo.Up),
                Letters.Small,
                Anchor.BaselineRight
            );
        }

        pad.Line(left + 1.5, top - row + 0.9, right - 1.5, top - row + 0.9, Pens.Net);
    }
}
