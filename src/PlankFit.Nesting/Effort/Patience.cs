namespace PlankFit.Nesting.Effort;

/// <summary>How long a search may go on. It is asked wherever more than a moment's work lies ahead; once it is over it stays over.</summary>
/// <param name="enough">Ends it.</param>
public class Patience(CancellationToken enough)
{
    /// <summary>Whether what is there must do.</summary>
    public virtual bool IsOver => enough.IsCancellationRequested;

    /// <summary>For solvers that can be stopped in the middle of their work.</summary>
    public CancellationToken Enough => enough;
}
