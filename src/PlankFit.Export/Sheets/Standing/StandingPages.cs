using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The hull as it stands, on paper: what was measured, what was made of it, and what crept.</summary>
public static class StandingPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, StandingPlan standing)
    {
        Job job = plan.Job;
        var pages = new List<SheetPage>();
        if (!standing.Girths.IsEmpty)
        {
            pages.Add(GirthChart(job, standing));
            pages.AddRange(GirthList(job, standing).Pages(job));
        }

        if (!standing.Drifts.IsEmpty)
        {
            pages.Add(DriftChart(job, standing));
            pages.AddRange(DriftList(job, standing).Pages(job));
        }

        if (pages.Count == 0)
        {
            pages.AddRange(KeelOnly().Pages(job));
        }

        return SheetPage.Numbered(job, pages);
    }

    private static TitleBlock Block(string of) =>
        new("The hull as it stands", of, "figures", null, Cautions.Check);

    private static SheetPage GirthChart(Job job, StandingPlan standing)
    {
        ImmutableArray<GirthRow> any = standing.Girths.First().Value;
        var lines = standing
            .Girths.OrderBy(g => g.Key)
            .Select(g => new ChartLine(
                PlankWords.Of(g.Key),
                g.Key == Side.Starboard ? Pens.HullEdge : Pens.Seam,
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
            v => Signed(v, job.Units)
        );
        return new(
            SheetFormat.Bench(job),
            Block("girths, keel edge to chine") with
            {
                Scale = "chart, not to scale",
                Forward = new Vec2(-1, 0),
            },
            (pad, inside) => chart.Draw(pad, inside.Within(4))
        );
    }

    private static ListSheet GirthList(Job job, StandingPlan standing) =>
        new(
            Block("girths, keel edge to chine"),
            [
                $"Keel edge to chine on the face that the first layer is laid on, {SheetWords.Unit(job.Units)}. Chine and lines between are moved along the section until the girth is as measured; where nothing was measured the correction runs evenly between its neighbours, and on beyond the last. The keel is held.",
            ],
            [
                new("station", 10, false),
                new("side", 12, false),
                new("drawn", 14),
                new("measured", 14),
                new("laid to", 14),
                new("moved", 14),
            ],
            [
                .. standing
                    .Girths.OrderBy(g => g.Key)
                    .SelectMany(g =>
                        g.Value.Select(r =>
                            ImmutableArray.Create(
                                r.Station,
                                PlankWords.Of(g.Key),
                                LengthText.PaperNumber(r.DrawnMm, job.Units),
                                r.MeasuredMm is { } m
                                    ? LengthText.PaperNumber(m, job.Units)
                                    : "not measured",
                                LengthText.PaperNumber(r.NowMm, job.Units),
                                Signed(r.MovedMm, job.Units)
                            )
                        )
                    ),
            ]
        );

    private static SheetPage DriftChart(Job job, StandingPlan standing)
    {
        static int Number(string id) =>
            int.Parse(
                id.AsSpan(id.IndexOf('-') + 1),
                System.Globalization.CultureInfo.InvariantCulture
            );

        IEnumerable<IGrouping<(int Layer, Side Side), SeamDrift>> groups = standing.Drifts.GroupBy(
            d => (d.Layer, d.Side)
        );
        LineChart[] charts =
        [
            .. groups.Select(g =>
            {
                Vec2[] Points(HullEdge at) =>
                    [
                        .. g.Where(d => d.At == at)
                            .SelectMany(d => d.Rows)
                            .Select(r => new Vec2(Number(r.PlankId), r.OffMm))
                            .OrderBy(p => p.X),
                    ];
                Vec2[] keel = Points(HullEdge.Keel),
                    chine = Points(HullEdge.Chine);
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
                    v => Signed(v, job.Units)
                );
            }),
        ];
        return new(
            SheetFormat.Bench(job),
            Block("seams of fitted planks") with
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

    private static ListSheet DriftList(Job job, StandingPlan standing) =>
        new(
            Block("seams of fitted planks"),
            [
                $"Where the after seam of each plank was drawn to cross the edge and where it does, from station {job.Standing.From ?? job.Offsets.Stations[0].Name}, along the edge, {SheetWords.Unit(job.Units)}. Planks not yet cut are laid on from the last fitted edge as it lies; fitted ones keep their numbers.",
            ],
            [
                new("plank", 10, false),
                new("edge", 9, false),
                new("drawn", 13),
                new("measured", 13),
                new("off", 10),
                new("the run", 40, false),
            ],
            [
                .. standing.Drifts.SelectMany(d =>
                    d.Rows.Select(
                        (r, i) =>
                            ImmutableArray.Create(
                                r.PlankId,
                                d.At == HullEdge.Keel ? "keel" : "chine",
                                LengthText.PaperNumber(r.PlannedMm, job.Units),
                                LengthText.PaperNumber(r.MeasuredMm, job.Units),
                                Signed(r.OffMm, job.Units),
                                i > 0 ? ""
                                    : d.SincePlank is null
                                        ? $"going {(d.GoingAft ? "aft" : "forward")}: within the tape"
                                    : $"going {(d.GoingAft ? "aft" : "forward")}: creeping since {d.SincePlank}"
                            )
                    )
                ),
            ]
        );

    private static ListSheet KeelOnly() =>
        new(
            Block("keel half-widths"),
            [
                "Only the keel was measured: see keel.pdf for what it is and what it does to the planks.",
            ],
            [new("", 1, false)],
            []
        );

    private static string Signed(double mm, LengthUnit unit) =>
        (
            mm < 0 ? "- "
            : mm > 0 ? "+ "
            : ""
        ) + LengthText.PaperNumber(Math.Abs(mm), unit);
}
