using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>The keel as tables of data.</summary>
public static class KeelTables
{
    /// <summary>One row a layer, station and side.</summary>
    public static Table Stations(Job job, KeelPlan keel)
    {
        LengthUnit unit = job.Units;
        return TableOf.Build<(KeelLayerPlan Layer, KeelStation Row)>(
            "keel",
            [
                new("keel layer", 18, r => r.Layer.Spec.Name),
                new("meets", 14, r => r.Layer.Spec.Meets),
                new(
                    "station",
                    10,
                    r => new TableCell(r.Row.Station, null) { AtMm = r.Row.PositionMm }
                ),
                new("side", 10, r => PlankWords.Of(r.Row.Side)),
                new(
                    "half-width wanted",
                    14,
                    r => LengthText.ForPaper(r.Row.WantedHalfWidthMm, unit)
                ),
                new("half-width there", 14, r => LengthText.ForPaper(r.Row.HalfWidthMm, unit)),
                new("side bevel deg", 10, r => r.Row.Angles.BevelDegrees, 2),
                new("plank end bevel deg", 10, r => r.Row.Angles.PlankEndBevelDegrees, 2),
                new("deadrise deg", 10, r => r.Row.Angles.DeadriseDegrees, 2),
                new("keel slope deg", 10, r => r.Row.Angles.SlopeDegrees, 2),
                new("per mm of thickness", 10, r => KeelWords.TimesThickness(r.Row)),
                new("what to do", 44, r => KeelWords.ToDo(job, r.Layer, r.Row)),
                new("measured", 10, r => r.Row.Measured ? "yes" : "no"),
                new("position mm", 11, r => r.Row.PositionMm, 1),
                new("wanted mm", 11, r => r.Row.WantedHalfWidthMm, 3),
                new("as built mm", 11, r => r.Row.HalfWidthMm, 3),
                new("off the side mm", 11, r => r.Row.TakeOffSideMm, 3),
                new("proud mm", 11, r => r.Row.ProudMm, 3),
                new("along the keel mm", 11, r => r.Row.AlongMm, 1),
            ],
            keel.Layers.SelectMany(l => l.Stations.Select(s => (l, s)))
        );
    }

    /// <summary>The cap over the last cloth, one row a station and side.</summary>
    public static Table Cap(Job job, KeelPlan keel) =>
        TableOf.Build<KeelCapStation>(
            "keel cap",
            [
                new("station", 10, c => new TableCell(c.Station, null) { AtMm = c.PositionMm }),
                new("side", 10, c => PlankWords.Of(c.Side)),
                new("half-width", 14, c => LengthText.ForPaper(c.HalfWidthMm, job.Units)),
                new("edge bevel deg", 10, c => c.EdgeBevelDegrees, 2),
                new("position mm", 11, c => c.PositionMm, 1),
                new("half-width mm", 11, c => c.HalfWidthMm, 3),
            ],
            keel.Cap
        );
}
