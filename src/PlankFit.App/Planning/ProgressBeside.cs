using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PlankFit.App.Noting;
using PlankFit.Draughting.Files;
using PlankFit.Export.Words;
using PlankFit.Hashing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Text;

namespace PlankFit.App.Planning;

/// <summary>
/// What is glued and laid already, where a progress.csv lies beside the job, or else by what was noted on the page: the rest is planned from there on.
/// </summary>
internal static class ProgressBeside
{
    /// <summary>The job with it and a revision that goes by it too, or with its faults.</summary>
    public static (Job Job, ImmutableArray<Finding> Findings) Of(Job job, string jobPath)
    {
        if (!job.IsPlannedBySessions)
        {
            return (job, []);
        }

        string folder = Path.GetDirectoryName(jobPath) ?? "",
            path = Path.Combine(folder, ProgressText.UsualName);
        GluedByNotes noted;
        ImmutableArray<Finding> strange;
        try
        {
            (ImmutableDictionary<(string, string), ProgressTick> last, ImmutableArray<int> lines) =
                ProgressJournal.Looked(Path.Combine(folder, ProgressJournal.FileName));
            noted = GluedByNotes.Of(last.Values, job.Layers);
            strange = [.. Strange(lines, noted)];
        }
        catch (OutputException e)
        {
            return (job, [new(Severity.Error, ProgressJournal.FileName, e.Message)]);
        }

        if (!File.Exists(path))
        {
            return noted.Rows.IsEmpty
                ? (job, strange)
                : (Noted(job, noted), [.. strange, Said(noted), .. Doubtful(noted)]);
        }

        var file = TextFile.Read(path, ProgressText.UsualName);
        if (file.Text is not { } text)
        {
            return (job, [file.Fault!]);
        }

        (GlueProgress progress, ImmutableArray<Finding> findings) = ProgressText.Read(
            text,
            ProgressText.UsualName,
            job.Layers
        );
        return (
            With(job, progress, file.Bytes),
            [
                .. strange,
                .. findings,
                .. NotWritten(progress, noted, jobFile: Path.GetFileName(jobPath)),
            ]
        );
    }

    private static Job Noted(Job job, GluedByNotes noted) =>
        With(
            job,
            new GlueProgress(noted.Rows) { Source = ProgressJournal.FileName },
            Encoding.UTF8.GetBytes(
                string.Join(
                    '\n',
                    noted.Rows.Select(r =>
                        string.Create(CultureInfo.InvariantCulture, $"{r.Name} {r.At:0}")
                    )
                )
            )
        );

    private static Job With(Job job, GlueProgress progress, byte[] bytes)
    {
        byte[] both = [.. Encoding.UTF8.GetBytes(job.Revision), .. bytes];
        return job with
        {
            Glue = job.Glue! with { Done = progress },
            Revision = Sha256Hash.HexOf(both)[..6],
        };
    }

    /// <summary>What of the journal nothing is planned by.</summary>
    private static IEnumerable<Finding> Strange(ImmutableArray<int> lines, GluedByNotes noted)
    {
        if (JournalLines.Told(lines) is { } told)
        {
            yield return new(Severity.Warning, ProgressJournal.FileName, told);
        }

        if (!noted.Strange.IsEmpty)
        {
            yield return new(
                Severity.Warning,
                ProgressJournal.FileName,
                $"{PlainText.Of(string.Join(", ", noted.Strange))}: laid by it, and the job has nothing of that name. Nothing is planned by it: where a layer is called otherwise by now, mark it as laid once more under its new name"
            )
            {
                Rank = Rank.SawAfter,
            };
        }
    }

    private static IEnumerable<Finding> Doubtful(GluedByNotes noted)
    {
        if (!noted.Doubtful.IsEmpty)
        {
            yield return new(
                Severity.Warning,
                ProgressJournal.FileName,
                $"{GluedByNotes.Names(noted.Doubtful)}: noted more than {GluedByNotes.MostDaysApart} days from most of the others; a phone's clock is wrong, or another hull's notes are among them. Taken as down with the last of the others: write {ProgressText.UsualName} where that is not so"
            );
        }
    }

    private static Finding Said(GluedByNotes noted)
    {
        int planks = noted.Rows.Count(r => r.Plank is not null);
        GlueDone[] laid = [.. noted.Rows.Where(r => r.Plank is null)];
        string glued = planks == 0 ? "" : $"{PlanWords.Count(planks, "plank")} are glued by it",
            others = laid.Length == 0 ? "" : $"{GluedByNotes.Names(laid)} laid",
            day = noted.FirstDay.Length > 0
                ? $"from {noted.FirstDay} on, which is day 1"
                : "on day 1";
        return new(
            Severity.Note,
            ProgressJournal.FileName,
            $"{(planks > 0 && laid.Length > 0 ? $"{glued} and {others}" : planks > 0 ? glued : $"{others} by it")}, {day}: the rest is planned from the last of them. Which batch it was of and how warm it was is not noted there: {ProgressText.UsualName} has it, and goes before it"
        );
    }

    /// <summary>Glued or laid by the journal, of which progress.csv does not know: planned once more, if nobody says so.</summary>
    private static IEnumerable<Finding> NotWritten(
        GlueProgress progress,
        GluedByNotes noted,
        string jobFile
    )
    {
        GlueDone[] missing = [.. noted.Rows.Where(r => progress.LaidAt(r) is null)];
        if (missing.Length > 0)
        {
            bool isOne = missing.Length == 1;
            yield return new(
                Severity.Warning,
                ProgressText.UsualName,
                $"lacks {GluedByNotes.Names(missing)}, which {(isOne ? "is" : "are")} {(missing.All(r => r.Plank is not null) ? "glued" : "done")} by {ProgressJournal.FileName}; {jobFile} is planned by {ProgressText.UsualName} alone, as if {(isOne ? "it" : "they")} were still to be glued: add {(isOne ? "its row" : "their rows")}"
            );
        }
    }
}
