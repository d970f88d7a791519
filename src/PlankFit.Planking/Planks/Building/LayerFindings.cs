using System.Globalization;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What a person should know of a layer before sawing.</summary>
internal static class LayerFindings
{
    public static IEnumerable<Finding> Of(LaidLayer layer, LengthUnit units)
    {
        PlankLayerPlan plan = layer.Plan;
        PlankLayerSpec spec = layer.Spec;
        string where = $"layer {spec.Name}";
        string Mm(double mm) => LengthText.ForPaper(mm, units, RoundTo.Nearest);

        foreach (Plank corner in new[] { plan.Starboard[0], plan.Starboard[^1] })
        {
            double length = Math.Max(
                corner.ForwardEdge.SeamLengthMm,
                corner.AfterEdge.SeamLengthMm
            );
            if (new CornerPiece(corner.WidestMm, length).IsSliver(spec.WidthMm))
            {
                yield return new(
                    Severity.Warning,
                    corner.Id,
                    $"the corner piece is small ({Mm(corner.WidestMm)} wide, {Mm(length)} along its seam); no shift of the master plank by up to half a width mends it: glue it to its neighbour before sawing, or choose another `master`"
                );
            }
        }

        var angles = plan
            .Starboard.Where(p => p.KeelAngleDegrees is not null)
            .Select(p => (p.Id, p.KeelAngleDegrees!.Value))
            .ToList();
        if (angles.Count > 0)
        {
            (string lowId, double low) = angles.MinBy(a => a.Value);
            (string highId, double high) = angles.MaxBy(a => a.Value);
            string run = string.Create(
                CultureInfo.InvariantCulture,
                $"the planks meet the keel at {low:0.0} ({lowId}) to {high:0.0} degrees ({highId}); {spec.AngleDegrees:0.#} was asked for"
            );
            int tapered = layer.Row.Tapered.Count;
            if (tapered > 0)
            {
                run += $"; {tapered} tapered plank(s) keep the drift within bounds";
            }

            bool over =
                spec.Hold == Hold.Width
                && angles.Any(a =>
                    Math.Abs(a.Value - spec.AngleDegrees) > spec.DriftDegrees + 1e-6
                );
            if (over)
            {
                run += string.Create(
                    CultureInfo.InvariantCulture,
                    $"; that is past drift = {spec.DriftDegrees:0.#} degrees: tapers of 6/10 of the width do not hold it, so allow more drift or use narrower planks"
                );
            }

            yield return new(over ? Severity.Warning : Severity.Note, where, run);
        }

        int shaped = plan.Starboard.Count(p => !p.StraightEdges);
        if (shaped > 0)
        {
            Plank worst = plan.Starboard.MaxBy(p => Math.Max(p.WidestGapMm, p.WidestOverlapMm))!;
            yield return new(
                Severity.Warning,
                worst.Id,
                $"{shaped} plank(s) a side of {where} need their edges shaped: straight edges would open or clash by up to {Mm(Math.Max(worst.WidestGapMm, worst.WidestOverlapMm))} here, and the glue is trusted with {Mm(spec.GapMm)}"
            );
        }

        foreach (
            IGrouping<string, Plank> verdict in plan
                .Starboard.GroupBy(p => p.Bend.Verdict)
                .Where(g => g.Key != "cold")
        )
        {
            Plank worst = verdict.MaxBy(p => p.Bend.StrainPercent)!;
            yield return new(
                Severity.Warning,
                worst.Id,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{verdict.Count()} plank(s) a side of {where}: {verdict.Key}; the hardest here, radius {worst.Bend.LeastRadiusMm ?? double.PositiveInfinity:0} mm, {worst.Bend.WorstAtMm:0} mm from its inboard end"
                )
            );
        }

        int both = plan.Starboard.Count(p => p.FitBothEnds);
        if (both > 0)
        {
            yield return new(
                Severity.Note,
                where,
                $"{both} plank(s) a side fit at both ends: saw one end long by its allowance, scribe, then trim"
            );
        }

        if (layer.LeastStaggerMm is { } least)
        {
            bool close = least < spec.WidthMm / 4;
            yield return new(
                close ? Severity.Warning : Severity.Note,
                where,
                $"its seams come no nearer than {Mm(least)} to those of the layer below on the same diagonal"
                    + (close ? "; the fans differ: choose another `master` or `stagger`" : "")
            );
        }

        if (Math.Abs(layer.Row.ShiftMm) > 1e-9)
        {
            yield return new(
                Severity.Note,
                where,
                $"the master plank was moved {Mm(Math.Abs(layer.Row.ShiftMm))} {(layer.Row.ShiftMm > 0 ? "aft" : "forward")} so that no corner is left a sliver"
            );
        }
    }

    /// <summary>A last look with a library that had no part in making it: the sawn outline is simple, and the net outline lies in it to 0.001 mm.</summary>
    private static bool SawnShapeHolds(Plank plank) =>
        PlanarShapes.IsSimple(plank.FlatNet)
        && PlanarShapes.IsSimple(plank.FlatCut)
        && PlanarShapes.FurthestOutside(plank.FlatCut, plank.FlatNet).Mm < 1e-3;
}
