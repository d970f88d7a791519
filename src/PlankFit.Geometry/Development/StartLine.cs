namespace PlankFit.Geometry.Development;

/// <summary>The staircase of the start, read as a function of p or of q.</summary>
internal sealed class StartLine(List<(int I, int J)> path, Func<int, double> u)
{
    public int FirstRunOnLower { get; } = path.TakeWhile(x => x.J == 0).Count() - 1;
    public int FirstRunOnUpper { get; } = path.TakeWhile(x => x.I == 0).Count() - 1;
    public int LastRunOnLower { get; } = path.Count(x => x.J == path[^1].J) - 1;
    public int LastRunOnUpper { get; } = path.Count(x => x.I == path[^1].I) - 1;

    private readonly (double P, double Q)[] middles =
    [
        .. path.GroupBy(x => x.I)
            .Select(g => (u(g.Key), 0.5 * (u(g.Min(x => x.J)) + u(g.Max(x => x.J))))),
    ];

    public double QAt(double p)
    {
        int k = 1;
        while (k < middles.Length - 1 && middles[k].P < p)
        {
            k++;
        }

        (double p0, double q0) = middles[k - 1];
        (double p1, double q1) = middles[k];
        return q0 + ((q1 - q0) * (p - p0) / (p1 - p0));
    }
}
