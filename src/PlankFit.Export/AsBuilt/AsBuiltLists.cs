using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.AsBuilt;

/// <summary>The lists of the hull as it stands: girths, what was changed in the table, and seams of fitted planks.</summary>
internal static class AsBuiltLists
{
    public static TitleBlock Block(string of) => Block(of, Panel.Bottom("", "", []));

    public static TitleBlock Block(string of, Panel panel) =>
        new("The hull as it stands", of, "figures", null, Cautions.CheckBy(panel));

    public static ListSheet Girths(Job job, AsBuiltPlan standing) =>
        new(
            Block("girths, keel edge to chine"),
            [
                job.AsBuilt.Tables is not null
                    ? $"Keel edge to chine on the face that the first layer is laid on, {SheetWords.Unit(job.Units)}. The hull is adjusted to all that was taped, girths among it: see what the tape says."
                    : $"Keel edge to chine on the face that the first layer is laid on, {SheetWords.Unit(job.Units)}. Chine and lines between are moved along the section until the girth is as measured; where nothing was measured the correction runs evenly between its neighbours, and on beyond the last. The keel is held.",
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
        )
        {
            About =
            [
                .. standing
                    .Girths.OrderBy(g => g.Key)
                    .SelectMany(g => g.Value.Select(r => PlaceAlong.Station(job, r.Station))),
            ],
        };

    public static ListSheet Moves(Job job, AsBuiltPlan standing) =>
        new(
            Block("the table as it is laid to"),
            [
                $"Values of the table that {(job.AsBuilt.Tables is null ? "the girths change" : "what was taped changes")} by as much as paper shows, {SheetWords.Unit(job.Units)}; as-built.json has all. The file of offsets is left as it is.",
            ],
            [
                new("station", 9, false),
                new("side", 12, false),
                new("line", 20, false),
                new("measure", 14, false),
                new("table", 12),
                new("laid to", 12),
                new("moved", 12),
            ],
            [
                .. standing
                    .Moves.OrderBy(m => m.Key)
                    .SelectMany(m =>
                        m.Value.Where(v => LengthText.OnPaperMm(v.MoveMm, job.Units) != 0)
                            .Select(v =>
                                ImmutableArray.Create(
                                    v.Station,
                                    PlankWords.Of(m.Key),
                                    v.Line,
                                    OffsetRow.Word(v.Measure),
                                    LengthText.PaperNumber(v.OldMm, job.Units),
                                    LengthText.PaperNumber(v.NewMm, job.Units),
                                    Signed(v.MoveMm, job.Units)
                                )
                            )
                    ),
            ]
        )
        {
            About =
            [
                .. standing
                    .Moves.OrderBy(m => m.Key)
                    .SelectMany(m =>
                        m.Value.Where(v => LengthText.OnPaperMm(v.MoveMm, job.Units) != 0)
                            .Select(v => PlaceAlong.Station(job, v.Station))
                    ),
            ],
        };

    public static ListSheet Drifts(Job job, AsBuiltPlan standing) =>
        new(
            Block("seams of fitted planks"),
            [
                $"Where the after seam of each plank was drawn to cross the edge and where it does, from station {job.AsBuilt.From ?? job.Offsets.Stations[0].Name}, along the edge, {SheetWords.Unit(job.Units)}. Planks not yet cut are laid on from the last fitted edge as it lies; fitted ones keep their numbers.",
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
                                r.PlankId.ToString(),
                                d.At == PanelEdge.Lower ? "keel" : "chine",
                                LengthText.PaperNumber(r.PlannedMm, job.Units),
                                LengthText.PaperNumber(r.MeasuredMm, job.Units),
                                Signed(r.OffMm, job.Units),
                                i == 0 ? Run(d, job.Units) : ""
                            )
                    )
                ),
            ]
        );

    private static string Run(SeamCreep drift, LengthUnit unit)
    {
        string going = $"going {(drift.GoingAft ? "aft" : "forward")}";
        if (drift.SincePlank is null)
        {
            return $"{going}: within the tape";
        }

        string back = drift.NarrowerMm is { } mm
            ? $"; {AsBuiltFindings.Rate(mm, unit)} off each of {drift.PlanksLeft} planks brings it back"
            : "";
        return $"{going}: creeping since {drift.SincePlank}, {AsBuiltFindings.Rate(drift.MmAPlank, unit)} a plank{back}";
    }

    public static ListSheet KeelOnly() =>
        new(
            Block("keel half-widths"),
            [
                "Only the keel was measured: see the sheets of the keel for what it is and what it does to the planks.",
            ],
            [new("", 1, false)],
            []
        );

    /// <summary>With its sign, as paper shows it; what paper does not tell from nought has none.</summary>
    public static string Signed(double mm, LengthUnit unit)
    {
        string size = LengthText.PaperNumber(Math.Abs(mm), unit);
        return LengthText.OnPaperMm(mm, unit) == 0 ? size
            : mm < 0 ? "- " + size
            : "+ " + size;
    }
}
