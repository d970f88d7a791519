namespace PlankFit.Pages.Sessions;

/// <summary>Tells of files beside a job that another program has changed: the table in a spreadsheet, the record of sawn planks by the command line.</summary>
internal sealed class FolderWatch : IDisposable
{
    private readonly FileSystemWatcher? watcher;

    /// <param name="told">Given the file's name, or null where so much has changed that any may have; on a thread of its own, once or several times a change.</param>
    public FolderWatch(string folder, Action<string?> told)
    {
        try
        {
            watcher = new(folder)
            {
                NotifyFilter =
                    NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size,
            };
            watcher.Changed += (_, e) => Tell(e.Name, told);
            watcher.Created += (_, e) => Tell(e.Name, told);
            watcher.Deleted += (_, e) => Tell(e.Name, told);
            watcher.Renamed += (_, e) => Tell(e.Name, told);
            watcher.Error += (_, _) => Again(told);
            watcher.EnableRaisingEvents = true;
        }
        catch (Exception e) when (e is IOException or ArgumentException)
        {
            // More folders are watched on this machine than it allows: changes are seen at the next laying.
            watcher?.Dispose();
            watcher = null;
        }
    }

    public void Dispose() => watcher?.Dispose();

    private static void Tell(string? name, Action<string?> told)
    {
        // What is being written has a hidden name until it is whole.
        if (
            name is { Length: > 0 }
            && !name.StartsWith('.')
            && Path.GetExtension(name) is ".toml" or ".csv" or ".json"
        )
        {
            Safely(told, name);
        }
    }

    /// <summary>Something was not told, or the watching has ended: it begins anew, and anything may have changed.</summary>
    private void Again(Action<string?> told)
    {
        try
        {
            watcher!.EnableRaisingEvents = false;
            watcher.EnableRaisingEvents = true;
        }
        catch (Exception e) when (e is IOException or ArgumentException or ObjectDisposedException)
        {
            // The folder is gone, or nobody watches it any more.
        }

        Safely(told, null);
    }

    /// <summary>What is thrown out of the telling would end the watching, without a word.</summary>
    private static void Safely(Action<string?> told, string? name)
    {
        try
        {
            told(name);
        }
        catch (Exception e)
        {
            Console.Error.WriteLine(
                $"plankfit-page: a fault of the program, not of the job: {e.Message}"
            );
        }
    }
}
