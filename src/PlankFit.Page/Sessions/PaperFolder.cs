using System.Collections.Immutable;

namespace PlankFit.Pages.Sessions;

/// <summary>Written files, which are there for as long as somebody reads them: removed once they are given up and the last reader has gone.</summary>
internal sealed class PaperFolder(string path, ImmutableArray<string> names)
{
    private readonly Lock gate = new();
    private int readers;
    private bool isGivenUp;

    /// <summary>Within the folder.</summary>
    public ImmutableArray<string> Names => names;

    public string At(int place) => Path.Combine(path, names[place]);

    /// <summary>Until what is given back is disposed of, no file goes.</summary>
    public IDisposable Read()
    {
        lock (gate)
        {
            readers++;
        }

        return new Reading(this);
    }

    public void GiveUp()
    {
        lock (gate)
        {
            isGivenUp = true;
            RemoveIfDone();
        }
    }

    private void RemoveIfDone()
    {
        if (isGivenUp && readers == 0)
        {
            Remove(path);
        }
    }

    public static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It lies among the system's temporary files, which the system clears.
        }
    }

    private sealed class Reading(PaperFolder of) : IDisposable
    {
        private bool isOver;

        public void Dispose()
        {
            lock (of.gate)
            {
                if (!isOver)
                {
                    isOver = true;
                    of.readers--;
                    of.RemoveIfDone();
                }
            }
        }
    }
}
