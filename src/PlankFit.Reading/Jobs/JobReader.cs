using System.Collections.Immutable;
using System.Security.Cryptography;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>A job file and the table of offsets that it names, to a job. The one door from the disk.</summary>
public static class JobReader
{
    /// <summary>Reads both files. Whatever is wrong with them comes back as findings, all at once; nothing is thrown for it.</summary>
    public static ReadResult Read(string jobPath)
    {
        string jobFile = Path.GetFileName(jobPath) is { Length: > 0 } name ? name : jobPath;
        TextFile job = TextFile.Read(jobPath, jobFile);
        if (job.Text is null)
        {
            return new(null, [job.Fault!]);
        }

        (JobDraft draft, ImmutableArray<Finding> findings) = JobBinder.Read(job.Text, jobFile);
        if (draft.OffsetsPath is not { } offsetsFile)
        {
            return new(null, findings);
        }

        string offsetsPath = Path.Combine(Path.GetDirectoryName(jobPath) ?? "", offsetsFile);
        TextFile offsets = TextFile.Read(offsetsPath, offsetsFile);
        return offsets.Text is null
            ? new(
                null,
                findings.Add(
                    offsets.Fault! with
                    {
                        Message =
                            $"{offsets.Fault.Message}; named in {draft.OffsetsAt} as the table of offsets",
                    }
                )
            )
            : Join(
                draft,
                findings,
                offsets.Text,
                offsetsFile,
                Revision(job.Bytes, offsets.Bytes)
            ) with
            {
                OffsetsPath = offsetsPath,
            };
    }

    /// <summary>The same from texts in memory; the revision is that of the texts as UTF-8.</summary>
    public static ReadResult Read(
        string jobText,
        string jobFile,
        string offsetsText,
        string offsetsFile
    )
    {
        (JobDraft draft, ImmutableArray<Finding> findings) = JobBinder.Read(jobText, jobFile);
        string revision = Revision(
            System.Text.Encoding.UTF8.GetBytes(jobText),
            System.Text.Encoding.UTF8.GetBytes(offsetsText)
        );
        return Join(draft, findings, offsetsText, offsetsFile, revision);
    }

    private static ReadResult Join(
        JobDraft draft,
        ImmutableArray<Finding> findings,
        string offsetsText,
        string offsetsFile,
        string revision
    )
    {
        if (draft.Units is not { } units)
        {
            // Without the unit no cell can be read.
            return new(null, findings);
        }

        (OffsetsReading? reading, ImmutableArray<Finding> ofTable) = OffsetsText.Read(
            offsetsText,
            offsetsFile,
            units,
            draft.Forward
        );
        findings = findings.AddRange(ofTable);
        if (reading is not null)
        {
            bool faulty = ofTable.Any(f => f.Severity == Severity.Error);
            findings = findings.AddRange(TableChecks.Check(reading, draft, offsetsFile, faulty));
        }

        if (
            findings.Any(f => f.Severity == Severity.Error)
            || reading is null
            || draft.Hull is null
            || draft.Name is null
        )
        {
            return new(null, findings);
        }

        double? from = reading.ReversedFromMm;
        JobParts parts = from is { } h ? Positions.Turned(draft.Parts, h) : draft.Parts;
        var job = new Job(
            draft.Name,
            revision,
            units,
            reading.Table,
            draft.Hull,
            from is { } f ? Positions.Turned(draft.Layers, f) : draft.Layers,
            from is { } g ? Positions.Turned(draft.Ends, g) : draft.Ends,
            draft.Limits
        )
        {
            Output = draft.Output,
            Keel = parts.Keel,
            SettingUp = parts.SettingUp,
            Joints = parts.Joints,
            Behind = parts.Behind,
            Fastenings = parts.Fastenings,
            Timber = parts.Timber,
            Standing = parts.Standing,
        };
        return new(job, findings);
    }

    private static string Revision(byte[] job, byte[] offsets)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(job);
        hash.AppendData(offsets);
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..6];
    }
}
