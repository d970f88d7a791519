using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>How to tape, how much may be out, what to do beyond it; and what the stock's true width does to the seams.</summary>
internal static class CheckNotes
{
    private const int Stacked = 10;
    private const double NoteMm = 2.2;

    private static readonly double[] MetricMm = [0.1, 0.2, 0.5];
    private static readonly double[] InchMm = [0.127, 0.254, 0.508];

    public static void Draw(Pad pad, Box box, PlankLayerPlan layer, LengthUnit unit)
    {
        double middle = box.Left + (0.56 * box.Width);
        string limit = PlankWords.Small(
            LengthUnits.IsMetric(unit) ? CheckTable.LimitMm : LengthUnits.MmPerInch / 8,
            unit
        );
        string[] how =
        [
            "Tape along the bare face that this layer is laid on, hooked to the station mark at the keel's edge (at the chine, to that station's mark there); each blank is for what the tape says. "
                + "At stem and transom measure from the keel's corner along that edge. The diagonal runs from the forward seam's keel end to the after seam's chine end, tape held down.",
            $"Limit: {limit} on every reading (twice what offsets read to 1/32 in do to a length from keel to chine).",
            "One reading beyond it: measure again, then look at that frame. A run that grows from plank to plank: the stations do not stand where the table says. "
                + "Either way saw nothing: mend the frames, or put the offsets as built in the table and run again.",
        ];
        double top = box.Top;
        foreach (string text in how)
        {
            top = pad.Paragraph(box.Left, top, middle - box.Left - 4, text, NoteMm) - 0.8;
        }

        Stock(pad, new Box(middle, box.Bottom, box.Right, box.Top), layer, unit);
    }

    private static void Stock(Pad pad, Box box, PlankLayerPlan layer, LengthUnit unit)
    {
        int forward = layer.MasterNumber - 1,
            aft = layer.Starboard.Length - layer.MasterNumber;
        double top = pad.Paragraph(
            box.Left,
            box.Top,
            box.Width,
            $"True width of the stock: lay {Stacked} planks edge to edge against a tape. They should read {LengthText.ForPaper(Stacked * layer.Planks.WidthMm, unit)}; they read ____________ , a tenth of which is ____________ .",
            NoteMm
        );
        top =
            pad.Paragraph(
                box.Left,
                top - 0.6,
                box.Width,
                $"Creep of the last seam, forward ({forward} planks) and aft ({aft}), where each plank is off by:",
                NoteMm
            ) - 0.4;
        double[] offs = LengthUnits.IsMetric(unit) ? MetricMm : InchMm;
        double step = box.Width / offs.Length;
        for (int i = 0; i < offs.Length; i++)
        {
            double off = offs[i];
            string creep =
                $"{Off(off, unit)}: {Amount(off * forward, unit)}, {Amount(off * aft, unit)}";
            pad.Text(
                box.Left + (i * step),
                top - NoteMm,
                Letters.Shortened(creep, NoteMm, step - 1, true),
                NoteMm,
                bold: true
            );
        }

        pad.Paragraph(
            box.Left,
            top - (NoteMm * Letters.Leading) - 0.6,
            box.Width,
            "Wider stock pushes seams outward from the master plank, narrower lets them creep towards it. Where the last seam would creep by more than the limit, put the true width in the job and run again before sawing.",
            NoteMm
        );
    }

    private static string Off(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Padded(mm, 1) + " mm"
            : NumberText.Padded(mm / LengthUnits.MmPerInch, 3) + " in";

    private static string Amount(double mm, LengthUnit unit) => PlankWords.Small(mm, unit);
}
