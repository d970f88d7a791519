namespace PlankFit.Pages.Sessions;

/// <summary>The folder that a job lies in.</summary>
internal static class JobFolder
{
    /// <summary>Whether a file that the job names lies in it, or in a folder of it.</summary>
    public static bool Holds(string jobPath, string named)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(jobPath))!;
        return Path.GetFullPath(named, folder)
            .StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }
}
