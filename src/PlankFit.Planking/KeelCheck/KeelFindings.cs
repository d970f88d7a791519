using System.Globalization;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.KeelCheck;

/// <summary>What a person should know of the keel before planks are cut to it.</summary>
internal static class KeelFindings
{
    /// <summary>As in a table of offsets: less than this is not told from the reading, mm.</summary>
    private const double FairMm = 2.5;

    public static IEnumerable<Finding> Of(Planked planked, KeelPlan keel)
    {
        foreach (PlankLayerPlan layer in planked.PlankLayers)
        {
            if (keel.Layers.All(k => k.Spec.Meets != layer.Planks.Name))
            {
                yield return new(
                    Severity.Warning,
                    $"layer {layer.Planks.Name}",
                    $"no keel layer names these planks; they are cut to the side of {keel.Layers[0].Spec.Name}, carried on: name the keel layer that they meet under [[keel-layer]] meets"
                );
            }
        }

        foreach (KeelLayerPlan layer in keel.Layers)
        {
            if (layer.RunsOutAtMm is { } x)
            {
                yield return RunsOut(planked, layer, x);
            }

            if (KeelStock.Finding(planked.Job, layer) is { } narrow)
            {
                yield return narrow;
            }

            foreach (Finding finding in OfBothSides(planked.Job, layer))
            {
                yield return finding;
            }
        }

        foreach (
            MeasuredKeelHalfWidth beyond in planked.Job.AsBuilt.KeelHalfWidths.Where(m =>
                planked.Hull.Stations.All(s => s.Name != m.Station)
            )
        )
        {
            yield return new(
                Severity.Warning,
                $"keel, {beyond.Layer}, station {beyond.Station}",
                "was measured where the table has no bottom, between keel and chine: it is not used"
            );
        }

        foreach (Finding finding in KeelLaps.Findings(planked, keel))
        {
            yield return finding;
        }
    }

    /// <summary>What is the same on both sides is said once.</summary>
    private static IEnumerable<Finding> OfBothSides(PlankingJob job, KeelLayerPlan layer)
    {
        Finding[] OfSide(Side side, string on) => [.. KeelFindings.OfSide(job, layer, side, on)];
        Finding[] starboard = OfSide(Side.Starboard, "starboard"),
            port = OfSide(Side.Port, "port"),
            starboardAsBoth = OfSide(Side.Starboard, "both sides"),
            portAsBoth = OfSide(Side.Port, "both sides");
        return
        [
            .. starboard.Zip(
                starboardAsBoth,
                (own, both) => portAsBoth.Contains(both) ? both : own
            ),
            .. port.Zip(portAsBoth)
                .Where(p => !starboardAsBoth.Contains(p.Second))
                .Select(p => p.First),
        ];
    }

    private static Finding RunsOut(Planked planked, KeelLayerPlan layer, double x)
    {
        PlankId[] ids =
        [
            .. planked
                .PlankLayers.First(l => l.Planks.Name == layer.Spec.Meets)
                .Starboard.Where(p =>
                    p.Ends.Any(e => e.At == PanelEdge.Lower && e.Cut == EndCut.LeftLong)
                )
                .Select(p => p.Id),
        ];
        string planks =
            ids.Length == 0
                ? "no plank's end lies there"
                : $"{(ids.Length == 1 ? $"{ids[0]}" : $"{ids[0]} to {ids[^1]}")}, and their twins to port, are left long at the keel and fit at the chine where no [[ends.zone]] says otherwise";
        return new(
            Severity.Note,
            $"keel, {layer.Spec.Name}",
            $"{(layer.Spec.FromMm is null ? "it runs out" : "it begins")} {KeelPlaces.Of(planked.Hull, x, planked.Job.Units)}: forward of that {planks}"
        );
    }

    /// <param name="on">What the side is called.</param>
    private static IEnumerable<Finding> OfSide(
        PlankingJob job,
        KeelLayerPlan layer,
        Side side,
        string on
    )
    {
        KeelStation[] rows = [.. layer.On(side)];
        if (rows.Length == 0)
        {
            yield return new(
                Severity.Warning,
                $"keel, {layer.Spec.Name}, {on}",
                "the planks' outer face nowhere meets this layer's: look at its thickness and at the deadrise"
            );
            yield break;
        }

        rows = [.. rows.Where(r => !(r.PositionMm < layer.RunsOutAtMm))];
        KeelStation[] off = [.. rows.Where(r => IsOff(job.Keel, r))];
        foreach (KeelStation row in off.Where(r => r.Measured))
        {
            yield return new(
                Severity.Warning,
                $"keel, {layer.Spec.Name}, station {row.Station}, {on}",
                Told(row, job.Units)
            );
        }

        // Where anything was measured the drawing is out of date, and only what was measured is judged.
        if (
            layer.Spec.HalfWidth is not KeelHalfWidth.Mitre
            && off.Length > 0
            && rows.All(r => !r.Measured)
        )
        {
            KeelStation worst = off.MaxBy(r => Math.Abs(r.TakeOffSideMm))!;
            yield return new(
                Severity.Warning,
                $"keel, {layer.Spec.Name}, {on}",
                $"as drawn it leaves its mitre at {off.Length} of {rows.Length} stations, the most at station {worst.Station}: {Told(worst, job.Units)}"
            );
        }

        foreach (Finding finding in BeyondMeasured(job, layer, rows, on))
        {
            yield return finding;
        }

        foreach (Finding finding in Unfair(job, layer, rows, on))
        {
            yield return finding;
        }
    }

    private static bool IsOff(KeelSpec spec, KeelStation row) =>
        Math.Abs(row.TakeOffSideMm) > spec.HalfWidthToleranceMm
        || Math.Abs(row.ProudMm) > spec.ProudToleranceMm;

    private static string Told(KeelStation row, LengthUnit unit)
    {
        string Half(double mm) => LengthText.ForPaper(mm, unit);
        string Fine(double mm) => LengthText.Fine(mm, unit);
        double side = row.TakeOffSideMm;
        string what =
            $"half-width {Half(row.HalfWidthMm)}, wanted {Half(row.WantedHalfWidthMm)}: {Fine(Math.Abs(side))} too {(side > 0 ? "wide" : "narrow")}";
        return side > 0
            ? $"{what}; its outer face stands {Fine(row.ProudMm)} proud of the planks: plane so much off its side, or so much off its outer face at the edge, before the planks are fitted"
            : $"{what}; its outer face is {Fine(-row.ProudMm)} shy of the planks: glue a strip to its side and plane it back, or plane the planks' ends down to it";
    }

    /// <summary>Past the outermost station that was measured the keel is taken to be out by as much as there: a guess, and told as one.</summary>
    private static IEnumerable<Finding> BeyondMeasured(
        PlankingJob job,
        KeelLayerPlan layer,
        KeelStation[] rows,
        string on
    )
    {
        KeelStation[] measured = [.. rows.Where(r => r.Measured)];
        if (measured.Length == 0)
        {
            yield break;
        }

        foreach (
            (KeelStation last, string way, bool open) in new[]
            {
                (measured[0], "forward", rows[0].PositionMm < measured[0].PositionMm),
                (measured[^1], "aft", rows[^1].PositionMm > measured[^1].PositionMm),
            }
        )
        {
            if (open && IsOff(job.Keel, last))
            {
                yield return new(
                    Severity.Warning,
                    $"keel, {layer.Spec.Name}, {on}",
                    $"nothing is measured {way} of station {last.Station}: the planks there are cut to a keel that is out by as much as at that station; measure on before they are cut"
                );
            }
        }
    }

    /// <summary>Between measured stations the edge is judged by its run: each against what the others foretell.</summary>
    private static IEnumerable<Finding> Unfair(
        PlankingJob job,
        KeelLayerPlan layer,
        KeelStation[] rows,
        string on
    )
    {
        KeelStation[] measured = [.. rows.Where(r => r.Measured)];
        if (measured.Length < 6)
        {
            yield break;
        }

        double[] x = [.. measured.Select(r => r.PositionMm)],
            off = [.. measured.Select(r => r.HalfWidthMm - r.WantedHalfWidthMm)];
        var judged = LeaveOneOut.Of(x, off, 3);
        int k = Enumerable.Range(0, x.Length).MaxBy(i => judged.Gains[i]);
        if (k > 0 && k < x.Length - 1 && Math.Abs(judged.Residuals[k]) >= FairMm)
        {
            yield return new(
                Severity.Warning,
                $"keel, {layer.Spec.Name}, station {measured[k].Station}, {on}",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the edge as measured does not run fair here: {LengthText.ForPaper(Math.Abs(judged.Residuals[k]), job.Units, RoundTo.Nearest)} {(judged.Residuals[k] > 0 ? "outside" : "inside")} the run of the other stations; measure again"
                )
            );
        }
    }
}
