using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Laying;

namespace PlankFit.App.Running;

/// <summary>A piece of work that writes one file or a few.</summary>
internal sealed record FileWork(string What, Action<OutputFolder> Write);

/// <summary>All files of one run: either every one of them is there at the end, or what was there before is untouched.</summary>
internal static class WrittenFiles
{
    /// <param name="verb">What the folder's list of files is kept under; a later run of the same verb replaces them.</param>
    /// <returns>The files' names.</returns>
    /// <exception cref="OutputException">A file cannot be written; the first reason found.</exception>
    /// <exception cref="OperationCanceledException">Stopped before all were written.</exception>
    public static IReadOnlyList<string> Write(
        string folder,
        string verb,
        ImmutableArray<FileWork> work,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        using var output = OutputFolder.Begin(folder, verb, stop);
        int done = 0;
        try
        {
            // One piece at a time to each core, the heavy ones first, so that none is left to run alone at the end.
            Parallel.ForEach(
                Partitioner.Create(work, EnumerablePartitionerOptions.NoBuffering),
                new ParallelOptions
                {
                    CancellationToken = stop,
                    MaxDegreeOfParallelism = Environment.ProcessorCount,
                },
                w =>
                {
                    timings.Time("  " + w.What, () => w.Write(output));
                    progress.Report(
                        new(
                            "writing " + w.What,
                            (double)Interlocked.Increment(ref done) / work.Length
                        )
                    );
                }
            );
        }
        catch (AggregateException e)
        {
            // One file that cannot be written ends the run; the first reason is the one to tell.
            throw e.InnerExceptions.OfType<OutputException>().FirstOrDefault()
                ?? e.InnerExceptions[0];
        }

        return output.Commit();
    }

    /// <summary>What a writer of files would write, as text for standard output.</summary>
    public static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }
}
