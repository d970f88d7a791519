using PlankFit.Nesting.Effort;

namespace PlankFit.Tests.Nesting;

/// <summary>A clock that runs out when it has been looked at so many times, wherever in the search that is.</summary>
internal sealed class CountedPatience : Patience, IDisposable
{
    private readonly CancellationTokenSource source;
    private int left;

    public CountedPatience(int looks)
        : this(looks, new()) { }

    private CountedPatience(int looks, CancellationTokenSource source)
        : base(source.Token) => (left, this.source) = (looks, source);

    /// <summary>How often it was looked at.</summary>
    public int Looks { get; private set; }

    public override bool IsOver
    {
        get
        {
            lock (source)
            {
                Looks++;
                if (left > 0 && --left > 0)
                {
                    return false;
                }

                source.Cancel();
                return true;
            }
        }
    }

    public void Dispose() => source.Dispose();
}
