using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace PlankFit.Pages.Sessions;

/// <summary>The open pages of a job.</summary>
internal sealed class Listeners
{
    public const int Most = 64;

    private readonly Lock gate = new();
    private readonly HashSet<Listener> open = [];

    /// <summary>Null where there are too many.</summary>
    public Listener? Join()
    {
        var listener = new Listener();
        lock (gate)
        {
            if (open.Count >= Most)
            {
                return null;
            }

            open.Add(listener);
        }

        return listener;
    }

    public bool Any
    {
        get
        {
            lock (gate)
            {
                return open.Count > 0;
            }
        }
    }

    public void Leave(Listener listener)
    {
        lock (gate)
        {
            open.Remove(listener);
        }
    }

    public void Tell(string news)
    {
        lock (gate)
        {
            foreach (Listener listener in open)
            {
                listener.Tell(news);
            }
        }
    }
}

/// <summary>
/// One open page. News only names what there is, so that what waits to be sent already is not told twice: a slow page misses steps between, and no kind of news pushes
/// another out of its line.
/// </summary>
internal sealed class Listener
{
    private readonly Lock gate = new();
    private readonly HashSet<string> waiting = [];
    private readonly Channel<string> news = Channel.CreateUnbounded<string>();

    public void Tell(string kind)
    {
        lock (gate)
        {
            if (waiting.Add(kind))
            {
                news.Writer.TryWrite(kind);
            }
        }
    }

    public async IAsyncEnumerable<string> Heard([EnumeratorCancellation] CancellationToken stop)
    {
        await foreach (string kind in news.Reader.ReadAllAsync(stop))
        {
            lock (gate)
            {
                waiting.Remove(kind);
            }

            yield return kind;
        }
    }
}
