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
    private PaperFolder? folder;
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

            stop?.Dispose();
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

    /// <summary>The files of that turn, none of which goes until the reading is disposed of, whatever is written meanwhile; null where they are there no more.</summary>
    public (PaperFolder Folder, IDisposable Reading)? Open(int turn)
    {
        lock (gate)
        {
            return folder is { } files && tray.Turn == turn ? (files, files.Read()) : null;
        }
    }

    public async ValueTask DisposeAsync()
    {
        Stop();
        await work;
        stop?.Dispose();
        folder?.GiveUp();
    }

    private void Write(Laid laid, CancellationToken stopped)
    {
        string? into = null;
        try
        {
            into = Directory.CreateTempSubdirectory("plankfit-page-").FullName;
            IReadOnlyList<string> names = Papers.Write(laid.Plan, into, new Told(this), stopped);
            var written = new PaperFolder(into, [.. names.Order(StringComparer.Ordinal)]);
            PaperFolder? old;
            lock (gate)
            {
                (old, folder) = (folder, written);
                tray = new(laid.Turn, written.Names, null, 1, "");
            }

            old?.GiveUp();
        }
        catch (Exception e)
        {
            if (into is not null)
            {
                PaperFolder.Remove(into);
            }

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
