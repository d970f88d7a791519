using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.KeelCheck;

/// <summary>
/// Where port and starboard cloth lap under the keel. A lap counts for the whole width of a keel layer that lies on it: timber does not bend down beside a lap.
/// Where the lap is wider than the layer the planks ride on it, and where it is narrower the layer's edges want bedding: both are told.
/// </summary>
internal static class KeelLaps
{
    /// <summary>The x at which laps end inside the hull.</summary>
    public static IEnumerable<double> Ends(PlankingJob job) =>
        job
            .Layers.OfType<ClothLayerSpec>()
            .SelectMany(c => new[] { c.Lap?.FromMm, c.Lap?.ToMm })
            .OfType<double>();

    public static IEnumerable<Finding> Findings(Planked planked, KeelPlan keel)
    {
        foreach (KeelLayerPlan layer in keel.Layers)
        {
            IEnumerable<ClothLayerSpec> under = planked
                .Job.Layers.TakeWhile(l => l.Name != layer.Spec.Meets)
                .OfType<ClothLayerSpec>();
            foreach (ClothLayerSpec cloth in under)
            {
                if (cloth.Lap is { } lap)
                {
                    foreach (Finding finding in Of(planked, layer, cloth, lap))
                    {
                        yield return finding;
                    }
                }
            }
        }
    }

    private static IEnumerable<Finding> Of(
        Planked planked,
        KeelLayerPlan layer,
        ClothLayerSpec cloth,
        ClothLap lap
    )
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), planked.Job.Units);
        string where = $"keel, {layer.Spec.Name}";
        KeelStation[] run = [.. layer.Between.Where(r => r.Side == Side.Starboard)];
        KeelStation[] inside =
        [
            .. run.Where(r => !(r.PositionMm < lap.FromMm) && !(r.PositionMm > lap.ToMm)),
        ];
        if (inside.Length == 0)
        {
            yield break;
        }

        foreach (double end in new[] { lap.FromMm, lap.ToMm }.OfType<double>())
        {
            double half = KeelStack.LapRampMm / 2;
            if (end - half > run[0].PositionMm && end + half < run[^1].PositionMm)
            {
                KeelStation steepest = run.MinBy(r => Math.Abs(r.PositionMm - end))!;
                double narrower =
                    cloth.ThicknessMm
                    / Math.Cos(steepest.Angles.SlopeDegrees * Math.PI / 180)
                    / Math.Tan(steepest.Angles.DeadriseDegrees * Math.PI / 180);
                yield return new(
                    Severity.Note,
                    where,
                    $"the lap of {cloth.Name} ends {KeelPlaces.Of(planked.Hull, end, planked.Job.Units)}: the layer's outer face drops {Mm(cloth.ThicknessMm)} there and its mitre is {Mm(narrower)} the wider a side beyond it, worked over {Mm(KeelStack.LapRampMm)}; fair the end of the lap over as much before the layer goes on"
                );
            }
        }

        // Between the ramps, where the lap has its whole thickness.
        const double ramp = KeelStack.LapRampMm / 2;
        KeelStation[] whole =
        [
            .. inside.Where(r =>
                !(r.PositionMm - ramp < lap.FromMm) && !(r.PositionMm + ramp > lap.ToMm)
            ),
        ];
        inside = whole.Length > 0 ? whole : inside;
        double least = inside.Min(r => Math.Min(r.HalfWidthMm, Inner(layer, r))),
            most = inside.Max(r => Math.Max(r.HalfWidthMm, Inner(layer, r)));
        Severity severity =
            cloth.ThicknessMm > planked.Job.Keel.ProudToleranceMm
                ? Severity.Warning
                : Severity.Note;
        double over = (lap.WidthMm / 2) - least,
            under = most - (lap.WidthMm / 2);
        if (over > planked.Job.Keel.HalfWidthToleranceMm)
        {
            yield return new(
                severity,
                where,
                $"the lap of {cloth.Name} reaches {Mm(over)} beyond its edge at the narrowest: planks of {layer.Spec.Meets} would ride on it by {Mm(cloth.ThicknessMm)}; trim the lap to {Mm(2 * least)}, or feather it out to nothing there"
            );
        }

        if (under > planked.Job.Keel.HalfWidthToleranceMm)
        {
            yield return new(
                Severity.Note,
                where,
                $"the lap of {cloth.Name} stops {Mm(under)} short of its edge at the widest: it is taken to lie level on the lap, so bed its edges there by {Mm(cloth.ThicknessMm)}"
            );
        }
    }

    private static double Inner(KeelLayerPlan layer, KeelStation row) =>
        row.HalfWidthMm
        - (Math.Tan(row.Angles.BevelDegrees * Math.PI / 180) * layer.Spec.ThicknessMm);
}
