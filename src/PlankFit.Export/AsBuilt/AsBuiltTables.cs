using PlankFit.Export.Sheets;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.AsBuilt;

/// <summary>What was measured and what was made of it, as a table of data.</summary>
public static class AsBuiltTables
{
    private sealed record Row(
        string What,
        string Where,
        Side Side,
        double DrawnMm,
        double? MeasuredMm,
        double LaidToMm
    );

    public static Table Of(Job job, AsBuiltPlan standing)
    {
        LengthUnit unit = job.Units;
        IEnumerable<Row> girths = standing
            .Girths.OrderBy(g => g.Key)
            .SelectMany(g =>
                g.Value.Select(r => new Row(
                    "girth",
                    r.Station,
                    g.Key,
                    r.DrawnMm,
                    r.MeasuredMm,
                    r.NowMm
                ))
            );
        IEnumerable<Row> seams = standing.Drifts.SelectMany(d =>
            d.Rows.Select(r => new Row(
                d.At == PanelEdge.Lower ? "seam at keel" : "seam at chine",
                r.PlankId.ToString(),
                d.Side,
                r.PlannedMm,
                r.MeasuredMm,
                r.MeasuredMm
            ))
        );
        IEnumerable<Row> moves = standing
            .Moves.OrderBy(m => m.Key)
            .SelectMany(m =>
                m.Value.Select(v => new Row(
                    $"{v.Line}, {OffsetRow.Word(v.Measure)}",
                    v.Station,
                    m.Key,
                    v.OldMm,
                    null,
                    v.NewMm
                ))
            );
        IEnumerable<Row> cut = standing.Sawn.SelectMany(r =>
            Places(r)
                .Where(p => p.Off is not null)
                .Select(p => new Row(
                    $"sawn plank, {p.Where}",
                    r.Id.ToString(),
                    r.Id.Side,
                    0,
                    null,
                    p.Off!.Value
                ))
        );
        return TableOf.Build<Row>(
            "as it stands",
            [
                new("what", 14, r => r.What),
                new(
                    "where",
                    10,
                    r => new TableCell(r.Where, null) { AtMm = PlaceAlong.XOf(job, r.Where) }
                ),
                new("side", 10, r => PlankWords.Of(r.Side)),
                new("drawn", 12, r => LengthText.ForPaper(r.DrawnMm, unit)),
                new(
                    "measured",
                    12,
                    r => r.MeasuredMm is { } m ? LengthText.ForPaper(m, unit) : null
                ),
                new("laid to", 12, r => LengthText.ForPaper(r.LaidToMm, unit)),
                new("drawn mm", 11, r => r.DrawnMm, 2),
                new("measured mm", 11, r => r.MeasuredMm, 2),
                new("off mm", 11, r => r.LaidToMm - r.DrawnMm, 2),
            ],
            girths.Concat(seams).Concat(moves).Concat(cut)
        );
    }

    /// <summary>The place less the plank: nought is what was drawn.</summary>
    private static (string Where, double? Off)[] Places(SawnRow row) =>
        [
            ("along forward", row.Fit.ForwardMm),
            ("along after", row.Fit.AfterMm),
            ($"across {Panel.InnerWordOf(row.Id)}", row.Fit.AtKeelMm),
            ($"across {Panel.OuterWordOf(row.Id)}", row.Fit.AtChineMm),
        ];
}
