using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Looking;

/// <summary>What whoever lays planks is told of the table's fairness: the same as `check` tells, without what could not be judged.</summary>
/// <param name="Margin">In a few words, for the margin of every sheet; empty where nothing stands out.</param>
internal sealed record FairnessLook(ImmutableArray<Finding> Findings, string Margin)
{
    private const int MostNamed = 4;

    /// <summary>What was probably meant, where that is known.</summary>
    public ImmutableArray<MeantCell> Meant { get; private init; } = [];

    /// <summary>What was looked at.</summary>
    public LookedAt? Of { get; private init; }

    /// <summary>The very same look where it would be at the same; the table of a job that is being changed mostly stays as it is.</summary>
    /// <param name="before">Null where there is none.</param>
    public static FairnessLook Again(FairnessLook? before, LookedAt of, Job job) =>
        before is not null && SameValue.Are(before.Of, of) ? before : At(job, of) with { Of = of };

    private static FairnessLook At(Job job, LookedAt of)
    {
        FairnessReport report = FairnessCheck.Judge(job.Offsets, job.WrittenIn);
        return report.Suspicions.IsEmpty && report.Stations.IsEmpty
            ? new([], "")
            : new(
                [
                    .. FairnessFindings
                        .Of(report, job, of.Text, of.File)
                        .Where(f => !report.NotJudged.Contains(f)),
                ],
                Words(report.StandingOut(job.AsWritten))
            )
            {
                Meant = MeantCell.Of(report, job, of.Text),
            };
    }

    private static string Words(ImmutableArray<string> stations) =>
        stations.Length switch
        {
            0 => "",
            1 => $"table not fair at station {stations[0]}: see check",
            <= MostNamed => $"table not fair at stations {string.Join(", ", stations)}: see check",
            _ =>
                $"table not fair at stations {string.Join(", ", stations.Take(MostNamed))} and {stations.Length - MostNamed} more: see check",
        };
}
