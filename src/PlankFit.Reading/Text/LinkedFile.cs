namespace PlankFit.Reading.Text;

/// <summary>Files that are reached by a symbolic link.</summary>
public static class LinkedFile
{
    /// <summary>The file that a path means in the end; the path itself, in full, where it is no link, or one that leads nowhere that can be told.</summary>
    public static string Real(string path)
    {
        string full = Path.GetFullPath(path);
        try
        {
            return File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return full;
        }
    }
}
