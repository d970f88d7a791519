using System.Globalization;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>What a person should know of a layer before sawing.</summary>
internal static class LayerFindings
{
    /// <summary>A tip shorter than this is lost in the saw's kerf, mm.</summary>
    private const double LeastTipMm = 0.25;

    /// <param name="side">The side that the layer is laid for; null where what is laid for starboard is port's as well.</param>
    /// <param name="sawn">Numbers of planks that are sawn: nothing about sawing them is told any more.</param>
    public static IEnumerable<Finding> Of(
        LaidLayer layer,
        BendLimits limits,
        LengthUnit units,
        Side? side,
        IReadOnlySet<int> sawn
    )
    {
        PlankLayerPlan plan = layer.Plan;
        bool ToSaw(Plank p) => !p.IsFitted && !sawn.Contains(p.Number);
        PlankLayerSpec spec = layer.Spec;
        var where = Subject.OfLayer(spec.Name, side);
        string aside = side is null ? " a side" : "";
        PlankId Id(Plank p) => p.Id with { Side = side ?? Side.Starboard };
        string Mm(double mm) => LengthText.ForPaper(mm, units, RoundTo.Nearest);

        string mend = layer.Row.Held
            ? "planks that are fitted or sawn stay where they are: glue it to its neighbour before sawing, or share its room out over the last few planks"
            : "no shift of the master plank by up to half a width mends it: glue it to its neighbour before sawing, or choose another `master`";
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
                    Id(corner),
                    $"the corner piece is small ({Mm(corner.WidestMm)} wide, {Mm(length)} along its seam); {mend}"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }

        var angles = plan
            .Starboard.Where(p => p.KeelAngleDegrees is not null)
            .Select(p => (Id: Id(p), p.KeelAngleDegrees!.Value))
            .ToList();
        if (angles.Count > 0)
        {
            (PlankId lowId, double low) = angles.MinBy(a => a.Value);
            (PlankId highId, double high) = angles.MaxBy(a => a.Value);
            string run = string.Create(
                CultureInfo.InvariantCulture,
                $"the planks meet the {plan.Panel.WordOf(PanelEdge.Lower)} at {low:0.0} ({lowId}) to {high:0.0} degrees ({highId}); {spec.AngleDegrees:0.#} was asked for"
            );
            int tapered = layer.Row.Tapered.Count;
            if (tapered > 0)
            {
                run +=
                    $"; {NumberText.Count(tapered, "tapered plank")}{aside} keep{(tapered == 1 ? "s" : "")} the drift within bounds";
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
                    $"; that is past angle-drift = {spec.DriftDegrees:0.#} degrees: tapers of 6/10 of the width do not hold it, so allow more drift or use narrower planks"
                );
            }

            yield return new(over ? Severity.Warning : Severity.Note, where, run);
        }

        int shaped = plan.Starboard.Count(p => !p.StraightEdges && ToSaw(p));
        if (shaped > 0)
        {
            Plank worst = plan
                .Starboard.Where(ToSaw)
                .MaxBy(p => Math.Max(p.WidestGapMm, p.WidestOverlapMm))!;
            yield return new(
                Severity.Warning,
                Id(worst),
                $"{NumberText.Count(shaped, "plank")}{aside} of {where} must have edges shaped: straight edges would open or overlap by up to {Mm(Math.Max(worst.WidestGapMm, worst.WidestOverlapMm))} here, and the glue is trusted with {LengthText.Gap(spec.GapMm, units)}"
            )
            {
                Rank = Rank.Know,
            };
        }

        foreach (
            Finding finding in Sawn(plan, ToSaw, Id, units)
                .Concat(Bent(plan, limits, ToSaw, Id, $"{aside} of {where}", units))
        )
        {
            yield return finding;
        }

        int both = plan.Starboard.Count(p => p.FitBothEnds);
        if (both > 0)
        {
            yield return new(
                Severity.Note,
                where,
                $"{NumberText.Count(both, "plank")}{aside} to be fitted at both ends: saw one end long by its allowance, scribe, then trim"
            );
        }

        if (layer.LeastStaggerMm is { } least)
        {
            bool close = least < spec.WidthMm / 4;
            yield return new(
                close ? Severity.Warning : Severity.Note,
                where,
                close
                    ? $"its seams come as near as {Mm(least)} to those of the layer below on the same diagonal, since the fans differ: choose another `master` or `stagger`"
                    : $"its seams come no nearer than {Mm(least)} to those of the layer below on the same diagonal"
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

    /// <summary>Planks whose shape to saw cannot be trusted, and those of which a tip has no wood.</summary>
    private static IEnumerable<Finding> Sawn(
        PlankLayerPlan plan,
        Func<Plank, bool> toSaw,
        Func<Plank, PlankId> id,
        LengthUnit units
    )
    {
        // A plank that is refused is not sawn, and told so.
        Plank[] planks = [.. plan.Starboard.Where(p => toSaw(p) && !p.IsRefused)];
        bool[] holds = SideBySide.All(
            planks.Length,
            i => SawnShape.Holds(planks[i], plan.Planks.WidthMm)
        );
        foreach ((Plank plank, bool hold) in planks.Zip(holds))
        {
            if (!hold)
            {
                yield return new(
                    Severity.Error,
                    id(plank),
                    "its shape to saw does not hold its net shape and both faces: do not saw it, and report the job's two files as a fault of the program"
                );
            }

            double past = SawnShape.TipPastStockMm(plank, plan.Planks.WidthMm);
            if (past > LeastTipMm)
            {
                yield return new(
                    Severity.Warning,
                    id(plank),
                    $"a tip of one face reaches {LengthText.Fine(past, units)} past the edge of the stock: saw it from a wider piece, or leave the tip short and fill it"
                );
            }
        }
    }

    private static IEnumerable<Finding> Bent(
        PlankLayerPlan plan,
        BendLimits limits,
        Func<Plank, bool> toSaw,
        Func<Plank, PlankId> id,
        string ofWhat,
        LengthUnit units
    )
    {
        foreach (
            IGrouping<(string Verdict, BendWay Way, bool Refused), Plank> verdict in plan
                .Starboard.GroupBy(p => (p.Bend.Verdict, p.Bend.Way, p.IsRefused && toSaw(p)))
                .Where(g => g.Key.Verdict != limits.Bend[0].Verdict)
        )
        {
            Plank worst = verdict.MaxBy(p => p.Bend.StrainPercent)!,
                twisted = verdict.MaxBy(p => p.Bend.TwistDegreesPerMetre)!;
            string radius = worst.Bend.LeastRadiusMm is { } r
                ? $"the least radius {Radius(r, units)}, in {id(worst)}, {LengthText.From(worst.Bend.WorstAtMm, units, $"its {Panel.InnerWordOf(worst.Id)} end")}"
                : "none of them bent";
            bool metric = LengthUnits.IsMetric(units);
            string twist = string.Create(
                CultureInfo.InvariantCulture,
                $"the most twist {(metric ? twisted.Bend.TwistDegreesPerMetre : twisted.Bend.TwistDegreesPerMetre * 0.3048):0.0}° a {(metric ? "metre" : "foot")}, in {id(twisted)}"
            );
            yield return new(
                Severity.Warning,
                id(worst),
                $"{NumberText.Count(verdict.Count(), "plank")}{ofWhat}: {verdict.Key.Verdict}; {radius}; {twist}. {(verdict.Key.Refused ? RefusedBend.ToDo : ToDo(verdict.Key.Way))}"
            )
            {
                Rank = verdict.Key.Refused ? Rank.DoNotSaw : Rank.SawAfter,
            };
        }
    }

    private static string ToDo(BendWay way) =>
        way switch
        {
            BendWay.SoakOrSteam =>
                "Soak or steam them to form, leave them on the form until dry below 12 %, and meter them before glue",
            BendWay.LaminateThinner or BendWay.Refuse =>
                "They are sawn: offer them up before glue, and do not force them",
            _ =>
                "Try the first one dry, pulled down a little at a time, before the others are sawn",
        };

    /// <summary>To three figures at most: nobody bends a plank to the millimetre.</summary>
    private static string Radius(double mm, LengthUnit units) =>
        LengthUnits.IsMetric(units)
            ? NumberText.Trimmed(mm / 1000, 2) + " m"
            : LengthText.WholeInches(mm, units);
}
