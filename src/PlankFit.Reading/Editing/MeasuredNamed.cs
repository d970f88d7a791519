using PlankFit.Reading.AsBuilt;

namespace PlankFit.Reading.Editing;

/// <summary>The file of what was measured, as a job's text names it.</summary>
public static class MeasuredNamed
{
    public const string UsualName = "measured.csv";

    private static readonly string Table = "as-built",
        Address = $"{Table}.{AsBuiltKeys.Measured.Name}";

    /// <summary>Null where the text names none.</summary>
    public static string? Of(string job) =>
        JobFields.Of(job).FirstOrDefault(f => f.Address == Address)?.Written;

    /// <summary>The text with that name, in a table of its own at the end where it has none; null where it cannot be put there.</summary>
    public static string? With(string job, string name)
    {
        string newLine = job.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string? named =
            JobChange.Of(job, Address, name)
            ?? job
                + (job.EndsWith('\n') ? "" : newLine)
                + $"{newLine}[{Table}]{newLine}{AsBuiltKeys.Measured.Name} = {JobChange.Value(AsBuiltKeys.Measured, name)}{newLine}";
        return Of(named) == name ? named : null;
    }
}
