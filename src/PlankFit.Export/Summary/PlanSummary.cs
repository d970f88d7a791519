using System.Collections.Immutable;
using PlankFit.Export.Joints;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>What a person is told of a plan at the end of the work.</summary>
/// <param name="WidestGap">The plank whose straight edge would open furthest from its neighbour's; null where none opens.</param>
/// <param name="WidestOverlap">The plank whose straight edge would overlap most; null where none does.</param>
/// <param name="WorstBend">The plank with the greatest fibre strain from bending; null where all are flat.</param>
/// <param name="StockMm">Lengths to cut of all planks, or of their pieces, added up.</param>
/// <param name="LookFirst">What to look at first, what costs most first; never empty while there is a plank.</param>
public sealed record PlanSummary(
    ImmutableArray<LayerSummary> Layers,
    Plank? WidestGap,
    Plank? WidestOverlap,
    Plank? WorstBend,
    double StockMm,
    ImmutableArray<string> LookFirst
)
{
    /// <summary>What features say of the whole plan, the wood first.</summary>
    public ImmutableArray<string> OfFeatures { get; init; } = [];

    /// <summary>Rules that shape the work, said by the job or not.</summary>
    public ImmutableArray<string> Shaping { get; init; } = [];

    /// <summary>Below this a straight edge is as good as closed and a bend as good as none: nothing to report.</summary>
    private const double NothingMm = 0.005;
    private const double NothingPercent = 0.0005;

    public static PlanSummary Of(BottomPlan plan)
    {
        ImmutableArray<Plank> planks =
        [
            .. plan.AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port)),
        ];
        return new(
            [.. plan.AllPlankLayers.Select(l => LayerSummary.Of(l.Panel, l.Layer))],
            Greatest(planks, p => p.WidestGapMm, NothingMm),
            Greatest(planks, p => p.WidestOverlapMm, NothingMm),
            Greatest(planks, p => p.Bend.StrainPercent, NothingPercent),
            planks.Sum(p => JointWords.StockMm(plan.PanelOf(p.Id), p)),
            [.. BeforeYouSaw.First(plan)]
        )
        {
            OfFeatures = [.. OnPlanks.Of(plan).Added.SelectMany(a => a.InSummary())],
            Shaping = [.. WhatShapes.Lines(plan)],
        };
    }

    /// <summary>The summary and what to look at first.</summary>
    public IEnumerable<string> AllLines(LengthUnit unit) =>
        Lines(unit)
            .Concat(LookFirst.Select((look, i) => (i == 0 ? "Look first: " : "Then: ") + look));

    /// <summary>The summary as lines for a terminal, in the job's unit.</summary>
    public IEnumerable<string> Lines(LengthUnit unit)
    {
        foreach (LayerSummary layer in Layers)
        {
            yield return layer.Line(unit);
        }

        yield return "Straight edges: "
            + (WidestGap, WidestOverlap) switch
            {
                (null, null) => "close everywhere.",
                ({ } gap, null) => Gap(gap, unit) + ".",
                (null, { } overlap) => Overlap(overlap, unit) + ".",
                ({ } gap, { } overlap) => $"{Gap(gap, unit)}; {Overlap(overlap, unit)}.",
            };
        yield return WorstBend is { } bent
            ? $"Hardest bend: {bent.Id}, {PlankWords.Radius(bent.Bend.LeastRadiusMm ?? 1e6, unit)} radius, "
                + $"{LengthText.From(bent.Bend.WorstAtMm, unit, $"its {Panel.InnerWordOf(bent.Id)} end")}, {bent.Bend.Verdict} (an estimate, as every verdict is)."
            : "Hardest bend: none, every plank lies flat.";
        yield return $"Stock to cut: {PlanWords.Stock(StockMm, unit)} together, before any plan of cutting.";
        foreach (string line in Shaping.Concat(OfFeatures))
        {
            yield return line;
        }
    }

    private static string Gap(Plank p, LengthUnit unit) =>
        $"widest opening {LengthText.Fine(p.WidestGapMm, Fine(unit))} at {p.Id}";

    private static string Overlap(Plank p, LengthUnit unit) =>
        $"widest overlap {LengthText.Fine(p.WidestOverlapMm, Fine(unit))} at {p.Id}";

    /// <summary>Tenths of a millimetre say little in metres.</summary>
    private static LengthUnit Fine(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit;

    private static Plank? Greatest(
        ImmutableArray<Plank> planks,
        Func<Plank, double> of,
        double nothing
    ) => planks.MaxBy(of) is { } plank && of(plank) > nothing ? plank : null;
}

/// <summary>A layer in numbers.</summary>
public sealed record LayerSummary(
    string Code,
    string Name,
    int Starboard,
    int Port,
    int Tapered,
    int Corners,
    double AreaASideMm2,
    double StockMm
)
{
    public static LayerSummary Of(BottomPlan plan, PlankLayerPlan layer)
    {
        ImmutableArray<Plank> all = [.. layer.Starboard, .. layer.Port];
        return new(
            layer.Code,
            layer.Planks.Name,
            layer.Starboard.Length,
            layer.Port.Length,
            all.Count(p => p.Kind == PlankKind.Tapered),
            all.Count(p => p.Kind == PlankKind.Corner),
            layer.AreaMm2,
            all.Sum(p => JointWords.StockMm(plan, p))
        );
    }

    public string Line(LengthUnit unit)
    {
        string planks =
            Starboard == Port
                ? PlanWords.Count(Starboard, "plank") + " a side"
                : $"{PlanWords.Count(Starboard, "plank")} to starboard, {Port} to port";
        string tapered = Tapered > 0 ? $", {Tapered} tapered" : "";
        string corners = Corners > 0 ? $", {PlanWords.Count(Corners, "corner piece")} in all" : "";
        return $"Layer {Code}, {Name}: {planks}{tapered}{corners}; {PlanWords.Area(AreaASideMm2, unit)} a side; "
            + $"{PlanWords.Stock(StockMm, unit)} of stock for both sides.";
    }
}
