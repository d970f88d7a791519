using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>The answer of the search for the fewest joints.</summary>
/// <param name="Ways">A way for each plank; empty where none was found.</param>
/// <param name="Stuck">A plank that no way of those before it leaves a place, which is proved; null where there is none, or that is not known.</param>
/// <param name="LeastJoints">Proved: no choice of the places given has fewer.</param>
public sealed record FewestChoice(ImmutableArray<JointScheme> Ways, int? Stuck, int LeastJoints)
{
    public int Joints => Ways.Sum(w => w.Joints.Length);

    public bool IsProved => Stuck is not null || (!Ways.IsEmpty && Joints == LeastJoints);
}

/// <summary>
/// The fewest joints with which the planks of a row keep the rules, and the proof that there are no fewer: a search in depth over growing parts of the row
/// (Russian dolls, after Verfaillie, Lemaître and Schiex 1996), what each part needs being a bound for those that hold it.
/// </summary>
public static class FewestJoints
{
    /// <summary>So often it is asked how few joints a plank could have before the search stops with what is proved by then: some tenths of a second.</summary>
    public const long UsualEffort = 2_000_000;

    /// <summary>For questions of which there are many.</summary>
    public const long LittleEffort = UsualEffort / 10;

    /// <summary>A part that is not yet the whole row may use one part in so many of the effort that is left.</summary>
    private const int Shares = 4;

    public static FewestChoice Of(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        long effort = UsualEffort,
        CancellationToken stop = default
    )
    {
        PiecePaths[] paths = [.. planks.Select(p => new PiecePaths(p, stock))];
        int leasts = paths.Sum(p => p.Least ?? 0);
        var row = new JointRow(paths, rules, stop);
        for (int part = 1; part <= paths.Length; part++)
        {
            bool whole = part == paths.Length;
            long share = whole ? effort : effort / Shares,
                kept = effort - share;
            if (paths[part - 1].Least is null || !row.Grow(part, whole, ref share))
            {
                return new([], part - 1, leasts);
            }

            effort = kept + share;
        }

        return new(
            [
                .. (row.Found(paths.Length) ?? []).Select(
                    (joints, i) => PlankSchemes.Way(planks[i], joints, stock)
                ),
            ],
            null,
            leasts + row.LeastExtra(paths.Length)
        );
    }
}
