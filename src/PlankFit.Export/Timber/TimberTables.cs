using System.Collections.Immutable;
using PlankFit.Export.Planks;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Export.Timber;

/// <summary>The lists about the wood: every plank's verdict, weight and movement, and the woods with the source of each figure.</summary>
public static class TimberTables
{
    /// <summary>One row a plank, in the order of the plank list; empty where no wood is named.</summary>
    public static Table Planks(BottomPlan plan) =>
        TableOf.Build("timber", [.. Verdict(plan), .. Weights(plan), .. InNumbers], Rows(plan));

    /// <summary>One row a figure, the woods of this job first.</summary>
    public static Table OfSpecies(BottomPlan plan) =>
        TableOf.Build<WoodFigure>(
            "species",
            [
                new("species", 28, f => f.Wood.Title),
                new("name in the job", 26, f => f.Wood.Name),
                new("used here", 9, f => f.Used ? "yes" : "no"),
                new("figure", 36, f => f.What),
                new("value", 12, f => f.Figure.Value, 5),
                new("unit", 16, f => f.Unit),
                new("how known", 14, f => TimberWords.Of(f.Figure.Tag)),
                new("source", 90, f => f.Figure.Source),
            ],
            WoodFigure.All(plan)
        );

    internal static IEnumerable<TimberRow> Rows(BottomPlan plan) =>
        from row in PlankRow.All(plan)
        let timber = row.Plan.Timber
        let layer = timber?.Of(row.Layer)
        where layer is not null
        select new TimberRow(row, layer, timber.Of(row.Plank.Id)!);

    private static ImmutableArray<ColumnOf<TimberRow>> Verdict(BottomPlan plan) =>
        [
            new("plank", 9, r => r.Row.Plank.Id.ToString()),
            new("layer", 7, r => LayerNumber.Of(r.Row.Layer)),
            new("species", 20, r => r.Layer.Species.Title),
            new("verdict", 24, r => r.Row.Plank.Bend.Verdict),
            new(
                "what to do",
                44,
                r => TimberWords.ToDo(r.Timber, r.Row.ThicknessMm, plan.Job.Units)
            ),
            new(
                "strain, of what a cold bend is trusted with",
                14,
                r => PlankWords.StrainUsed(r.Timber.Bend.StrainIndex)
            ),
            new(
                "widest for its curvature",
                14,
                r => TimberWords.Widest(r.Timber.Bend.WidestMm, plan.Job.Units)
            ),
            new(
                "straight stock pulled in sideways",
                16,
                r => TimberWords.PulledIn(r.Row.Plank, r.Timber)
            ),
            new(
                "springback a clamp, estimate",
                14,
                r => r.Timber.Bend.ClampNewtons is { } f ? TimberWords.Force(f, plan.Job.Units) : ""
            ),
        ];

    private static ImmutableArray<ColumnOf<TimberRow>> Weights(BottomPlan plan) =>
        [
            new(
                "weight as fitted",
                12,
                r => r.Timber.Weight is { } w ? TimberWords.Weight(w.Kg, plan.Job.Units) : ""
            ),
            new(
                "across, workshop to service",
                14,
                r =>
                    r.Timber.Movement is { } m
                        ? TimberWords.Movement(m.AcrossMm, plan.Job.Units)
                        : ""
            ),
        ];

    private static readonly ImmutableArray<ColumnOf<TimberRow>> InNumbers =
    [
        new("weight kg", 10, r => r.Timber.Weight?.Kg, 4),
        new("centre x mm", 11, r => r.Timber.Weight?.Centre.X, 2),
        new("centre y mm", 11, r => r.Timber.Weight?.Centre.Y, 2),
        new("centre z mm", 11, r => r.Timber.Weight?.Centre.Z, 2),
        new(
            "curvature factor",
            10,
            r =>
                r.Row.Plank.Bend.LeastRadiusMm is { } radius
                    ? BendJudge.CurvatureFactor(radius / r.Row.ThicknessMm)
                    : 1,
            3
        ),
        new("strain index", 10, r => r.Timber.Bend.StrainIndex, 4),
        new("strain along the grain percent", 12, r => r.Row.Plank.Bend.GrainStrainPercent, 4),
        new(
            "strain of pulling straight stock in percent",
            14,
            r => r.Timber.Bend.EdgeSet?.Strain * 100,
            4
        ),
        new("laminations", 11, r => r.Timber.Bend.Laminations),
        new("clamp newtons", 10, r => r.Timber.Bend.ClampNewtons, 0),
        new("across change mm", 11, r => r.Timber.Movement?.AcrossMm, 3),
        new("through thickness change mm", 11, r => r.Timber.Movement?.ThroughMm, 3),
    ];
}

/// <summary>A plank with what the wood makes of it.</summary>
internal sealed record TimberRow(PlankRow Row, LayerTimber Layer, PlankTimber Timber);

/// <summary>One figure of one wood.</summary>
internal sealed record WoodFigure(Species Wood, bool Used, string What, string Unit, Sourced Figure)
{
    /// <summary>Of all woods of the job; none where it names no wood.</summary>
    public static IEnumerable<WoodFigure> All(BottomPlan plan)
    {
        if (plan.JobTimber is not { } timber)
        {
            return [];
        }

        HashSet<string> used =
        [
            .. plan.Panels.SelectMany(p => p.Timber?.Layers ?? []).Select(l => l.Species.Name),
        ];
        return timber
            .Spec.Table.OrderByDescending(s => used.Contains(s.Name))
            .SelectMany(s => Of(s, used.Contains(s.Name)));
    }

    public static IEnumerable<WoodFigure> Of(Species wood, bool used) =>
        new (string What, string Unit, Sourced? Figure)[]
        {
            ("specific gravity (dry weight, volume at 12 %)", "", wood.Gravity),
            ("density as weighed", "kg/m³", wood.Density),
            ("modulus of elasticity, bending", "MPa", wood.Modulus),
            ("modulus of rupture", "MPa", wood.Rupture),
            ("shrinkage to oven-dry, radial", "%", wood.ShrinkRadial),
            ("shrinkage to oven-dry, tangential", "%", wood.ShrinkTangential),
            ("movement, quarter-sawn face", "part for 1 %", wood.Movement(Grain.Quarter)),
            ("movement, flat-sawn face", "part for 1 %", wood.Movement(Grain.Flat)),
            ("least dry radius over thickness", "", wood.LeastRadiusOverThickness),
        }
            .Where(f => f.Figure is not null)
            .Select(f => new WoodFigure(wood, used, f.What, f.Unit, f.Figure!));
}
