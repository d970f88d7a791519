using System.Collections.Immutable;
using PlankFit.Export.Glue;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Answers;

/// <summary>A side of cloth, of a coat, of fairing or of a fillet.</summary>
/// <param name="Name">As the journal and progress.csv have it: outside cloth coat 1 port.</param>
/// <param name="Words">outside cloth, coat 1, port.</param>
/// <param name="Planned">When it is to be laid; empty where no time was found, none is asked for, or it is laid.</param>
/// <param name="Laid">When it was, as far as the plan goes by it; empty where it is still to be.</param>
internal sealed record PartAnswer(string Name, string Words, string Planned, string Laid)
{
    /// <summary>Nobody wrote its hour down: what lies over it is on.</summary>
    public bool Taken { get; init; }
}

/// <summary>What is laid with resin and glue and is no plank, in the order of the work.</summary>
/// <param name="Source">The file that the plan goes by as to what is done.</param>
/// <param name="Waits">Why the hours of it move no plan; empty where they do.</param>
internal sealed record LayingAnswer(
    int Turn,
    string Source,
    string Waits,
    ImmutableArray<PartAnswer> Parts
)
{
    public static LayingAnswer Of(Laid laid)
    {
        Job job = laid.Plan.Job;
        return job.Glue is not { } spec || laid.Plan.Glue is not { } glue
            ? new(laid.Turn, "", "", [])
            : new(
                laid.Turn,
                glue.Spec.Done.Rows.IsEmpty ? "" : glue.Spec.Done.Source,
                spec is { Crew: not null, Clock: not null }
                    ? ""
                    : "No hours are planned: the job lacks [crew] or [clock] (plankfit help glue). What is laid is kept all the same.",
                [.. GlueParts.Of(spec, job.Layers).Select(p => Of(p, glue))]
            );
    }

    private static PartAnswer Of(GlueDone part, GluePlan glue)
    {
        double? at = glue.Spec.Done.LaidAt(part);
        GlueBatch[] batches =
        [
            .. glue
                .Stages.Where(s => IsOf(part, s))
                .SelectMany(s => s.Batches.Where(b => b.Side == part.Side)),
        ];
        return new(
            part.Name,
            $"{part.Finish ?? part.Cloth}{(part.Coat > 0 ? $", coat {NumberText.Trimmed(part.Coat, 0)}" : "")}, {PlankWords.Of(part.Side)}",
            at is not null || batches.Length == 0
                ? ""
                : $"{GlueWords.When(batches.Min(b => b.MixAt))} to {GlueWords.When(batches.Max(b => b.Clocks.DownAt))}",
            at is { } done ? GlueWords.When(done) : ""
        )
        {
            Taken =
                part.Cloth is not null
                && glue.Spec.Done.Rows.Any(r =>
                    r.IsTaken && (r.Cloth, r.Coat, r.Side) == (part.Cloth, part.Coat, part.Side)
                ),
        };
    }

    private static bool IsOf(GlueDone part, GlueStage stage) =>
        part.Finish is { } finish ? stage.Layer == finish
        : part.Coat > 0 ? stage.Coat == part.Coat
        : stage.Use == GlueUse.WettingOut && stage.Layer == part.Cloth;
}
