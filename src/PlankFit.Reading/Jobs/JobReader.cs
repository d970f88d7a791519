using System.Collections.Immutable;
using System.Text;
using PlankFit.Hashing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Jobs;

/// <summary>A job file and the table of offsets that it names, to a job. The one door from the disk.</summary>
public static class JobReader
{
    /// <summary>Reads both files. Whatever is wrong with them comes back as findings, all at once; nothing is thrown for it.</summary>
    public static ReadResult Read(string jobPath)
    {
        string jobFile = Path.GetFileName(jobPath) is { Length: > 0 } name ? name : jobPath;
        if (Name.Fault(jobFile) is { } unnamed)
        {
            // The file's name stands in findings, and they on paper.
            return new(
                null,
                [
                    new(
                        Severity.Error,
                        Quoted.Of(jobFile),
                        $"the job file's name will not do: {unnamed}; call it job.toml"
                    ),
                ]
            );
        }

        var text = TextFile.Read(jobPath, jobFile);
        return text is { Fault: { } fault }
            ? new(null, [fault with { Message = fault.Message + JobsIn.Folder(jobPath) }])
            : Read(jobPath, text);
    }

    /// <summary>
    /// The same of a job file whose text is in hand already, changed perhaps since it was read: the files that it names are those beside <paramref name="jobPath"/>.
    /// </summary>
    /// <param name="mayRead">
    /// Asked of every file that the job names, by its name as it stands there; null where the text is the builder's own. Who takes the text from somewhere else says which
    /// files of this computer it may name, since what is wrong with a file is told with words out of it.
    /// </param>
    /// <param name="table">Read instead of the file that it stands for.</param>
    public static ReadResult Read(
        string jobPath,
        TextFile job,
        Func<string, bool>? mayRead = null,
        TableInHand? table = null
    )
    {
        string jobFile = Path.GetFileName(jobPath);
        if (job.Text is null)
        {
            return new(null, [job.Fault!]);
        }

        (JobDraft draft, ImmutableArray<Finding> findings) = JobBinder.Read(job.Text, jobFile);
        if (draft.OffsetsPath is not { } offsetsFile)
        {
            return new(null, findings);
        }

        Finding[] outside =
        [
            .. Named(draft)
                .Where(n => mayRead is not null && !mayRead(n))
                .Select(n => new Finding(
                    Severity.Error,
                    jobFile,
                    $"names {n}, which is not in the job's folder: only what lies there is read here. Put it there, or name it with an editor in the file itself"
                )),
        ];
        if (outside.Length > 0)
        {
            return new(null, [.. findings, .. outside]);
        }

        string folder = Path.GetDirectoryName(jobPath) ?? "",
            offsetsPath = Path.Combine(folder, offsetsFile);
        (draft, ImmutableArray<Finding> ofRecord) = RecordBeside.Found(draft, folder);
        findings = findings.AddRange(ofRecord);
        TextFile? measured = draft.Parts.AsBuilt.MeasuredPath is { } path
            ? TextFile.Read(Path.Combine(folder, path), path)
            : null;
        if (measured is { Text: null })
        {
            findings = findings.Add(
                measured.Fault! with
                {
                    Message =
                        $"{measured.Fault.Message}; named in {draft.Parts.AsBuilt.MeasuredAt} as what was measured",
                }
            );
        }

        (TextFile? cut, bool backup) = CutRecord(folder, draft.Parts.AsBuilt);
        if (cut is { Text: null })
        {
            findings = findings.Add(cut.Fault!);
        }

        ImmutableArray<TextFile> stock =
        [
            .. (draft.Parts.Nest?.Files ?? []).Select(f =>
                TextFile.Read(Path.Combine(folder, f.Text), f.Text)
            ),
        ];
        findings =
        [
            .. findings,
            .. stock
                .Where(f => f.Text is null)
                .Select(f =>
                    f.Fault! with
                    {
                        Message =
                            $"{f.Fault.Message}; named in [nest] as boards on hand or to be bought",
                    }
                ),
        ];
        TextFile offsets =
            table?.File == offsetsFile
                ? TextFile.Decode(Encoding.UTF8.GetBytes(table.Text), offsetsFile)
                : TextFile.Read(offsetsPath, offsetsFile);
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
                new(
                    offsets.Text,
                    offsetsFile,
                    measured?.Text,
                    cut?.Text,
                    backup,
                    [.. stock.Select(f => f.Text)],
                    Revision(
                        job.Bytes,
                        offsets.Bytes,
                        [measured?.Bytes, cut?.Bytes, .. stock.Select(f => f.Bytes)]
                    )
                )
            ) with
            {
                OffsetsPath = offsetsPath,
                OffsetsFile = offsetsFile,
                OffsetsText = offsets.Text,
            };
    }

    /// <summary>The files that a job names, as they stand in it; none where it cannot be read so far.</summary>
    public static ImmutableArray<string> Named(TextFile job) =>
        job.Text is { } text ? Named(JobBinder.Read(text, "").Item1) : [];

    private static ImmutableArray<string> Named(JobDraft draft) =>
        [
            .. new[]
            {
                draft.OffsetsPath,
                draft.Parts.AsBuilt.MeasuredPath,
                draft.Parts.AsBuilt.SawnPath,
            }
                .OfType<string>()
                .Concat((draft.Parts.Nest?.Files ?? []).Select(f => f.Text)),
        ];

    /// <summary>The same from texts in memory; the revision is that of the texts as UTF-8.</summary>
    public static ReadResult Read(
        string jobText,
        string jobFile,
        string offsetsText,
        string offsetsFile,
        string? measuredText = null,
        string? cutText = null,
        ImmutableArray<string> stockTexts = default
    )
    {
        (JobDraft draft, ImmutableArray<Finding> findings) = JobBinder.Read(jobText, jobFile);
        ImmutableArray<string?> stock = stockTexts.IsDefault ? [] : [.. stockTexts];
        byte[]? Utf8(string? text) => text is null ? null : Encoding.UTF8.GetBytes(text);
        string revision = Revision(
            Utf8(jobText)!,
            Utf8(offsetsText)!,
            [Utf8(measuredText), Utf8(cutText), .. stock.Select(Utf8)]
        );
        return Join(
            draft,
            findings,
            new(offsetsText, offsetsFile, measuredText, cutText, false, stock, revision)
        );
    }

    /// <summary>What stands in the files that a job names; null where it names none, or where one cannot be read.</summary>
    /// <param name="SawnBackup">There is a backup beside the record of sawn planks.</param>
    /// <param name="Revision">Of the job and all that it names.</param>
    private sealed record NamedTexts(
        string Offsets,
        string OffsetsFile,
        string? Measured,
        string? Sawn,
        bool SawnBackup,
        ImmutableArray<string?> Stock,
        string Revision
    );

    /// <summary>The record of sawn planks, and whether there is a backup beside it.</summary>
    private static (TextFile? Record, bool Backup) CutRecord(string folder, AsBuiltDraft standing)
    {
        if (standing.SawnPath is not { } name)
        {
            return (null, false);
        }

        string path = Path.Combine(folder, name);
        var file = TextFile.Read(path, name, SawnPlanksFile.MostBytes);
        bool backup = File.Exists(SawnPlanksFile.BackupOf(LinkedFile.Real(path)));
        return (
            file.Text is not null
                ? file
                : file with
                {
                    Fault = file.Fault! with
                    {
                        Message =
                            $"{file.Fault.Message}; {(standing.SawnFound ? "it lies beside the job" : $"named in {standing.SawnAt}")} as the record of planks that are sawn, which `plankfit sawn` writes. {AsBuiltReader.ToDo(name, backup, standing.SawnFound)}",
                    },
                },
            backup
        );
    }

    private static ReadResult Join(
        JobDraft draft,
        ImmutableArray<Finding> findings,
        NamedTexts texts
    )
    {
        if (draft.Units is not { } units)
        {
            // Without the unit no cell can be read.
            return new(null, findings);
        }

        (OffsetsReading? reading, ImmutableArray<Finding> ofTable) = OffsetsText.Read(
            texts.Offsets,
            texts.OffsetsFile,
            units,
            draft.Forward
        );
        findings = findings.AddRange(ofTable);
        bool ofTableFaulty = ofTable.Any(f => f.Severity == Severity.Error);
        if (reading is not null)
        {
            Finding[] ofNames =
            [
                .. TableChecks.Check(reading, draft, texts.OffsetsFile, ofTableFaulty),
            ];
            findings = findings.AddRange(ofNames);
            ofTableFaulty |= ofNames.Any(f => f.Severity == Severity.Error);
        }

        AsBuiltSpec standing = AsBuiltSpec.None;
        if (reading is not null)
        {
            (standing, ImmutableArray<Finding> ofMeasured) = AsBuiltReader.Read(
                draft,
                reading.Table,
                texts.Measured,
                texts.Sawn,
                texts.SawnBackup
            );
            findings = findings.AddRange(ofMeasured);
            if (ofMeasured.Any(f => f.Severity == Severity.Error))
            {
                standing = AsBuiltSpec.None;
            }
        }

        (NestSpec? nest, ImmutableArray<Finding> ofStock) = StockReader.Read(
            draft.Parts.Nest,
            (units, draft.Output.Shown(units)),
            draft.AllLayers,
            texts.Stock
        );
        findings = findings.AddRange(ofStock);
        if (nest is not null)
        {
            (nest, ImmutableArray<Finding> ofRack) = RackAfterSawing.Of(
                nest,
                standing.SawnInto,
                standing.SawnFile ?? SawnPlanksFile.UsualName
            );
            findings = findings.AddRange(ofRack);
        }

        if (
            findings.Any(f => f.Severity == Severity.Error)
            || reading is null
            || draft.Hull is null
            || draft.Name is null
        )
        {
            return new(
                null,
                reading is null || ofTableFaulty
                    ? findings
                    : findings.AddRange(FurtherFaults.Of(draft, reading, standing))
            );
        }

        Job job = DraftedJob.Of(draft, reading, standing, texts.Revision) with { Nest = nest };
        ImmutableArray<Finding> beyond = PlankCount.Check(draft, job);
        return new(beyond.IsEmpty ? job : null, findings.AddRange(beyond))
        {
            Places = draft.Places,
        };
    }

    private static string Revision(byte[] job, byte[] offsets, ImmutableArray<byte[]?> others)
    {
        var hash = new Sha256Hash();
        hash.Append(job);
        hash.Append(offsets);
        foreach (byte[] other in others.OfType<byte[]>())
        {
            hash.Append(other);
        }

        return Convert.ToHexStringLower(hash.Finish())[..6];
    }
}
