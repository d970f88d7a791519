using PlankFit.Export.Taping;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Checks;

/// <summary>How to tape, how much may be out and why, and what to do beyond it; beside it what the stock's true width does.</summary>
internal static class CheckNotes
{
    /// <summary>What the notes and the sketch need below the table.</summary>
    public const double HeightMm = 52;

    private const double NoteMm = 2.2;

    /// <summary>
    /// Offsets read to ±0.8 mm (1/32 in) change a length from keel to chine by up to 1.4 mm (rms, computed on hulls of this kind); twice that is the limit.
    /// </summary>
    public static double LimitMm(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 3 : LengthUnits.MmPerInch / 8;

    public static void Draw(
        SheetCanvas pad,
        Box box,
        PlankLayerPlan layer,
        Side side,
        string station,
        LengthUnit unit,
        bool own
    )
    {
        string lower = layer.Panel.WordOf(PanelEdge.Lower),
            upper = layer.Panel.WordOf(PanelEdge.Upper),
            corner = layer.Panel.HasKeel ? "the keel's edge" : $"the {lower}";
        double middle = box.Left + (0.54 * box.Width);
        string[] how =
        [
            $"Tape along the bare face that this layer is laid on: a and b from the station's mark at {corner} and at the {upper}; c along the seam, {lower} end to {upper} end; "
                + $"d from the forward seam's {lower} end to the after seam's {upper} end. Where a seam ends at stem or transom, from the corner at the {lower} along that edge. Write below each figure what the tape says.",
            own
                ? $"LIMIT: ± beside a figure, 19 times in 20, {TapedWords.If}; where none stands, {PlankWords.Small(LimitMm(unit), unit)}. a and b are set out as marks: c and d are taped between them."
                : $"LIMIT {PlankWords.Small(LimitMm(unit), unit)} on every reading: offsets read to {(LengthUnits.IsMetric(unit) ? "0.8 mm" : "1/32\"")} alter a length from {lower} to {upper} by half as much.",
            "ONE reading beyond it: measure again, then look at that frame. A difference that GROWS from plank to plank: the stations do not stand where the table says. "
                + "Saw nothing until the frames are mended, or the offsets as built are in the table and the job is run again.",
        ];
        Smaller(
            pad,
            box.Bottom,
            (on, size) =>
                how.Aggregate(
                    box.Top,
                    (top, text) =>
                        on.Paragraph(box.Left, top, middle - box.Left - 5, text, size) - 0.8
                )
        );
        Smaller(
            pad,
            box.Bottom + CheckSketch.HeightMm,
            (on, size) => StockCreep.Draw(on, box with { Left = middle }, layer, unit, size)
        );
        CheckSketch.Draw(
            pad,
            new Box(middle, box.Bottom, box.Right, box.Bottom + CheckSketch.HeightMm),
            side,
            layer,
            station
        );
    }

    /// <summary>Written in smaller letters where the usual ones would run down into what stands below.</summary>
    /// <param name="write">In letters of a size; returns where the words end.</param>
    private static void Smaller(
        SheetCanvas pad,
        double bottom,
        Func<SheetCanvas, double, double> write
    ) => write(pad, write(new SheetCanvas(), NoteMm) >= bottom ? NoteMm : Letters.Small);
}
