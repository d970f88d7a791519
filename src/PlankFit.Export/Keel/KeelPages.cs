using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>The keel on paper: a chart of each layer, its figures station by station, what it does to the planks, and the cap.</summary>
public static class KeelPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, KeelPlan keel)
    {
        Job job = plan.Job;
        var pages = new List<SheetPage>();
        foreach (KeelLayerPlan layer in keel.Layers)
        {
            pages.Add(KeelChart.Page(plan, layer));
            pages.AddRange(Figures(job, layer).Pages(job));
        }

        foreach (KeelLayerPlan layer in keel.Layers)
        {
            if (layer.PlankEnds.Any(e => Math.Abs(e.LengthChangeMm) >= 0.25))
            {
                pages.AddRange(Ends(job, layer).Pages(job));
            }
        }

        pages.AddRange(Cap(job, keel).Pages(job));
        return SheetPage.Numbered(job, pages);
    }

    private static TitleBlock Block(string of) =>
        new("The keel that the planks meet", of, "figures", null, Cautions.Keel);

    private static ListSheet Figures(Job job, KeelLayerPlan layer)
    {
        LengthUnit unit = job.Units;
        string Mm(double mm) => LengthText.PaperNumber(mm, unit);
        return new(
            Block($"{layer.Spec.Name}, met by {layer.Spec.Meets}"),
            [
                $"Half-widths at the layer's outer face, {SheetWords.Unit(unit)}, from the centre line; along the keel from the first station, on that face. \"Wanted\" is where the outer faces of planks and keel meet; \"as built\" is what the keel has: measured where starred, else as the job names it. \"Proud\": its outer face stands beyond the planks' at its edge. Allowed: {KeelWords.Fine(job.Keel.HalfWidthToleranceMm, unit)} of half-width and {KeelWords.Fine(job.Keel.ProudToleranceMm, unit)} proud or shy.",
                $"\"{PerThickness(unit)}\": by how much the half-width wanted moves where the layer is so much thicker; the planks' thickness moves it a little more. Side bevel: off plumb, + where the outer face is the wider. Plank ends: tilt of the saw from square, + where the planks' outer face is the longer.",
            ],
            [
                new("station", 9, false),
                new("side", 10, false),
                new("along the keel", 12),
                new("deadrise", 9),
                new(PerThickness(unit), 12),
                new("wanted", 11),
                new("as built", 12),
                new("proud or shy", 15),
                new("what to do", 34, false),
                new("side bevel", 9),
                new("plank ends", 9),
            ],
            [
                .. KeelWords
                    .BySide(layer)
                    .Select(r =>
                        ImmutableArray.Create(
                            r.Row.Station,
                            r.Side,
                            Mm(r.Row.AlongMm),
                            KeelWords.Degrees(r.Row.Angles.DeadriseDegrees) + "°",
                            KeelWords.TimesThickness(r.Row),
                            Mm(r.Row.WantedHalfWidthMm),
                            Mm(r.Row.HalfWidthMm) + (r.Row.Measured ? " *" : ""),
                            KeelWords.Proud(r.Row, unit),
                            KeelWords.ToDo(job, layer, r.Row),
                            KeelWords.Signed(r.Row.Angles.BevelDegrees) + "°",
                            KeelWords.Signed(r.Row.Angles.PlankEndBevelDegrees) + "°"
                        )
                    ),
            ]
        )
        {
            About =
            [
                .. KeelWords.BySide(layer).Select(r => About(r.Row.PositionMm, r.Row.Station)),
            ],
        };
    }

    private static string PerThickness(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "per mm of thickness" : "per in of thickness";

    private static ListSheet Ends(Job job, KeelLayerPlan layer) =>
        new(
            Block($"{layer.Spec.Name}: what it does to the planks of {layer.Spec.Meets}"),
            [
                "The planks' sizes on cards and patterns are to the keel that is there already. This is how much longer (+) or shorter (-) each is along its centre line, and how far its cut is turned, against a keel at its mitre.",
            ],
            [
                new("plank", 12, false),
                new("longer or shorter", 18),
                new("cut, from square", 16),
                new("turned by", 12),
                new("bevel", 12),
            ],
            [
                .. layer.PlankEnds.Select(e =>
                    ImmutableArray.Create(
                        e.PlankId.ToString(),
                        (e.LengthChangeMm < 0 ? "- " : "+ ")
                            + KeelWords.Fine(Math.Abs(e.LengthChangeMm), job.Units),
                        KeelWords.Degrees(Math.Abs(90 - e.CutDegrees)) + "°",
                        AngleText.ForPaper(Math.Abs(e.CutChangeDegrees)),
                        KeelWords.Signed(e.BevelDegrees) + "°"
                    )
                ),
            ]
        );

    private static ListSheet Cap(Job job, KeelPlan keel)
    {
        string after = job.Layers.Any(l => l is not PlankLayerSpec)
            ? "the last cloth"
            : "the last keel layer";
        return new(
            Block($"the cap over {after}"),
            [
                $"After {after} the keel is closed by a cap. Its inner face is as wide as the finished keel is where the finished bottom meets it; with its edges at the bevel given, off square, they run on in the bottom's own line.",
            ],
            [
                new("station", 10, false),
                new("side", 12, false),
                new("half-width", 14),
                new("width if both alike", 14),
                new("edge bevel", 12),
            ],
            [
                .. Alike(keel.Cap)
                    .Select(c =>
                        ImmutableArray.Create(
                            c.Row.Station,
                            c.Side,
                            LengthText.PaperNumber(c.Row.HalfWidthMm, job.Units),
                            LengthText.PaperNumber(2 * c.Row.HalfWidthMm, job.Units),
                            KeelWords.Degrees(c.Row.EdgeBevelDegrees) + "°"
                        )
                    ),
            ]
        )
        {
            About = [.. Alike(keel.Cap).Select(c => About(c.Row.PositionMm, c.Row.Station))],
        };
    }

    /// <summary>Places between stations have no name.</summary>
    private static string About(double xMm, string station) =>
        PlaceAlong.Of(xMm, station.Length > 0 ? $"the keel at {station}" : "the keel");

    /// <summary>One row for both sides where they are alike.</summary>
    private static IEnumerable<(KeelCapStation Row, string Side)> Alike(
        ImmutableArray<KeelCapStation> cap
    )
    {
        KeelCapStation[] starboard = [.. cap.Where(c => c.Side == Side.Starboard)],
            port = [.. cap.Where(c => c.Side == Side.Port)];
        bool same =
            starboard.Length == port.Length
            && starboard
                .Zip(port)
                .All(p => Math.Abs(p.First.HalfWidthMm - p.Second.HalfWidthMm) < 0.02);
        return same
            ? starboard.Select(c => (c, "both"))
            : cap.Select(c => (c, PlankWords.Of(c.Side)));
    }
}
