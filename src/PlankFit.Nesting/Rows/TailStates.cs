namespace PlankFit.Nesting.Rows;

/// <summary>
/// What is told apart of a thing that lies in a row, where it is asked what may lie behind it: which it is in which pose, and of those that are short
/// (<see cref="ShortPoses"/>) to which group what lies before it belongs.
/// </summary>
internal sealed class TailStates
{
    private readonly ShortPoses? known;
    private readonly int[] firstOfShort;
    private readonly List<(int Pose, int Group)> grouped = [];

    public TailStates(RowPoses poses)
    {
        (Poses, known) = (poses, poses.Ends.Short);
        firstOfShort = new int[poses.Count];
        for (int p = 0; p < poses.Count; p++)
        {
            firstOfShort[p] = poses.Count + grouped.Count;
            if (known?.IsShort(poses.OfAll[p]) == true)
            {
                grouped.AddRange(Enumerable.Range(0, ShortPoses.Groups).Select(g => (p, g)));
            }
        }
    }

    public RowPoses Poses { get; }

    /// <summary>The first are the poses as they are, whatever lies before them.</summary>
    public int Count => Poses.Count + grouped.Count;

    public int PoseOf(int state) => state < Poses.Count ? state : grouped[state - Poses.Count].Pose;

    /// <summary>In which state a pose is behind another state.</summary>
    public int After(int state, int next)
    {
        // What is further from what lies before it than its own pitch says nothing of what comes next.
        int group =
            state < Poses.Count ? known?.Group(Poses.OfAll[next], Poses.OfAll[state]) ?? -1 : -1;
        return group < 0 ? next : firstOfShort[next] + group;
    }

    /// <summary>No row has the least x of the two nearer to each other.</summary>
    public double PitchMm(int state, int next)
    {
        if (state < Poses.Count)
        {
            return Poses.PitchMm(state, next);
        }

        (int pose, int group) = grouped[state - Poses.Count];
        return known!.BehindMm(Poses.OfAll[pose], group, Poses.OfAll[next]);
    }
}
