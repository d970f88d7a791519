using PlankFit.App.Laying;
using PlankFit.App.Parts;
using PlankFit.App.Running;
using PlankFit.Export.Keel;
using PlankFit.Export.Words;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Keels;

/// <summary>The keel alone: what it should be, what it is, and what that does to the planks.</summary>
public static class KeelRun
{
    private static readonly PartOfPlan<KeelPlan> Part = new(
        "keel",
        "write the keel's files",
        "the job names no keel layer: add a [[keel-layer]] with name, meets (the layer of planks whose ends meet it), thickness and half-width",
        plan => plan.Keel
    )
    {
        Files = KeelFiles.Of,
        Findings = keel => keel.Findings,
        Lines = (job, keel) => keel.Layers.Select(l => Line(job, l)),
        StartWith = ("sheets/keel.pdf", "No file was written: see what was found."),
        Json = KeelJson.Write,
    };

    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    ) => PartRun.Of(Part, request, progress, timings, stop);

    private static string Line(Job job, KeelLayerPlan layer)
    {
        if (layer.Stations.IsEmpty)
        {
            return $"{layer.Spec.Name}: the planks of {layer.Spec.Meets} nowhere meet it.";
        }

        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);
        int off = KeelWords.OffAt(job.Keel, layer);
        return $"{layer.Spec.Name}, met by {layer.Spec.Meets}: half-width wanted {Mm(layer.Stations.Min(s => s.WantedHalfWidthMm))} to {Mm(layer.Stations.Max(s => s.WantedHalfWidthMm))}; {(off == 0 ? "fair at every station" : $"out at {PlanWords.Count(off, "place")}")}.";
    }
}
