using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;

namespace PlankFit.App.Running;

/// <summary>What a run has to say when it ends.</summary>
/// <param name="Lines">For the person at the terminal, on standard error.</param>
/// <param name="Result">What was asked for on standard output; null where nothing was.</param>
public sealed record RunReport(
    ExitCode Exit,
    ImmutableArray<Finding> Findings,
    ImmutableArray<string> Lines,
    string? Result = null
)
{
    /// <summary>What is told before anything else.</summary>
    public ImmutableArray<string> First { get; init; } = [];

    /// <summary>The file that has all findings by rank, so that the terminal has the first of them; null where the terminal tells all.</summary>
    public string? AllIn { get; init; }

    /// <summary>The findings as the terminal tells them, a line each.</summary>
    public IEnumerable<string> Told() =>
        AllIn is { } file
            ? FindingsText.Ranked(Findings, FindingsText.ToldFirst, file)
            : FindingsText.GravestFirst(Findings).Select(FindingsText.Line);

    public static RunReport Faults(ImmutableArray<Finding> findings) =>
        new(ExitCode.JobHasFaults, findings, []);
}

/// <summary>What every run is given.</summary>
/// <param name="OutFolder">Null for output/ and the name of the job's folder.</param>
/// <param name="Json">The result is wanted on standard output as JSON.</param>
public sealed record RunRequest(string JobPath, string? OutFolder, bool Json)
{
    /// <summary>Where results go: the folder asked for, or output/ and the name of the job's own folder.</summary>
    public string Folder
    {
        get
        {
            if (OutFolder is not null)
            {
                return OutFolder;
            }

            string? folder = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(JobPath)));
            return Path.Combine("output", string.IsNullOrEmpty(folder) ? "job" : folder);
        }
    }
}
