using PlankFit.Planking.Bending;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>Judges of one thickness of one wood.</summary>
internal static class Judges
{
    public const string Fir = "douglas-fir";

    public static Job Job(string? wood, TimberSpec? spec = null) =>
        PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Timber = wood is null ? null : (spec ?? TimberSpec.Default) with { Species = wood },
        };

    public static BendJudge Of(double thicknessMm, string? wood, TimberSpec? spec = null)
    {
        Job job = Job(wood, spec);
        PlankLayerSpec layer = job.Layers.OfType<PlankLayerSpec>().First();
        return BendJudge.Of(job.Planking, layer with { ThicknessMm = thicknessMm });
    }

    /// <summary>The row for a bend alone, over a bottom curved one way.</summary>
    public static BendLimit Bent(this BendJudge judge, double radiusMm, double thicknessMm) =>
        judge.Row(radiusMm / thicknessMm, thicknessMm / (2 * radiusMm));
}
