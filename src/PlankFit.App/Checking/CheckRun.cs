using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.App.Looking;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Export.Words;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Lengths;

namespace PlankFit.App.Checking;

/// <summary>Checks a job and the fairness of its table, and draws its lines; with a tolerance, writes a faired copy of the table beside the old one.</summary>
public static class CheckRun
{
    public static RunReport Run(
        RunRequest request,
        string? fairTolerance,
        Timings timings,
        CancellationToken stop
    )
    {
        ReadResult read = timings.Time(
            "read the job and its offsets",
            () => JobReader.Read(request.JobPath)
        );
        if (read.Job is not { } job)
        {
            return RunReport.Faults(read.Findings);
        }

        double? toleranceMm = null;
        if (fairTolerance is not null)
        {
            LengthReading reading = LengthNotation.Read(fairTolerance, job.WrittenIn);
            if (reading.Fault is { } fault || !(reading.Mm > 0))
            {
                return RunReport.Faults([
                    new(
                        Severity.Error,
                        "--fair",
                        $"'{fairTolerance}' is no tolerance above nought: {reading.Fault ?? LengthNotation.Accepted(job.WrittenIn)}"
                    ),
                ]);
            }

            toleranceMm = reading.Mm;
        }

        FairnessReport fairness = timings.Time(
            "judge the fairness of every line",
            () => FairnessCheck.Judge(job.Offsets, job.WrittenIn)
        );
        ImmutableArray<Finding> faults = timings.Time(
            "look for faults of the job",
            () => read.Placed(JobChecks.Of(job))
        );
        ImmutableArray<Finding> unfair = FairnessFindings.Of(
            fairness,
            job,
            read.OffsetsText!,
            Path.GetFileName(read.OffsetsPath!)
        );
        ImmutableArray<Finding> findings =
        [
            .. read.Findings,
            .. faults,
            .. unfair,
            .. read.Placed([.. JobQuestions.Of(job)]),
        ];
        int toLookAt = fairness.Suspicions.Length + fairness.Stations.Length;
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(
            fairness.Rows.Length == 0
                ? "No line has values enough to be judged for fairness: tape the frames before anything is sawn."
            : toLookAt == 0
                ? $"All {fairness.Rows.Length} lines run fair within what reading a table can tell."
            : $"{PlanWords.Count(toLookAt, "offset")} to look at in {fairness.Rows.Length} lines, the worst named first: see the drawing and the source before changing any."
        );
        if (fairness.TapeTheEnds is { } ends)
        {
            lines.Add(ends);
        }

        if (toLookAt > 0 && job.WrittenIn == LengthUnit.FeetInchesEighths)
        {
            lines.Add($"Cells are told as the table has them, in {LengthText.EighthsKey}.");
        }

        // The copy stands in the user's own folder, where something of theirs may be in the way: it comes first, and a refusal leaves all as it was.
        ImmutableArray<string> ofTheCopy = toleranceMm is { } tolerance
            ? timings.Time(
                "fair the table",
                () => FairedFiles.Write(read.OffsetsPath!, job, tolerance, stop).ToImmutableArray()
            )
            : [];
        using (var output = OutputFolder.Begin(request.Folder, "check", stop))
        {
            timings.Time("draw the lines", () => CheckFiles.Write(output, job, fairness, unfair));
            IReadOnlyList<string> written = output.Commit();
            lines.Add(
                $"The lines and their curvature are drawn in {request.Folder}: {string.Join(", ", written)}."
            );
        }

        lines.AddRange(ofTheCopy);
        string? json = request.Json ? Json(findings, fairness.TapeTheEnds) : null;
        ExitCode exit = findings.Any(f => f.Severity == Severity.Error)
            ? ExitCode.JobHasFaults
            : ExitCode.Done;
        return new(exit, findings, lines.ToImmutable(), json);
    }

    private static string Json(ImmutableArray<Finding> findings, string? notJudged) =>
        JsonSerializer.Serialize(
            new
            {
                schema = "plankfit-check/1",
                findings = findings.Select(f => new
                {
                    severity = PlankWords.Of(f.Severity),
                    where = f.Where,
                    message = f.Message,
                }),
                notJudged,
            },
            new JsonSerializerOptions
            {
                WriteIndented = true,
                Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            }
        ) + "\n";
}
