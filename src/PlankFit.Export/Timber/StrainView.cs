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
    private const double HeadMm = 22;
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
        string[] legend = [.. Legend(layer, wood)];
        double words = legend.Sum(l =>
            Letters.Wrap(l, Letters.Bench, inside.Width).Count * Letters.Bench * Letters.Leading
        );
        var view = LayerInPlan.Of(
            plan,
            layer,
            new(
                inside.Left + 8,
                inside.Bottom + NamesMm + words + LeastBarsMm + (3 * GapMm),
                inside.Right - 8,
                inside.Top - HeadMm
            )
        );
        double height = view.Ratio.Factor * view.Hull.Height,
            left = inside.Height - HeadMm - NamesMm - words - height,
            bars = Math.Clamp(left - (3 * GapMm), LeastBarsMm, MostBarsMm),
            space = Math.Max(GapMm, (left - bars) / 3),
            top = inside.Top - HeadMm - space,
            foot = top - height,
            under = foot - NamesMm - space;
        view = view.In(new(inside.Left, foot, inside.Right, top));
        return OverviewSheet.Page(
            plan.Job,
            ("Timber: strain of each plank", $"both sides, {SheetWords.Of(layer)}, outer face up"),
            view.Ratio,
            Cautions.Strength,
            pad =>
            {
                Heading(pad, inside, view, wood);
                Draw(pad, inside, view, wood, foot);
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

    private static void Heading(SheetCanvas pad, Box inside, LayerInPlan view, LayerTimber wood)
    {
        PlankLayerPlan layer = view.Layer;
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}, {wood.Species.Title}: strain of each plank, percent of what a cold bend is trusted with",
            Letters.Name,
            bold: true
        );
        pad.Paragraph(
            inside.Left,
            inside.Top - Letters.Name - 4,
            inside.Width,
            $"Seen from outside, {(layer.Panel.HasKeel ? "as the hull lies upside down" : $"both sides opened out from the {layer.Panel.WordOf(PanelEdge.Lower)}")}, forward to the left. Port above: the planks' numbers.{view.Said} Starboard below: percent, the darker the harder; 100 is the limit of a cold bend.",
            Letters.Bench
        );
    }

    private static void Draw(
        SheetCanvas pad,
        Box inside,
        LayerInPlan view,
        LayerTimber wood,
        double foot
    )
    {
        PlankLayerPlan layer = view.Layer;
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
                .Of(view.Plan, layer)
                .Stations.Select(s => (s.Name, view.Of(s.Upper, Side.Starboard).X)),
            foot - NamesMm + 1
        );
        // To starboard grey is the strain.
        view.DrawBehind(pad, Side.Port);
        numbers.Draw(
            pad,
            [
                .. layer
                    .Starboard.Concat(layer.Port)
                    .Select(p => (p, (IReadOnlyList<Vec2>)view.Outline(p))),
            ]
        );
        view.DrawEdges(pad);
        pad.BreakAroundLetters(Layers.Hull, Layers.Behind);
    }

    private static string Figure(PlankTimber plank) =>
        PlankWords.StrainUsedNumber(plank.Bend.StrainIndex)
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
