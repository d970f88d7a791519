using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Seams;

/// <summary>
/// A layer laid on from planks that are fitted already: their seams lie where they were measured, and the rest is marched outward from the last of them.
/// </summary>
internal static class FittedSeams
{
    /// <summary>The seam is brought to both readings within this, mm.</summary>
    private const double WithinMm = 1e-4;

    /// <param name="planned">The row as it would be laid with nothing fitted, with its numbers.</param>
    /// <param name="measured">Of this layer and side.</param>
    /// <param name="fixedPlanks">Numbers of planks of this layer and side that are fitted or sawn: they keep their width, and shift as the last measured one did.</param>
    /// <param name="from">The station from which seams were measured.</param>
    public static SeamRow Relaid(
        LayerFaces faces,
        PlankLayerSpec spec,
        SeamRow planned,
        IReadOnlyList<MeasuredSeam> measured,
        IReadOnlySet<int> fixedPlanks,
        StationOnHull from,
        Tracing tracing
    )
    {
        var actual = new SortedDictionary<int, FittedSeam>();
        foreach (IGrouping<PlankId, MeasuredSeam> plank in measured.GroupBy(m => m.PlankId))
        {
            int index = plank.Key.Number - planned.FirstNumber;
            if (index < 0 || index >= planned.Seams.Length)
            {
                throw new JobFaultException(
                    plank.Key,
                    $"the job as it stands has no after seam of this plank: layer {spec.Name} runs from number {planned.FirstNumber} to {planned.FirstNumber + planned.Planks - 1}, the last without one; look at measured.csv"
                );
            }

            actual[index] = Through(faces, spec, planned.Seams[index], plank, from, tracing);
        }

        if (actual.Count == 0)
        {
            return planned;
        }

        // Who says which planks are fixed may have begun elsewhere than at the master; who does not is taken to have begun there.
        bool fromMaster =
            fixedPlanks.Count == 0 || fixedPlanks.Contains(planned.Master + planned.FirstNumber);
        MovedSeams.Between(faces.Middle, planned, actual, fromMaster, tracing);
        int[] fitted = [.. actual.Keys.Skip(1)];
        MovedSeams.Carried(faces.Middle, planned, actual, fixedPlanks, fromMaster, tracing);
        int first = actual.Keys.First(),
            last = actual.Keys.Last();

        // Outward from the last fitted edge on either side of the master; where the master is fitted, a side on which nothing was measured keeps its plan.
        bool forward = !fromMaster || first < planned.Master,
            aft = !fromMaster || last >= planned.Master;
        LayerRegion region = faces.Middle;
        bool Corner(int index) => fixedPlanks.Contains(index + planned.FirstNumber);
        (List<Seam> ahead, List<int> taperedAhead) = forward
            ? first == 0 && Corner(0)
                ? ([], [])
                : SeamFamily.March(region, spec, actual[first].Seam, -1, tracing)
            : (
                [.. planned.Seams.Take(first).Reverse()],
                [.. planned.Tapered.Where(k => k <= first).Select(k => first + 1 - k)]
            );
        (List<Seam> behind, List<int> taperedBehind) = aft
            ? last == planned.Seams.Length - 1 && Corner(last + 1)
                ? ([], [])
                : SeamFamily.March(region, spec, actual[last].Seam, 1, tracing)
            : (
                [.. planned.Seams.Skip(last + 1)],
                [.. planned.Tapered.Where(k => k > last).Select(k => k - last)]
            );
        ahead.Reverse();
        int moved = ahead.Count - first;
        IEnumerable<int> between = planned.Tapered.Where(k => k > first && k <= last);
        return new(
            [.. ahead, .. actual.Values.Select(f => f.Seam), .. behind],
            planned.Master + moved,
            [
                .. taperedAhead.Select(k => ahead.Count + 1 - k),
                .. between.Select(k => k + moved),
                .. taperedBehind.Select(k => ahead.Count + (last - first) + k),
            ],
            planned.ShiftMm
        )
        {
            FirstNumber = planned.FirstNumber - moved,
            Fitted = [.. fitted.Select(k => k + moved)],
        };
    }

    /// <summary>
    /// The geodesic near a planned seam that a tape finds where it was measured: two unknowns, its distance from the planned one at either end, by Newton with
    /// differences; with one reading alone it keeps the planned seam's run.
    /// </summary>
    private static FittedSeam Through(
        LayerFaces faces,
        PlankLayerSpec spec,
        Seam planned,
        IGrouping<PlankId, MeasuredSeam> plank,
        StationOnHull from,
        Tracing tracing
    )
    {
        PlankId id = plank.Key;
        double? keelMm = plank.FirstOrDefault(m => m.At == PanelEdge.Lower)?.Mm,
            chineMm = plank.FirstOrDefault(m => m.At == PanelEdge.Upper)?.Mm;

        Seam At(double atKeel, double atChine) =>
            MovedSeams.Moved(faces.Middle, planned, atKeel, atChine, tracing)
            ?? throw Nowhere(id, spec);

        double Read(Seam seam, PanelEdge edge) =>
            TapeReadings.AlongEdge(faces, from, seam, edge) ?? throw NotThere(id, edge);

        double Miss(Seam seam, PanelEdge edge, double? wanted) => Read(seam, edge) - wanted!.Value;

        double p = 0,
            q = 0;
        Seam now = planned;
        for (int i = 0; i < 12; i++)
        {
            const double step = 0.5;
            double missK = keelMm is null ? 0 : Miss(now, PanelEdge.Lower, keelMm),
                missC = chineMm is null ? 0 : Miss(now, PanelEdge.Upper, chineMm);
            if (i == 0)
            {
                CheckPlausible(spec, id, missK, missC);
            }

            if (Math.Abs(missK) < WithinMm && Math.Abs(missC) < WithinMm)
            {
                return new(now, p, q);
            }

            if (keelMm is null || chineMm is null)
            {
                PanelEdge edge = keelMm is null ? PanelEdge.Upper : PanelEdge.Lower;
                double rate = (Read(At(p + step, q + step), edge) - Read(now, edge)) / step;
                double move = -(keelMm is null ? missC : missK) / rate;
                (p, q) = (p + move, q + move);
            }
            else
            {
                Seam dp = At(p + step, q),
                    dq = At(p, q + step);
                double kp = (Read(dp, PanelEdge.Lower) - Read(now, PanelEdge.Lower)) / step,
                    cp = (Read(dp, PanelEdge.Upper) - Read(now, PanelEdge.Upper)) / step,
                    kq = (Read(dq, PanelEdge.Lower) - Read(now, PanelEdge.Lower)) / step,
                    cq = (Read(dq, PanelEdge.Upper) - Read(now, PanelEdge.Upper)) / step;
                double jacobian = (kp * cq) - (kq * cp);
                p -= ((cq * missK) - (kq * missC)) / jacobian;
                q -= ((kp * missC) - (cp * missK)) / jacobian;
            }

            now = At(p, q);
        }

        throw new JobFaultException(
            id,
            "no straight edge runs through both places where its seam was measured: measure again"
        );
    }

    /// <summary>A seam further off than half a plank is another plank's.</summary>
    private static void CheckPlausible(PlankLayerSpec spec, PlankId id, double missK, double missC)
    {
        double most = Math.Max(Math.Abs(missK), Math.Abs(missC));
        if (most > spec.WidthMm / 2)
        {
            throw new JobFaultException(
                id,
                u =>
                    $"its after seam as measured is {LengthText.ForPaper(most, u)} from where it was planned, more than half a plank: is it this plank's, and measured from the right station?"
            );
        }
    }

    private static JobFaultException Nowhere(PlankId id, PlankLayerSpec spec) =>
        new(id, $"the seam as measured passes the bottom of layer {spec.Name} by: measure again");

    private static JobFaultException NotThere(PlankId id, PanelEdge edge) =>
        new(
            id,
            $"its after seam does not cross the {edge.ToString().ToLowerInvariant()}, but was measured there: look at measured.csv"
        );
}
