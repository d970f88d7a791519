using PlankFit.App.Laying;
using PlankFit.App.Parts;
using PlankFit.App.Running;
using PlankFit.Export.Glue;
using PlankFit.Export.Words;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;

namespace PlankFit.App.Gluing;

/// <summary>Resin, batches and sessions alone.</summary>
public static class GlueRun
{
    private static readonly PartOfPlan<GluePlan> Part = new(
        "glue",
        "write the gluing files",
        "the job names neither resin nor glue: add [resin] or [glue] with its ratio, densities, pot, film and sandable as on its data sheet; see plankfit help glue",
        plan => plan.Glue
    )
    {
        Files = GlueFiles.Of,
        Findings = glue => glue.Findings,
        Lines = (job, glue) =>
            glue
                .Totals.Select(t =>
                    $"{t.Mix.Name}, {GlueWords.Ratio(t.Mix.Ratio)}: {GlueWords.Range(t.Likely, job.Units)} likely; order {AmountText.KgUp(t.Order.ResinKg, job.Units)} of resin and {AmountText.KgUp(t.Order.HardenerKg, job.Units)} of hardener."
                )
                .Concat(glue.Stages.Where(s => !s.Batches.IsEmpty).Select(Line))
                .Concat(GlueWords.NotPlanned(glue)),
        StartWith = ("sheets/gluing.pdf", "No file was written: see what was found."),
        Json = GlueJson.Write,
    };

    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    ) => PartRun.Of(Part, request, progress, timings, stop);

    private static string Line(GlueStage stage)
    {
        int planks = stage.Batches.Sum(b => b.Planks.Length);
        return $"{stage.Layer}: {(planks > 0 ? PlanWords.Count(planks, "plank") : stage.Use == GlueUse.WettingOut ? "cloth" : "both sides")} in {GlueWords.Batches(stage.Batches.Length)}, {GlueWords.When(stage.Batches.Min(b => b.MixAt))} to {GlueWords.When(stage.Batches.Max(b => b.Clocks.DownAt))}.";
    }
}
