using PlankFit.App.Laying;
using PlankFit.App.Parts;
using PlankFit.App.Running;
using PlankFit.Export.Sheathing;
using PlankFit.Export.Words;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.App.Sheathing;

/// <summary>The cloth alone: how it lies, how it is cut, what to draw first.</summary>
public static class SheatheRun
{
    private static readonly PartOfPlan<SheathingPlan> Part = new(
        "sheathe",
        "write the cloth's files",
        "the job does not say how any cloth lies: add a [[cloth]] with name, kind, mass and roll, and a [[sheathing]] with layer and cloth for each [[layer]] of kind \"cloth\"; `plankfit help sheathing` shows both",
        plan => plan.Sheathing
    )
    {
        Files = SheathingFiles.Of,
        Findings = sheathing => sheathing.Findings,
        Lines = (job, sheathing) =>
            sheathing
                .Layers.SelectMany(l =>
                    l.Sides.Select(s =>
                        $"{SheathingWords.Of(l)}: {SheathingWords.Verdict(l, s, job.Units)}"
                    )
                )
                .Concat(sheathing.Rolls.Select(r => Rolls(r, job.Units))),
        StartWith = ("sheets/cloth.pdf", "No cloth could be laid: see what was found."),
        Json = SheathingJson.Write,
    };

    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    ) => PartRun.Of(Part, request, progress, timings, stop);

    private static string Rolls(RollPlan plan, LengthUnit unit) =>
        $"{plan.Cloth.Name}: {LengthText.ToOrder(plan.ToOrderMm(unit), unit)} off {PlanWords.Count(plan.Rolls.Length, "roll")} (no plan can take less than {SheathingWords.AreaBound(plan, unit)}).";
}
