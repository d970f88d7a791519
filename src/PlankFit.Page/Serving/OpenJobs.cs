using System.Text;
using PlankFit.Hashing;
using PlankFit.Pages.Sessions;
using PlankFit.Pages.Shelf;

namespace PlankFit.Pages.Serving;

/// <summary>A session for every job that somebody has opened, by its number on the shelf.</summary>
internal sealed class OpenJobs(JobShelf offered) : IAsyncDisposable
{
    private readonly Lock gate = new();
    private readonly Dictionary<int, OpenJob> open = [];

    private JobShelf shelf = offered;

    public JobShelf Shelf
    {
        get
        {
            lock (gate)
            {
                return shelf;
            }
        }
    }

    /// <summary>Puts a job on the shelf.</summary>
    /// <returns>Its number.</returns>
    public int Add(string path)
    {
        lock (gate)
        {
            shelf = shelf.With(path);
            return shelf.Paths.Length;
        }
    }

    /// <summary>Null where there is no such number.</summary>
    public OpenJob? Of(int number)
    {
        lock (gate)
        {
            if (number < 1 || number > shelf.Paths.Length)
            {
                return null;
            }

            if (!open.TryGetValue(number, out OpenJob? job))
            {
                var session = new JobSession(shelf.Paths[number - 1]);
                var notes = new Notebook(session);
                open[number] = job = new(
                    session,
                    new PaperTray(session),
                    new SawnMarks(session),
                    notes,
                    new OtherLayouts(session),
                    new BoardSearch(session)
                )
                {
                    Taping = new TapingBook(session, notes),
                };
            }

            return job;
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (OpenJob job in open.Values)
        {
            job.Marks.Dispose();
            job.Notes.Dispose();
            await job.Others.DisposeAsync();
            await job.Papers.DisposeAsync();
            await job.Boards.DisposeAsync();
            await job.Session.DisposeAsync();
        }
    }
}

/// <summary>A job with the files that were last written of it, its record and its journal, what was tried of it and the search for its boards.</summary>
internal sealed record OpenJob(
    JobSession Session,
    PaperTray Papers,
    SawnMarks Marks,
    Notebook Notes,
    OtherLayouts Others,
    BoardSearch Boards
)
{
    private const int IdLength = 16;

    /// <summary>By which a browser knows the job again: of where it lies, since its number goes by what else is served.</summary>
    public string Id { get; } = IdOf(Session.Path);

    public static string IdOf(string path) =>
        Sha256Hash.HexOf(Encoding.UTF8.GetBytes(Path.GetFullPath(path)))[..IdLength];

    /// <summary>What was read in the blanks of the check sheet.</summary>
    public required TapingBook Taping { get; init; }
}
