namespace PlankFit.Pages.Sessions;

/// <summary>Work that is done anew whenever it is wished for: one run at a time and none given up; the newest wish waits, and what came between is passed over.</summary>
internal sealed class Wishes : IAsyncDisposable
{
    private readonly SemaphoreSlim waiting = new(0, 1);
    private readonly CancellationTokenSource stop = new();
    private readonly Lock gate = new();
    private CancellationTokenSource newer = new();
    private Task work = Task.CompletedTask;
    private bool isGone;

    public bool AreOver => stop.IsCancellationRequested;

    /// <summary>By one at a time.</summary>
    public void Wish()
    {
        lock (gate)
        {
            if (isGone)
            {
                return;
            }

            // First who runs is told, then there is something to take: the other way about, who takes it at once is told that his own wish is a newer one.
            newer.Cancel();
            if (waiting.CurrentCount == 0)
            {
                waiting.Release();
            }
        }
    }

    /// <param name="run">Given what tells it to end, and what tells it that a newer wish waits.</param>
    /// <param name="failed">Told what a run threw, after which the next wish is done as any other.</param>
    public void Begin(Action<CancellationToken, CancellationToken> run, Action<Exception> failed) =>
        work = Task.Run(() => Work(run, failed));

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await work;
        lock (gate)
        {
            // Whoever wishes for something from here on, as a watcher of files may, comes too late.
            isGone = true;
            stop.Dispose();
            waiting.Dispose();
            newer.Dispose();
        }
    }

    private async Task Work(
        Action<CancellationToken, CancellationToken> run,
        Action<Exception> failed
    )
    {
        try
        {
            while (true)
            {
                await waiting.WaitAsync(stop.Token);
                CancellationToken overtaken;
                lock (gate)
                {
                    newer.Dispose();
                    newer = new();
                    overtaken = newer.Token;
                    // What was wished for since is done by this run.
                    _ = waiting.Wait(0);
                }

                try
                {
                    run(stop.Token, overtaken);
                }
                catch (Exception e) when (!stop.IsCancellationRequested)
                {
                    failed(e);
                }
            }
        }
        catch (Exception) when (stop.IsCancellationRequested)
        {
            // The server ends.
        }
    }
}
