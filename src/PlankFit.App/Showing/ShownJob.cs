using System.Collections.Immutable;
using PlankFit.App.Looking;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Summary;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.App.Showing;

/// <summary>What comes of a job's text while somebody is changing it: read, judged and planned by the same code as `lay`, boards apart.</summary>
/// <param name="Plan">Null where there are faults.</param>
/// <param name="Findings">What a person should know of the plan; or the faults, with their lines.</param>
public sealed record ShownJob(BottomPlan? Plan, ImmutableArray<Finding> Findings)
{
    /// <summary>Where the table of offsets lies; null where the job could not be read as far as that.</summary>
    public string? OffsetsPath { get; init; }

    /// <summary>The table as it was read; null where none could be.</summary>
    public TableInHand? Table { get; init; }

    /// <summary>The job, planks or no planks; null where it could not be read.</summary>
    public Job? Job { get; init; }

    /// <summary>What was probably meant in cells that do not lie fair.</summary>
    public ImmutableArray<MeantCell> Meant => Planned?.Look?.Meant ?? [];

    private PlannedJob? Planned { get; init; }

    /// <param name="jobPath">Where the job file lies: the files that it names are beside it.</param>
    /// <param name="job">The job file as it is now.</param>
    /// <param name="before">Of the text before, if planks were laid by it: what would be made from the same is taken over from it.</param>
    /// <param name="planks">Given the planks as soon as they are laid.</param>
    /// <param name="files">Of the files that the text names; null where all are read as they lie.</param>
    public static ShownJob Of(
        string jobPath,
        TextFile job,
        ShownJob? before,
        IProgress<PlanProgress> progress,
        CancellationToken stop,
        Action<BottomPlan>? planks = null,
        JobFiles? files = null
    )
    {
        return Of(
            jobPath,
            JobReader.Read(jobPath, job, files?.MayRead, files?.Table),
            before,
            progress,
            stop,
            planks
        );
    }

    /// <summary>The same of a job that lies nowhere yet: its text and its table's are all that there is of it.</summary>
    /// <param name="folder">Where it would lie; nothing need be there, and nothing is written.</param>
    public static ShownJob Of(
        string folder,
        string job,
        string table,
        string tableName,
        CancellationToken stop
    ) =>
        Of(
            Path.Combine(folder, "job.toml"),
            JobReader.Read(job, "job.toml", table, tableName) with
            {
                OffsetsPath = Path.Combine(folder, tableName),
                OffsetsFile = tableName,
                OffsetsText = table,
            },
            null,
            new Progress<PlanProgress>(),
            stop,
            null
        );

    private static ShownJob Of(
        string jobPath,
        ReadResult read,
        ShownJob? before,
        IProgress<PlanProgress> progress,
        CancellationToken stop,
        Action<BottomPlan>? planks
    )
    {
        var planned = PlannedJob.From(
            jobPath,
            read,
            before?.Planned,
            progress,
            new Timings(),
            stop,
            planks
        );
        ShownJob shown = planned.Plan is { } plan
            ? new(plan, [.. BeforeYouSaw.All(plan)])
            : new(null, planned.Faults!.Findings);
        return shown with
        {
            OffsetsPath = read.OffsetsPath,
            Table = read is { OffsetsFile: { } file, OffsetsText: { } text }
                ? new(file, text)
                : null,
            Job = read.Job,
            Planned = planned,
        };
    }
}
