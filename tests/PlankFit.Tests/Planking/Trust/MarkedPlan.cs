using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>
/// A layer's planks on another table by the whole planner, the master laid by its marks: its two seams are given as measured where the plan of the first table has
/// them, and the planner marches on from there by itself.
/// </summary>
internal static class MarkedPlan
{
    /// <summary>The layer; null where the planner makes other choices on that table (another count of planks or other tapers), or none at all.</summary>
    public static PlankLayerPlan? On(BottomPlan drawn, int layer, OffsetTable table)
    {
        PlankLayerPlan planned = drawn.PlankLayers.Single(l => l.Number == layer);
        Plank master = planned.Starboard.Single(p => p.Kind == PlankKind.Master);
        SeamCheck marks = planned.Checks.First(c => c.PlankId == master.Id);
        PlankId before = master.Id with { Number = master.Number - 1 };
        var job = new Job(
            drawn.Job.Planking with
            {
                Offsets = table,
                Timber = null,
                AsBuilt = new()
                {
                    From = marks.Forward!.Inboard.From,
                    Fitted = [master.Id, master.Id.Twin],
                    Seams = [.. Both(before, marks.Forward!), .. Both(master.Id, marks.After!)],
                },
            }
        );
        PlankLayerPlan? laid = BottomPlanner
            .Plan(job)
            .Plan?.PlankLayers.Single(l => l.Number == layer);
        return laid is not null && Choices(laid).SequenceEqual(Choices(planned)) ? laid : null;
    }

    /// <summary>Of all planks: where one would stand out beyond its stock the planner lays the whole layer anew a hair narrower, which is a choice too.</summary>
    public static double Widest(PlankLayerPlan layer) =>
        layer.Starboard.Where(p => p.Kind != PlankKind.Corner).Max(p => p.WidestMm);

    private static IEnumerable<MeasuredSeam> Both(PlankId plank, TapedSeam seam) =>
        new[] { plank, plank.Twin }.SelectMany(p =>
            new MeasuredSeam[]
            {
                new(p, PanelEdge.Lower, seam.Inboard.AlongMm),
                new(p, PanelEdge.Upper, seam.Outboard.AlongMm),
            }
        );

    private static IEnumerable<(int, bool, bool)> Choices(PlankLayerPlan layer) =>
        layer.Starboard.Select(p =>
            (p.Number, p.Kind == PlankKind.Corner, p.Kind == PlankKind.Tapered)
        );

    /// <summary>From keel to chine at both its corners.</summary>
    public static bool IsWhole(Plank plank) =>
        plank.Kind != PlankKind.Corner
        && plank.Ends.Length == 2
        && plank.Ends.Any(e => e.At == PanelEdge.Lower)
        && plank.Ends.Any(e => e.At == PanelEdge.Upper);
}
