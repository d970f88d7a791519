namespace PlankFit.Planking.Glue.Sessions;

/// <summary>How many hands are spoken for when. One builder of a plan has it while it makes the plan.</summary>
internal sealed class HandsInUse(int hands)
{
    private readonly List<(double From, double To, int Hands)> spans = [];

    public void Take(double from, double to, int taken) => spans.Add((from, to, taken));

    /// <summary>Gives back what was taken last.</summary>
    public void Undo(int to) => spans.RemoveRange(to, spans.Count - to);

    public int Count => spans.Count;

    public bool Free(double from, double to, int wanted)
    {
        // The most that are taken at once are taken where some span begins, or at the beginning.
        if (Taken(from) + wanted > hands)
        {
            return false;
        }

        foreach ((double start, _, _) in spans)
        {
            if (start > from && start < to && Taken(start) + wanted > hands)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The first time not before this at which so many hands are free for so long; where a span ends hands come free.</summary>
    public double FirstFree(double from, double minutes, int wanted)
    {
        double at = from;
        foreach (double end in spans.Select(s => s.To).Where(e => e > from).Order().Prepend(from))
        {
            at = end;
            if (Free(at, at + minutes, wanted))
            {
                break;
            }
        }

        return at;
    }

    private int Taken(double at)
    {
        int taken = 0;
        foreach ((double from, double to, int of) in spans)
        {
            if (from <= at && at < to)
            {
                taken += of;
            }
        }

        return taken;
    }
}
