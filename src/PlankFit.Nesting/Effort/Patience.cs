using System.Diagnostics;

namespace PlankFit.Nesting.Effort;

/// <summary>How long a search may go on. It is asked wherever more than a moment's work lies ahead; once it is over it stays over.</summary>
/// <param name="enough">Ends it.</param>
public class Patience(CancellationToken enough)
{
    /// <summary>What is over from the beginning: all that must be done is done, in the least time.</summary>
    public static readonly Patience None = new(new CancellationToken(canceled: true));

    /// <summary>Whether what is there must do.</summary>
    public virtual bool IsOver => enough.IsCancellationRequested;

    /// <summary>For solvers that can be stopped in the middle of their work.</summary>
    public CancellationToken Enough => enough;
}

/// <summary>So much time by the clock, from now on: a timer's word may come late where every processor is at work.</summary>
/// <param name="enough">Ends it sooner, and is to end by itself about then, for solvers that know no clock but that.</param>
public sealed class TimedPatience(TimeSpan time, CancellationToken enough) : Patience(enough)
{
    private readonly long began = Stopwatch.GetTimestamp();

    /// <inheritdoc/>
    public override bool IsOver => base.IsOver || Stopwatch.GetElapsedTime(began) >= time;
}
