using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Fairness;

/// <summary>The cells that a job takes as they are written, though they stand out of the run of their neighbours: chine/half-breadth/6.</summary>
public sealed record AsWritten(ImmutableArray<string> Cells)
{
    public static readonly AsWritten None = new([]);

    /// <summary>What stands out by more is no reading of a scale: nothing is laid to it unasked. Our own bound, no source, mm.</summary>
    public const double MostMm = 10;

    public bool Has(string cell) => Cells.Contains(cell);

    /// <summary>What was found of a cell as the job has it: a note where it is taken as written, a fault where it is too far out to lay planks to.</summary>
    /// <param name="job">Null where nothing is known of a job.</param>
    /// <param name="expected">What the neighbours expect, in words.</param>
    internal static Finding Judged(
        AsWritten? job,
        string cell,
        double outMm,
        Finding found,
        string expected
    ) =>
        job?.Has(cell) == true
            ? found with
            {
                Severity = Severity.Note,
                Rank = Rank.Know,
                Message = $"{found.Message}. Taken as written, as the job says",
            }
        : job is not null && outMm > MostMm
            ? found with
            {
                Severity = Severity.Error,
                Message =
                    $"{found.Message}. Nothing is laid to it: {expected}. If it is right as it is written, say so in the job: [hull] as-written = [\"{cell}\"]",
            }
        : found;
}
