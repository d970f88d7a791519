using System.Collections.Immutable;
using PlankFit.Export.Framing;
using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Fastenings;

/// <summary>Where every fastening of a layer goes, both sides, seen from outside, forward to the left; what lies behind is drawn in grey.</summary>
public static class FasteningPlanView
{
    private const double HeadMm = 17;
    private const double KeyMm = 12;
    private const double MostSignMm = 0.75;
    private const double LeastSignMm = 0.25;

    /// <summary>Half a sign's width as a part of what lies between two along a timber: with its bar, half as long again each way, it takes two thirds of it, and stands by itself.</summary>
    private const double SignOfSpacing = 0.22;
    private const double PullDownGrey = 0.45;

    public static Drawing Of(BottomPlan plan, FasteningPlan fastenings, PlankLayerPlan layer)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        var view = LayerInPlan.Of(
            plan,
            layer,
            new(inside.Left + 8, inside.Bottom + KeyMm, inside.Right - 8, inside.Top - HeadMm)
        );
        return OverviewSheet.Of(
            plan.Job,
            ("Fastening plan", $"both sides, {SheetWords.Of(layer)}, outer face up"),
            view.Ratio,
            Cautions.Fasten,
            pad =>
            {
                Heading(pad, inside, fastenings, view);
                Draw(pad, inside, fastenings, view);
                Key(pad, inside, fastenings, layer);
                BehindOnViews.Draw(
                    pad,
                    plan,
                    [.. layer.Starboard, .. layer.Port],
                    view.On,
                    inside,
                    IsNamed
                );
            }
        );
    }

    /// <summary>Places where nothing may be driven, and what one side alone has.</summary>
    private static bool IsNamed(FramingSpec thing) =>
        thing.Kind == FramingKind.Open || BehindOnViews.IsOneSided(thing);

    private static void Heading(
        SheetCanvas pad,
        Box inside,
        FasteningPlan fastenings,
        LayerInPlan view
    )
    {
        (BottomPlan plan, PlankLayerPlan layer) = (view.Plan, view.Layer);
        FasteningRule rule = fastenings.Layers.First(l => l.Layer == layer.Number).Rule;
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}: {What(fastenings, layer, rule)}",
            Letters.Name,
            bold: true
        );
        pad.Paragraph(
            inside.Left,
            inside.Top - Letters.Name - 3,
            inside.Width,
            "Seen from outside, as the hull lies upside down: port above, starboard below, forward to the left."
                + view.Said
                + " "
                + (
                    plan.Job.Framing.Any(IsNamed)
                        ? "Dashed, with its name: a place kept open, in which nothing is driven, and what is on one side only. "
                        : ""
                )
                + FasteningRuleWords.Of(rule, layer.Number == 1, plan.Job.Units),
            Letters.Bench
        );
    }

    /// <summary>By its rule; where no timber of it is named that would do, that there is none.</summary>
    private static string What(FasteningPlan fastenings, PlankLayerPlan layer, FasteningRule rule)
    {
        FasteningUse[] uses =
        [
            .. fastenings.Totals.Where(t => t.Layer == layer.Number).Select(t => t.Use),
        ];
        return rule.Kind == FasteningKind.None || uses.Any(u => u != FasteningUse.PullDown)
                ? FasteningWords.Kind(rule.Kind, rule.Shape)
            : uses.Length == 0 ? "nothing to fasten to"
            : "nothing to fasten to, pull-down points alone";
    }

    private static void Draw(
        SheetCanvas pad,
        Box inside,
        FasteningPlan fastenings,
        LayerInPlan view
    )
    {
        PlankLayerPlan layer = view.Layer;
        view.DrawBehind(pad);
        view.DrawPlanks(pad, Pens.Rule);
        Numbers(pad, inside, layer.Starboard, view);
        Numbers(pad, inside, layer.Port, view);
        double apart = fastenings.Layers.First(l => l.Layer == layer.Number).Rule.SpacingMm,
            size = Math.Clamp(
                Math.Min(12, SignOfSpacing * apart) * view.At.X,
                LeastSignMm,
                MostSignMm
            );
        foreach (Plank plank in layer.Starboard.Concat(layer.Port))
        {
            foreach (
                Fastening f in fastenings
                    .On(plank.Id)!
                    .Points.OrderBy(f => f.Use == FasteningUse.PullDown ? 0 : 1)
            )
            {
                pad.Add(
                    Sign(
                        f.Use,
                        f.Kind,
                        view.On(Point(layer, plank.Side, plank.Map.On(f.At)), plank.Side),
                        size,
                        Pens.Measure
                    )
                );
            }
        }
    }

    /// <summary>As on patterns, but that pull-down points are grey dots: there are thousands, and squares of them would blacken the sheet.</summary>
    private static IEnumerable<Shape> Sign(
        FasteningUse use,
        FasteningKind kind,
        Vec2 at,
        double size,
        Pen pen
    ) =>
        use == FasteningUse.PullDown
            ?
            [
                new CircleShape(
                    FasteningMarks.LayerOf(use, kind),
                    Pens.None,
                    at,
                    0.5 * size,
                    PullDownGrey
                ),
            ]
            : FasteningMarks.Sign(use, kind, at, size, pen);

    private static Vec3 Point(PlankLayerPlan layer, Side side, Uv on)
    {
        Vec3 p = layer.Of(side).Surface.At(on.U, on.V).P;
        return side == Side.Port ? p.MirroredInY() : p;
    }

    /// <summary>The plank's number outside its outboard end, further out where the last stands too near.</summary>
    private static void Numbers(
        SheetCanvas pad,
        Box inside,
        IEnumerable<Plank> planks,
        LayerInPlan view
    )
    {
        foreach (Plank plank in planks.Select(p => p.OnHull))
        {
            if (plank.Ends.IsEmpty)
            {
                continue;
            }

            ImmutableArray<Vec3> end = plank.Ends[^1].Outline;
            Vec3 middle = end[end.Length / 2],
                inward =
                    (1.0 / plank.Outline.Length)
                    * plank.Outline.Aggregate(default(Vec3), (a, b) => a + b);
            Vec2 on = view.On(middle, plank.Side),
                from = view.On(inward, plank.Side),
                out_ = plank.Ends[^1].At == PanelEdge.Upper
                    ? new Vec2(0, Math.Sign(on.Y - from.Y))
                    : (on - from).Unit();
            pad.TextAtFirst(
                new[] { 3.0, 5, 7, 9 }.Select(away => new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    on + (away * out_),
                    plank.Id.Short,
                    Letters.Small,
                    Anchor.MiddleCentre
                )),
                inside
            );
        }
    }

    /// <summary>Each sign with what it is and how many there are, along the foot.</summary>
    private static void Key(
        SheetCanvas pad,
        Box inside,
        FasteningPlan fastenings,
        PlankLayerPlan layer
    )
    {
        double x = inside.Left + 3,
            y = inside.Bottom + 4;
        foreach (
            IGrouping<FasteningSort, FasteningTotal> g in fastenings
                .Totals.Where(t => t.Layer == layer.Number)
                .GroupBy(t => t.Sort)
        )
        {
            pad.Add(Sign(g.Key.Use, g.Key.Kind, new(x, y + 1.2), 1.6, Pens.Outer));
            string words =
                $"{FasteningWords.What(g.Key.Use, g.Key.Kind, g.Key.Shape)}: {FasteningWords.Count(g.Sum(t => t.Count))} on both sides{(g.Where(t => t.HasNoLength).Sum(t => t.Count) is > 0 and var without ? $", {FasteningWords.Count(without)} of them without a length that will do" : "")}";
            pad.Text(x + 5, y, words, Letters.Bench);
            x += 5 + Letters.Width(words, Letters.Bench) + 12;
        }
    }
}
