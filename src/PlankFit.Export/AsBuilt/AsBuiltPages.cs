using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.AsBuilt;

/// <summary>The hull as it stands, on paper: what was measured, what was made of it, and what crept.</summary>
public static class AsBuiltPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, AsBuiltPlan standing)
    {
        Job job = plan.Job;
        var pages = new List<SheetPage>();
        if (!standing.Girths.IsEmpty)
        {
            pages.Add(GirthChart(job, standing));
            pages.AddRange(AsBuiltLists.Girths(job, standing).Pages(job));
            pages.AddRange(AsBuiltLists.Moves(job, standing).Pages(job));
        }

        if (!standing.Drifts.IsEmpty)
        {
            if (DriftChart(job, standing) is { } chart)
            {
                pages.Add(chart);
            }

            pages.AddRange(AsBuiltLists.Drifts(job, standing).Pages(job));
        }

        foreach (BottomPlan panel in plan.Panels)
        {
            SawnRow[] cut =
            [
                .. standing.Sawn.Where(r => ReferenceEquals(plan.PanelOf(r.Id), panel)),
            ];
            if (cut.Length > 0)
            {
                pages.AddRange(SawnList.Of(panel, cut).Pages(job));
            }
        }

        if (pages.Count == 0)
        {
            pages.AddRange(AsBuiltLists.KeelOnly().Pages(job));
        }

        return SheetPage.Numbered(job, pages);
    }

    private static SheetPage GirthChart(Job job, AsBuiltPlan standing)
    {
        ImmutableArray<GirthRow> any = standing.Girths.First().Value;
        IEnumerable<ChartLine> lines = standing
            .Girths.OrderBy(g => g.Key)
            .Select(g => new ChartLine(
                PlankWords.Of(g.Key),
                g.Key == Side.Starboard ? Pens.HullEdge : Pens.Net,
                [.. g.Value.Select(r => new Vec2(r.PositionMm, r.MovedMm))]
            )
            {
                Dots =
                [
                    .. g
                        .Value.Where(r => r.MeasuredMm is not null)
                        .Select(r => new Vec2(r.PositionMm, r.MeasuredMm!.Value - r.DrawnMm)),
                ],
            });
        var chart = new LineChart(
            $"By how much the girths leave the table, {SheetWords.Unit(job.Units)}; above the line the frame stands further out",
            [.. lines],
            [.. any.Select(r => (r.PositionMm, r.Station))],
            job.Units,
            v => AsBuiltLists.Signed(v, job.Units)
        );
        return new(
            SheetFormat.Bench(job),
            AsBuiltLists.Block("girths, keel edge to chine") with
            {
                Scale = "chart, not to scale",
                Forward = new Vec2(-1, 0),
            },
            (pad, inside) => chart.Draw(pad, inside.Within(4))
        );
    }

    private static SheetPage? DriftChart(Job job, AsBuiltPlan standing)
    {
        // Through the seams of one plank no line runs: the list says it.
        IGrouping<(int Layer, Side Side), SeamCreep>[] groups =
        [
            .. standing
                .Drifts.GroupBy(d => (d.Layer, d.Side))
                .Where(g =>
                    g.SelectMany(d => d.Rows).Select(r => r.PlankId).Distinct().Count() > 1
                ),
        ];
        if (groups.Length == 0)
        {
            return null;
        }

        LineChart[] charts =
        [
            .. groups.Select(g =>
            {
                Vec2[] Points(PanelEdge at) =>
                    [
                        .. g.Where(d => d.At == at)
                            .SelectMany(d => d.Rows)
                            .Select(r => new Vec2(r.PlankId.Number, r.OffMm))
                            .OrderBy(p => p.X),
                    ];
                Vec2[] keel = Points(PanelEdge.Lower),
                    chine = Points(PanelEdge.Upper);
                return new LineChart(
                    $"Layer {g.Key.Layer}, {PlankWords.Of(g.Key.Side)}: after seams against their plan, {SheetWords.Unit(job.Units)}; above the line they lie too far aft",
                    [
                        new("at the keel", Pens.HullEdge, [.. keel]) { Dots = [.. keel] },
                        new("at the chine", Pens.Inner, [.. chine]) { Dots = [.. chine] },
                    ],
                    [
                        .. keel.Concat(chine)
                            .Select(p => p.X)
                            .Distinct()
                            .Order()
                            .Select(x => (x, NumberText.Trimmed(x, 0))),
                    ],
                    job.Units,
                    v => AsBuiltLists.Signed(v, job.Units)
                );
            }),
        ];
        return new(
            SheetFormat.Bench(job),
            AsBuiltLists.Block("seams of fitted planks") with
            {
                Scale = "charts, not to scale",
            },
            (pad, inside) =>
            {
                for (int i = 0; i < charts.Length; i++)
                {
                    charts[i].Draw(pad, inside.Row(i, charts.Length).Within(4));
                }
            }
        );
    }
}
