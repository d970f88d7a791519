using System.Threading.Channels;

namespace PlankFit.Pages.Sessions;

/// <summary>The open pages of a job. What they are sent only names what there is, so that one that is slow may miss all but the newest.</summary>
internal sealed class Listeners
{
    public const int Most = 64;
    private const int Waiting = 8;

    private readonly Lock gate = new();
    private readonly HashSet<Channel<string>> open = [];

    /// <summary>Null where there are too many.</summary>
    public Channel<string>? Join()
    {
        var channel = Channel.CreateBounded<string>(
            new BoundedChannelOptions(Waiting) { FullMode = BoundedChannelFullMode.DropOldest }
        );
        lock (gate)
        {
            if (open.Count >= Most)
            {
                return null;
            }

            open.Add(channel);
        }

        return channel;
    }

    public void Leave(Channel<string> channel)
    {
        lock (gate)
        {
            open.Remove(channel);
        }
    }

    public void Tell(string news)
    {
        lock (gate)
        {
            foreach (Channel<string> channel in open)
            {
                channel.Writer.TryWrite(news);
            }
        }
    }
}
