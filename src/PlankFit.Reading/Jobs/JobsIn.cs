using PlankFit.Planking.Units;

namespace PlankFit.Reading.Jobs;

/// <summary>What a builder who named a folder in a job's place may have meant.</summary>
internal static class JobsIn
{
    /// <summary>The jobs that lie in a folder which was named in their place, or in folders of it: ", hulls/tender/job.toml".</summary>
    public static string Folder(string folder)
    {
        const string usual = "job.toml";
        const int most = 12;
        if (!Directory.Exists(folder))
        {
            return "";
        }

        if (File.Exists(Path.Combine(folder, usual)))
        {
            return $", {Path.Combine(folder, usual)}";
        }

        string[] jobs;
        try
        {
            jobs =
            [
                .. Directory
                    .EnumerateDirectories(folder)
                    .Select(f => Path.Combine(f, usual))
                    .Where(File.Exists)
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }

        return jobs.Length == 0
            ? "; neither it nor a folder in it has a job.toml"
            : $", one of {string.Join(", ", jobs.Take(most))}{(jobs.Length > most ? $" and {NumberText.Count(jobs.Length - most, "other")}" : "")}";
    }
}
