using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>What came of trying; the findings are faults where there is no comparison, and else what is to be known of what was asked.</summary>
public sealed record Tried(Comparison? Comparison, ImmutableArray<Finding> Findings);

/// <summary>A job beside itself with other values, and beside other jobs: each is read, judged and laid as `lay` does it.</summary>
public static class Trying
{
    /// <param name="jobPath">Where the job lies; the files that it names lie beside it.</param>
    /// <param name="job">Its text, which may have been changed since.</param>
    /// <param name="found">Given what is laid so far, each time that a lay-out is added; from one thread at a time.</param>
    /// <param name="stop">Ends the trying with what is laid by then; nothing is thrown for it.</param>
    /// <param name="files">Of the files that the text names; null where all are read as they lie.</param>
    public static Tried Of(
        string jobPath,
        TextFile job,
        CompareAsked asked,
        IProgress<PlanProgress> progress,
        CancellationToken stop,
        Action<Comparison>? found = null,
        JobFiles? files = null
    )
    {
        ReadResult read = JobReader.Read(jobPath, job, files?.MayRead, files?.Table);
        if (read.Job is not { } asRead)
        {
            return new(null, read.Findings);
        }

        (ImmutableArray<Variant> variants, ImmutableArray<Finding> findings) = Variants.Of(
            jobPath,
            job.Text!,
            asRead.WrittenIn,
            asked
        );
        (CompareMeasures? measures, ImmutableArray<Finding> ofMeasures) = CompareMeasures.Of(
            asked,
            asRead
        );
        TextFile[] others = [.. asked.Others.Select(p => TextFile.Read(p, Path.GetFileName(p)))];
        // A file that is not there is a slip of the pen and no lay-out that fails.
        findings =
        [
            .. findings,
            .. ofMeasures,
            .. others
                .Zip(asked.Others)
                .Where(o => o.First.Fault is not null)
                .Select(o =>
                    o.First.Fault! with
                    {
                        Message =
                            $"{o.First.Fault!.Message}; named as {o.Second} to be compared with",
                    }
                ),
        ];
        if (measures is null || findings.Any(f => f.Severity == Severity.Error))
        {
            return new(null, findings);
        }

        var own = new Variant(0, "as it stands", [], jobPath, job);
        ImmutableArray<Variant> all =
        [
            own,
            .. variants,
            .. asked.Others.Select(
                (path, i) =>
                    new Variant(
                        variants.Length + 1 + i,
                        // A folder may have a name that no sheet can show.
                        Name.Fault(path)
                            is null
                            ? path
                            : $"job {i + 2}",
                        [],
                        path,
                        others[i]
                    )
            ),
        ];
        if (all.Length == 1)
        {
            return new(null, findings.Add(NothingBeside(jobPath, asked)));
        }

        var search = new LayoutSearch(
            asRead,
            measures,
            asked,
            all.Length,
            (progress, found),
            files
        );
        search.Lay(all, stop);
        return new(search.Now, findings);
    }

    private static Finding NothingBeside(string jobPath, CompareAsked asked) =>
        new(
            Severity.Error,
            Path.GetFileName(jobPath),
            new[] { asked.Angle, asked.Width, asked.Master, asked.Heads }.All(v => v is null)
                ? "there is nothing to compare it with: name values to try beside it, of its angle, width, master or heads"
                    + (
                        asked.Mark.Length > 0
                            ? $" ({asked.Mark}angle 40,45,50), or another job file"
                            : ""
                    )
                : "there is nothing to compare it with: it has every value that was named already; name others to try beside them"
        );

    /// <summary>A job's text with the values of a lay-out in the layers that were varied: what else was changed since stays.</summary>
    /// <returns>Null where one of these layers is there no more.</returns>
    public static string? Taken(string text, CompareAsked asked, Layout layout) =>
        VariedLayers.Of(text, asked).Findings.Length > 0
            ? null
            : layout.Changed.Aggregate(
                text,
                (t, change) =>
                    Variants.With(
                        t,
                        VariedLayers.Of(t, asked).Layers,
                        LayerKeys.Table.Find(change.Key)!,
                        change.Value
                    )
            );
}
