using System.Collections.Immutable;
using System.Text;
using PlankFit.Hashing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Text;

namespace PlankFit.App.Planning;

/// <summary>What is glued already, where a progress.csv lies beside the job: the rest is planned from there on.</summary>
internal static class ProgressBeside
{
    /// <summary>The job with it and a revision that goes by it too, or with its faults.</summary>
    public static (Job Job, ImmutableArray<Finding> Findings) Of(Job job, string jobPath)
    {
        string path = Path.Combine(Path.GetDirectoryName(jobPath) ?? "", ProgressText.UsualName);
        if (job.Glue is not { Crew: not null, Clock: not null } glue || !File.Exists(path))
        {
            return (job, []);
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
        byte[] both = [.. Encoding.UTF8.GetBytes(job.Revision), .. file.Bytes];
        return (
            job with
            {
                Glue = glue with { Done = progress },
                Revision = Sha256Hash.HexOf(both)[..6],
            },
            findings
        );
    }
}
