using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.KeelCheck;

/// <summary>Whether a layer can be got out of the stock, both halves together, inner face and outer.</summary>
internal static class KeelStock
{
    public static Finding? Finding(PlankingJob job, KeelLayerPlan layer)
    {
        if (job.Keel.StockWidthMm is not { } stock)
        {
            return null;
        }

        string Mm(double mm) => LengthText.ForPaper(mm, job.Units, RoundTo.Up);
        (double asked, double at) = layer
            .Between.Where(r => !(r.PositionMm < layer.RunsOutAtMm))
            .GroupBy(r => r.PositionMm)
            .Select(both => (Asked: both.Sum(r => Widest(layer, r)), both.Key))
            .DefaultIfEmpty()
            .MaxBy(w => w.Asked);
        if (asked <= stock + 1e-6)
        {
            return null;
        }

        string station = layer.Stations.MinBy(r => Math.Abs(r.PositionMm - at))!.Station;
        return new(
            Severity.Warning,
            $"keel, {layer.Spec.Name}, station {station}",
            $"it wants timber {Mm(asked)} wide near here, and the stock is {Mm(stock)}: glue it up of two, or leave the planks there long at the keel and fit them to a narrower one"
        );
    }

    private static double Widest(KeelLayerPlan layer, KeelStation row) =>
        row.HalfWidthMm
        + Math.Max(0, -Math.Tan(row.Angles.BevelDegrees * Math.PI / 180) * layer.Spec.ThicknessMm);
}
