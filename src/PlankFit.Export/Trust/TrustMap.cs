using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Trust;

/// <summary>One layer in plan, seen from outside: to port the planks' numbers, to starboard how sure the length of each is, in grey and in figures.</summary>
internal static class TrustMap
{
    private const double HeadMm = 17;
    private const double NamesMm = 9;
    private const double GapMm = 6;

    /// <summary>Up to the first of the steps white, then greyer and greyer; figures on the darkest must still be read.</summary>
    private static readonly double[] Greys = [1, 0.9, 0.78, 0.64];

    private const string InPlace = "fit";

    public static SheetPage Page(BottomPlan plan, PlankLayerPlan layer, TrustPlan trust)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        var sight = PanelSight.Of(plan, layer);
        var hull = Box.Around(
            layer
                .Outline.Select(p => sight.Of(p, Side.Starboard))
                .Concat(layer.Of(Side.Port).Outline.Select(p => sight.Of(p, Side.Port)))
        );
        LengthUnit unit = plan.Job.Units;
        string legend = Legend(unit);
        double words =
            (
                Letters.Wrap(legend, Letters.Bench, inside.Width).Count
                * Letters.Bench
                * Letters.Leading
            ) + GapMm;
        var ratio = Ratio.Fitting(
            hull,
            inside.Width - 16,
            inside.Height - HeadMm - NamesMm - words - (2 * GapMm),
            unit
        );
        double top = inside.Top - HeadMm - GapMm,
            foot = Math.Max(
                inside.Bottom + words + NamesMm,
                top - (ratio.Factor * hull.Height) - GapMm
            );
        var at = Placing.Centred(
            hull,
            new Box(inside.Left, foot, inside.Right, top),
            ratio.Factor,
            ratio.Factor
        );
        return OverviewSheet.Page(
            plan.Job,
            (
                "How sure each plank's length is",
                $"both sides, {SheetWords.Of(layer)}, outer face up"
            ),
            ratio,
            Cautions.Overview,
            pad =>
            {
                Heading(pad, inside, layer);
                StationNames.Row(
                    pad,
                    LayerEdges
                        .Of(plan, layer)
                        .Stations.Select(s => (s.Name, at[sight.Of(s.Upper, Side.Starboard)].X)),
                    foot - NamesMm + 1
                );
                pad.Paragraph(
                    inside.Left,
                    foot - NamesMm - GapMm,
                    inside.Width,
                    legend,
                    Letters.Bench
                );
                // Last, so that leaders keep off what is lettered.
                Planks(pad, plan, layer, trust, sight, at);
            }
        );
    }

    private static void Heading(SheetCanvas pad, Box inside, PlankLayerPlan layer)
    {
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}: how far each plank's length may be out, {TrustWords.Often}",
            Letters.Name,
            bold: true
        );
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name - 6,
            "Seen from outside, as the hull lies upside down, forward to the left. Port above: the planks' numbers. Starboard below: how far the length may be out either way, the darker the less sure.",
            Letters.Bench
        );
    }

    private static void Planks(
        SheetCanvas pad,
        BottomPlan plan,
        PlankLayerPlan layer,
        TrustPlan trust,
        PanelSight sight,
        Placing at
    )
    {
        LengthUnit unit = plan.Job.Units;
        double? Within(Plank p) => trust.On(p.Id)?.LengthMm;
        // A fraction hangs below its line: in large letters it would stand upon its neighbour's.
        PlankNumbers numbers = PlankNumbers.Usual with
        {
            MostMm = LengthUnits.IsMetric(unit) ? PlankNumbers.Usual.MostMm : Letters.Bench,
            AlongPlanks = true,
            Label = p =>
                p.Side == Side.Port ? p.Id.Short
                : Within(p) is { } mm ? "±" + PlusMinus.Number(mm, unit)
                : InPlace,
            Grey = p => p.Side == Side.Port ? null : Grey(Within(p), unit),
        };
        numbers.Draw(
            pad,
            [
                .. layer
                    .Starboard.Concat(layer.Port)
                    .Select(p =>
                        (
                            p,
                            (IReadOnlyList<Vec2>)
                                at.Of(p.OnHull.Outline.Select(q => sight.At(q, p.Side)))
                        )
                    ),
            ]
        );
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            pad.Closed(
                layer.Of(side).Outline.Select(p => at[sight.Of(p, side)]),
                Pens.HullEdge,
                Layers.Hull
            );
        }
    }

    /// <summary>What is to be fitted in place is as dark as what is least sure.</summary>
    private static double Grey(double? within, LengthUnit unit) =>
        Greys[Steps(unit).Count(s => !(within <= s))];

    /// <summary>Where one grey ends and the next begins, mm: our own, no source.</summary>
    private static double[] Steps(LengthUnit unit)
    {
        const double sixteenth = LengthUnits.MmPerInch / 16;
        return LengthUnits.IsMetric(unit) ? [1, 2, 4] : [sixteenth, 2 * sixteenth, 3 * sixteenth];
    }

    private static string Legend(LengthUnit unit)
    {
        string[] steps = [.. Steps(unit).Select(mm => LengthText.ForPaper(mm, unit))];
        return $"White: within {steps[0]}. Light grey: within {steps[1]}. Grey: within {steps[2]}. Dark: more than that, or to be fitted in place ({InPlace}). "
            + $"Figures are {(LengthUnits.IsMetric(unit) ? LengthUnits.Name(unit) : "inches")}, up to the next {(LengthUnits.IsMetric(unit) ? LengthText.ForPaper(0.5, unit) : "1/32 in")} and never under {PlusMinus.Plain(0, unit)}: the hull between its frames and the saw are no surer.";
    }
}
