using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Timber;

/// <summary>
/// The strain of each plank as a bar over its number: dark what the bend takes, light what is added where a flat plank is laid on a curved bottom; a line across at
/// each row of the limits.
/// </summary>
internal static class StrainBars
{
    private const double FootMm = 6;
    private const double ScaleMm = 58;

    public static void Draw(SheetCanvas pad, Box box, PlankLayerPlan layer, LayerTimber wood)
    {
        if (wood.Judge.ColdStrain is not { } cold)
        {
            return;
        }

        Plank[] planks = [.. layer.Starboard];
        double most = Math.Max(1.1, 1.1 * planks.Max(p => p.Bend.GrainStrainPercent / 100 / cold)),
            foot = box.Bottom + FootMm,
            height = box.Top - foot,
            right = box.Right - ScaleMm,
            pitch = (right - box.Left) / planks.Length;
        double widest = planks.Max(p =>
            Letters.Width(NumberText.Trimmed(p.Number, 0), Letters.Small, true)
        );
        // Of many planks every other number is written, or every fifth.
        int every = new[] { 1, 2, 5, 10, 20 }.First(e => e == 20 || e * pitch > widest + 1);
        for (int i = 0; i < planks.Length; i++)
        {
            Bend bend = planks[i].Bend;
            double left = box.Left + (i * pitch) + (0.15 * pitch),
                to = left + (0.7 * pitch),
                whole = bend.GrainStrainPercent / 100 / cold,
                bent = Math.Min(whole, bend.StrainPercent / 100 / cold);
            Bar(left, to, 0, bent, 0.6);
            Bar(left, to, bent, whole, 0.93);
            if (planks[i].Number % every == 0 || every == 1)
            {
                pad.Text(
                    (left + to) / 2,
                    box.Bottom + 2,
                    NumberText.Trimmed(planks[i].Number, 0),
                    Letters.Small,
                    Anchor.BaselineCentre,
                    planks[i].Kind == PlankKind.Master
                );
            }
        }

        pad.Line(box.Left, foot, right, foot, Pens.Frame);
        double last = double.NegativeInfinity;
        foreach (BendLimit row in wood.Judge.Rows.Where(r => r.LeastRadiusOverThickness > 0))
        {
            double part =
                    wood.Judge.Rows[0].LeastRadiusOverThickness / row.LeastRadiusOverThickness,
                y = foot + (part / most * height);
            if (part <= most)
            {
                pad.Line(box.Left, y, right, y, part == 1 ? Pens.Tick : Pens.Inner);
                last = Math.Max(y - 1, last + (1.8 * Letters.Small));
                pad.Text(
                    right + 2,
                    last,
                    Letters.Shortened(
                        $"{NumberText.Trimmed(100 * part, 0)}: no further for \"{row.Verdict}\"",
                        Letters.Small,
                        ScaleMm - 3
                    ),
                    Letters.Small
                );
            }
        }

        void Bar(double left, double to, double low, double high, double grey)
        {
            if (high - low > 1e-4)
            {
                pad.Rectangle(
                    new(left, foot + (low / most * height), to, foot + (high / most * height)),
                    Pens.Measure,
                    grey
                );
            }
        }
    }
}
