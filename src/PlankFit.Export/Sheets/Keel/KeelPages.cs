using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

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
                $"Half-widths at the layer's outer face, {SheetWords.Unit(unit)}, from the centre line. \"Wanted\" is where the outer faces of planks and keel meet; \"there\" is what the keel has: measured where starred, else as the job names it. Plane where it is too wide, before planks are fitted.",
                "Side bevel: off plumb, + where the outer face is the wider. Plank ends: tilt of the saw from square, the outer face the longer.",
            ],
            [
                new("station", 9, false),
                new("side", 11, false),
                new("deadrise", 9),
                new("wanted", 12),
                new("there", 12),
                new("what to do", 42, false),
                new("side bevel", 10),
                new("plank ends", 10),
            ],
            [
                .. layer.Stations.Select(r =>
                    ImmutableArray.Create(
                        r.Station,
                        PlankWords.Of(r.Side),
                        Degrees(r.DeadriseDegrees),
                        Mm(r.WantedHalfWidthMm),
                        Mm(r.HalfWidthMm) + (r.Measured ? " *" : ""),
                        ToDo(job, r),
                        Degrees(r.BevelDegrees),
                        Degrees(r.PlankEndBevelDegrees)
                    )
                ),
            ]
        );
    }

    /// <summary>In words, to half a millimetre: "plane 2 off the side (stands 0.5 proud)".</summary>
    private static string ToDo(Job job, KeelStation row)
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), job.Units);
        bool off =
            Math.Abs(row.TakeOffSideMm) > job.Keel.HalfWidthToleranceMm
            || Math.Abs(row.ProudMm) > job.Keel.ProudToleranceMm;
        return !off ? "fair: nothing"
            : row.TakeOffSideMm > 0
                ? $"plane {Mm(row.TakeOffSideMm)} off the side, or {Mm(row.ProudMm)} off the face"
            : $"{Mm(row.TakeOffSideMm)} narrow, {Mm(row.ProudMm)} shy: make up or plane planks";
    }

    private static ListSheet Ends(Job job, KeelLayerPlan layer) =>
        new(
            Block($"{layer.Spec.Name}: what it does to the planks of {layer.Spec.Meets}"),
            [
                "The planks are already cut to the keel that is there. This is how much longer (+) or shorter (-) each is along its own line than it would be on a keel at its mitre.",
            ],
            [
                new("plank", 12, false),
                new("longer or shorter", 18),
                new("cut, from square", 16),
                new("bevel", 12),
            ],
            [
                .. layer.PlankEnds.Select(e =>
                    ImmutableArray.Create(
                        e.PlankId,
                        (e.LengthChangeMm < 0 ? "- " : "+ ")
                            + LengthText.ForPaper(Math.Abs(e.LengthChangeMm), job.Units),
                        Degrees(Math.Abs(90 - e.CutDegrees)),
                        Degrees(e.BevelDegrees)
                    )
                ),
            ]
        );

    private static ListSheet Cap(Job job, KeelPlan keel) =>
        new(
            Block("the cap over the last cloth"),
            [
                "After the last cloth the keel is closed by a cap. Its inner face is as wide as the finished keel is where the finished bottom meets it; with its edges at the bevel given, off square, they run on in the bottom's own line.",
            ],
            [
                new("station", 10, false),
                new("side", 12, false),
                new("half-width", 14),
                new("edge bevel", 12),
            ],
            [
                .. keel.Cap.Select(c =>
                    ImmutableArray.Create(
                        c.Station,
                        PlankWords.Of(c.Side),
                        LengthText.PaperNumber(c.HalfWidthMm, job.Units),
                        Degrees(c.EdgeBevelDegrees)
                    )
                ),
            ]
        );

    /// <summary>To half a degree, as a saw is set.</summary>
    private static string Degrees(double degrees) =>
        (Math.Round(2 * degrees, MidpointRounding.AwayFromZero) / 2 + 0.0).ToString(
            "0.0",
            CultureInfo.InvariantCulture
        ) + "°";
}
