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
/// What is glued already, where a progress.csv lies beside the job, or else by what was noted of planks on the page: the rest is planned from there on.
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
            noted = GluedByNotes.Of(last.Values);
            strange = JournalLines.Told(lines) is { } told
                ? [new(Severity.Warning, ProgressJournal.FileName, told)]
                : [];
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
                        string.Create(CultureInfo.InvariantCulture, $"{r.Plank} {r.At:0}")
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

    private static IEnumerable<Finding> Doubtful(GluedByNotes noted)
    {
        if (!noted.Doubtful.IsEmpty)
        {
            yield return new(
                Severity.Warning,
                ProgressJournal.FileName,
                $"{PlankRuns.Of(noted.Doubtful)}: noted more than {GluedByNotes.MostDaysApart} days from most of the others; a phone's clock is wrong, or another hull's notes are among them. Taken as down with the last of the others: write {ProgressText.UsualName} where that is not so"
            );
        }
    }

    private static Finding Said(GluedByNotes noted) =>
        new(
            Severity.Note,
            ProgressJournal.FileName,
            $"{PlanWords.Count(noted.Rows.Length, "plank")} are glued by it, {(noted.FirstDay.Length > 0 ? $"from {noted.FirstDay} on, which is day 1" : "on day 1")}: the rest is planned from the last of them. Which batch a plank was of, how warm it was and what cloth is wetted out is not noted there: {ProgressText.UsualName} has it, and goes before it"
        );

    /// <summary>Planks glued by the journal, of which progress.csv does not know: planned once more, if nobody says so.</summary>
    private static IEnumerable<Finding> NotWritten(
        GlueProgress progress,
        GluedByNotes noted,
        string jobFile
    )
    {
        PlankId[] missing =
        [
            .. noted.Rows.Select(r => r.Plank!.Value).Where(p => progress.DownAt(p) is null),
        ];
        if (missing.Length > 0)
        {
            yield return new(
                Severity.Warning,
                ProgressText.UsualName,
                $"lacks {PlankRuns.Of(missing)}, which {(missing.Length == 1 ? "is" : "are")} glued by {ProgressJournal.FileName}; {jobFile} is planned by {ProgressText.UsualName} alone, as if {(missing.Length == 1 ? "it" : "they")} were still to be glued: add {(missing.Length == 1 ? "its row" : "their rows")}"
            );
        }
    }
}
