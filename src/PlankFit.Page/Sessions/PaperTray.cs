using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Planking.Laying;

namespace PlankFit.Pages.Sessions;

/// <summary>The files of a job as they stand in the tray.</summary>
/// <param name="Turn">What they are of; null where there are none yet.</param>
/// <param name="Names">Within their folder; a file is asked for by its place here and never by a name.</param>
/// <param name="What">What is being written; null where nothing is.</param>
/// <param name="Part">How much of it is done, from 0 to 1.</param>
internal sealed record Tray(
    int? Turn,
    ImmutableArray<string> Names,
    string? What,
    double Part,
    string Fault
);

/// <summary>Writes every file that `lay` writes into a folder of its own, when it is asked to, and holds them until the next time.</summary>
internal sealed class PaperTray(JobSession session) : IAsyncDisposable
{
    private readonly Lock gate = new();
    private Tray tray = new(null, [], null, 0, "");
    private string? folder;
    private CancellationTokenSource? stop;
    private Task work = Task.CompletedTask;

    public Tray Now
    {
        get
        {
            lock (gate)
            {
                return tray;
            }
        }
    }

    /// <summary>Begins to write what the picture is of, unless it is being written; false where there is nothing to write.</summary>
    public bool Begin()
    {
        lock (gate)
        {
            if (tray.What is not null)
            {
                return true;
            }

            if (session.Now.Good is not { } laid)
            {
                return false;
            }

            stop = new();
            tray = tray with { What = "", Part = 0, Fault = "" };
            CancellationToken stopped = stop.Token;
            work = Task.Run(() => Write(laid, stopped), CancellationToken.None);
            return true;
        }
    }

    public void Stop()
    {
        lock (gate)
        {
            stop?.Cancel();
        }
    }

    /// <summary>The file at that place, of that turn; null where there is none.</summary>
    public (string Path, string Name)? Find(int turn, int place)
    {
        lock (gate)
        {
            return
                folder is not null && tray.Turn == turn && place >= 0 && place < tray.Names.Length
                ? (System.IO.Path.Combine(folder, tray.Names[place]), tray.Names[place])
                : null;
        }
    }

    public async ValueTask DisposeAsync()
    {
        Stop();
        await work;
        Remove(folder);
    }

    private void Write(Laid laid, CancellationToken stopped)
    {
        string into = Directory.CreateTempSubdirectory("plankfit-page-").FullName;
        try
        {
            IReadOnlyList<string> names = Papers.Write(laid.Plan, into, new Told(this), stopped);
            string? old;
            lock (gate)
            {
                (old, folder) = (folder, into);
                tray = new(laid.Turn, [.. names.Order(StringComparer.Ordinal)], null, 1, "");
            }

            Remove(old);
        }
        catch (Exception e)
        {
            Remove(into);
            lock (gate)
            {
                tray = tray with
                {
                    What = null,
                    Fault = e is OperationCanceledException ? "" : e.Message,
                };
            }
        }

        session.Listeners.Tell("papers");
    }

    private static void Remove(string? folder)
    {
        try
        {
            if (folder is not null)
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It lies among the system's temporary files, which the system clears.
        }
    }

    private sealed class Told(PaperTray of) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value)
        {
            lock (of.gate)
            {
                of.tray = of.tray with { What = value.Doing, Part = value.Part };
            }
        }
    }
}
