using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Timber;

/// <summary>
/// One layer in plan, seen from outside: to port the planks' numbers, to starboard the strain of each as a part of what a cold bend is trusted with, in grey and in
/// figures; a letter where it does not bend cold.
/// </summary>
internal static class StrainView
{
    private const double HeadMm = 17;
    private const double NamesMm = 9;
    private const double GapMm = 6;
    private const double LeastBarsMm = 25;
    private const double MostBarsMm = 75;

    /// <summary>Grey of a plank at its limit: figures on it must still be read.</summary>
    private const double AtLimit = 0.62;

    public static SheetPage Page(BottomPlan plan, PlankLayerPlan layer, LayerTimber wood)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        var sight = PanelSight.Of(plan, layer);
        var hull = Box.Around(
            layer
                .Outline.Select(p => sight.Of(p, Side.Starboard))
                .Concat(layer.Of(Side.Port).Outline.Select(p => sight.Of(p, Side.Port)))
        );
        string[] legend = [.. Legend(layer, wood)];
        double words = legend.Sum(l =>
            Letters.Wrap(l, Letters.Bench, inside.Width).Count * Letters.Bench * Letters.Leading
        );
        var ratio = Ratio.Fitting(
            hull,
            inside.Width - 16,
            inside.Height - HeadMm - NamesMm - words - LeastBarsMm - (3 * GapMm),
            plan.Job.Units
        );
        double height = ratio.Factor * hull.Height,
            left = inside.Height - HeadMm - NamesMm - words - height,
            bars = Math.Clamp(left - (3 * GapMm), LeastBarsMm, MostBarsMm),
            space = Math.Max(GapMm, (left - bars) / 3),
            top = inside.Top - HeadMm - space,
            foot = top - height,
            under = foot - NamesMm - space;
        var at = Placing.Centred(
            hull,
            new Box(inside.Left, foot, inside.Right, top),
            ratio.Factor,
            ratio.Factor
        );
        return OverviewSheet.Page(
            plan.Job,
            ("Timber: strain of each plank", $"both sides, {SheetWords.Of(layer)}, outer face up"),
            ratio,
            Cautions.Strength,
            pad =>
            {
                Heading(pad, inside, layer, wood);
                Draw(pad, inside, (plan, layer, wood), sight, at, foot);
                StrainBars.Draw(
                    pad,
                    inside with
                    {
                        Top = under,
                        Bottom = under - bars,
                    },
                    layer,
                    wood
                );
                double y = under - bars - space;
                foreach (string line in legend)
                {
                    y = pad.Paragraph(inside.Left, y, inside.Width, line, Letters.Bench);
                }
            }
        );
    }

    private static void Heading(SheetCanvas pad, Box inside, PlankLayerPlan layer, LayerTimber wood)
    {
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}, {wood.Species.Title}: strain of each plank, percent of what a cold bend is trusted with",
            Letters.Name,
            bold: true
        );
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name - 6,
            $"Seen from outside, {(layer.Panel.HasKeel ? "as the hull lies upside down" : $"both sides opened out from the {layer.Panel.WordOf(PanelEdge.Lower)}")}, forward to the left. Port above: the planks' numbers. Starboard below: percent, the darker the harder; 100 is the limit of a cold bend.",
            Letters.Bench
        );
    }

    private static void Draw(
        SheetCanvas pad,
        Box inside,
        (BottomPlan Plan, PlankLayerPlan Layer, LayerTimber Wood) of,
        PanelSight sight,
        Placing at,
        double foot
    )
    {
        (BottomPlan plan, PlankLayerPlan layer, LayerTimber wood) = of;
        var timber = wood.Planks.ToDictionary(p => p.Id);
        PlankNumbers numbers = PlankNumbers.Usual with
        {
            AlongPlanks = true,
            Within = inside,
            Label = p => p.Side == Side.Port ? p.Id.Short : Figure(timber[p.Id]),
            Grey = p => p.Side == Side.Port ? null : Grey(timber[p.Id].Bend.StrainIndex),
        };
        StationNames.Row(
            pad,
            LayerEdges
                .Of(plan, layer)
                .Stations.Select(s => (s.Name, at[sight.Of(s.Upper, Side.Starboard)].X)),
            foot - NamesMm + 1
        );
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
        pad.Closed(
            layer.Outline.Select(p => at[sight.Of(p, Side.Starboard)]),
            Pens.HullEdge,
            Layers.Hull
        );
        pad.Closed(
            layer.Of(Side.Port).Outline.Select(p => at[sight.Of(p, Side.Port)]),
            Pens.HullEdge,
            Layers.Hull
        );
        pad.BreakAroundLetters(Layers.Hull);
    }

    private static string Figure(PlankTimber plank) =>
        TimberWords.UsedNumber(plank.Bend.StrainIndex)
        + plank.Bend.Way switch
        {
            BendWay.SoakOrSteam => " S",
            BendWay.LaminateThinner => " L",
            BendWay.Refuse => " R",
            _ => "",
        };

    private static double? Grey(double? index) =>
        index is { } i ? 1 - ((1 - AtLimit) * Math.Min(1, i)) : null;

    private static IEnumerable<string> Legend(PlankLayerPlan layer, LayerTimber wood)
    {
        yield return $"The limit, 100: {TimberWords.Strain(wood.Judge.ColdStrain ?? 0)} strain along the grain, {wood.Judge.Basis}. Bars: dark what the bend takes, light what laying a flat plank on a curved {layer.Panel.Name} adds. S: soak or steam to form, dry below 12 % and meter before glue. L: laminate thinner. R: refuse.";
        foreach (IGrouping<string, Plank> group in layer.Starboard.GroupBy(p => p.Bend.Verdict))
        {
            Plank[] planks = [.. group];
            string which =
                planks.Length <= 24 && planks.Length < layer.Starboard.Length
                    ? $" ({string.Join(", ", planks.Select(p => NumberText.Trimmed(p.Number, 0)))})"
                    : "";
            yield return $"{char.ToUpperInvariant(group.Key[0])}{group.Key[1..]}: {PlanWords.Count(planks.Length, "plank")} a side{which}.";
        }
    }
}
