using PlankFit.Export.Planks;
using PlankFit.Export.Sheets;
using PlankFit.Export.Tables;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Trust;

/// <summary>How sure every number of every plank is.</summary>
public static class TrustTables
{
    /// <summary>One row a plank of starboard; port is alike.</summary>
    public static Table Planks(BottomPlan plan, TrustPlan trust)
    {
        LengthUnit unit = plan.Job.Units;
        string Length(PlankTrust of) =>
            (of.LengthMm ?? of.InPlaceMm) is { } mm ? PlusMinus.Of(mm, unit) : "fit in place";
        ColumnOf<SureRow> Sigma(string head, NumberKind kind, string of) =>
            new(
                $"{head}, {TrustWords.Often}, {of}",
                13,
                r => trust.Sureness.WithinOf(new(r.Plank.Id, kind)),
                3
            );
        return TableOf.Build<SureRow>(
            "how sure",
            [
                new("plank", 9, r => r.Plank.Id.ToString()),
                new("layer", 7, r => LayerNumber.Of(r.Layer)),
                new("net length", 13, r => LengthText.ForPaper(r.Plank.NetLengthMm, unit)),
                new($"length, {TrustWords.Often}", 13, r => Length(r.Trust)),
                new("what to do", 40, r => TrustWords.ToDo(r.Plank, r.Trust, unit)),
                new("scribe, one in twenty short mm", 12, r => r.Trust.OneInTwentyMm, 2),
                new("scribe, none short mm", 12, r => r.Trust.NoneShortMm, 2),
                Sigma("length", NumberKind.Length, "mm"),
                Sigma("inboard end from its middle", NumberKind.Inboard, "mm"),
                Sigma("outboard end from its middle", NumberKind.Outboard, "mm"),
                Sigma("inboard angle", NumberKind.InboardAngle, "degrees"),
                Sigma("outboard angle", NumberKind.OutboardAngle, "degrees"),
                Sigma("bevel", NumberKind.Bevel, "degrees"),
                Sigma("forward seam along keel", NumberKind.ForwardKeelMark, "mm"),
                Sigma("forward seam along chine", NumberKind.ForwardChineMark, "mm"),
                Sigma("forward seam end to end", NumberKind.ForwardSeam, "mm"),
                Sigma("after seam along keel", NumberKind.AfterKeelMark, "mm"),
                Sigma("after seam along chine", NumberKind.AfterChineMark, "mm"),
                Sigma("after seam end to end", NumberKind.AfterSeam, "mm"),
                Sigma("diagonal", NumberKind.Diagonal, "mm"),
            ],
            Rows(plan, trust)
        );
    }

    /// <summary>One row a keel layer and station; none where the keel is not built up.</summary>
    public static Table Keel(Job job, TrustPlan trust) =>
        TableOf.Build<KeelSureRow>(
            "how sure, keel",
            [
                new("keel layer", 20, r => r.Layer),
                new(
                    "station",
                    10,
                    r => new Tables.TableCell(r.Station, null)
                    {
                        AtMm = PlaceAlong.XOf(job, r.Station),
                    }
                ),
                new("half-width mm", 12, r => r.Mm, 3),
                new($"half-width, {TrustWords.Often}, mm", 14, r => r.WithinMm, 3),
            ],
            KeelRows(trust)
        );

    internal static IEnumerable<KeelSureRow> KeelRows(TrustPlan trust)
    {
        Sensitivities slopes = trust.Sureness.Slopes;
        return from number in slopes.Numbers
            let row = slopes.IndexOf(number)
            where number.Keel is not null && row is not null
            select new KeelSureRow(
                number.Keel!.Value.Layer,
                number.Keel.Value.Station,
                slopes.Drawn[row.Value],
                trust.Sureness.WithinOf(number)!.Value
            );
    }

    internal static IEnumerable<SureRow> Rows(BottomPlan plan, TrustPlan trust) =>
        from layer in plan.PlankLayers
        from plank in layer.Starboard
        let sure = trust.On(plank.Id)
        where sure is not null
        select new SureRow(layer, plank, sure);
}

/// <summary>A plank of starboard with how sure it is.</summary>
internal sealed record SureRow(PlankLayerPlan Layer, Plank Plank, PlankTrust Trust);

/// <summary>The half-width of a keel layer at a station, and within what it is 19 times in 20, mm.</summary>
internal sealed record KeelSureRow(string Layer, string Station, double Mm, double WithinMm);
