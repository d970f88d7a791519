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
    /// <summary>
    /// So often it is asked how few joints a plank could have before the search stops with what is proved by then: a second or two, which one row in some hundreds
    /// takes; nearly all others take a moment.
    /// </summary>
    public const long UsualEffort = 14 * FirstTurn;

    /// <summary>For questions of which there are many.</summary>
    public const long LittleEffort = FirstTurn / 10;

    /// <summary>What the first turn has, some tenths of a second. What one end of the row makes hard is mostly easy from the other: they take turns, each pair with more.</summary>
    private const long FirstTurn = 2_000_000;
    private const int More = 4;

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
        ImmutableArray<PlankRoom> reversed = [.. planks.Reverse()];
        FewestChoice best = new([], null, 0);
        for (long turn = FirstTurn; effort > 0; turn *= More)
        {
            foreach (bool back in new[] { false, true })
            {
                long given = Math.Min(turn, effort);
                if (given <= 0)
                {
                    break;
                }

                effort -= given;
                FewestChoice found = OneTurn(back ? reversed : planks, stock, rules, given, stop);
                if (found.Stuck is not null)
                {
                    // From the other end another plank finds no place: which is the first of all is asked part by part.
                    return back
                        ? best with
                        {
                            Ways = [],
                            Stuck = FirstStuck(planks, stock, rules, effort, stop),
                        }
                        : found;
                }

                best = Better(best, back ? found with { Ways = [.. found.Ways.Reverse()] } : found);
                if (best.IsProved)
                {
                    return best;
                }
            }
        }

        return best;
    }

    /// <summary>Of a row without a way the first plank that finds no place; null where the effort does not tell.</summary>
    private static int? FirstStuck(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        long effort,
        CancellationToken stop
    )
    {
        int has = 0,
            hasNot = planks.Length;
        while (hasNot - has > 1)
        {
            ImmutableArray<PlankRoom> part = planks[..((has + hasNot) / 2)];
            bool? way = null;
            foreach (bool back in new[] { false, true })
            {
                long given = Math.Min(FirstTurn, effort);
                effort -= given;
                FewestChoice found = OneTurn(
                    back ? [.. part.Reverse()] : part,
                    stock,
                    rules,
                    given,
                    stop
                );
                way ??=
                    found.Stuck is not null ? false
                    : found.Ways.IsEmpty ? null
                    : true;
                if (way is not null)
                {
                    break;
                }
            }

            if (way is not { } its)
            {
                return null;
            }

            (has, hasNot) = its ? (part.Length, hasNot) : (has, part.Length);
        }

        return hasNot - 1;
    }

    /// <summary>What both have proved, and the way with fewer joints of those that they found.</summary>
    private static FewestChoice Better(FewestChoice one, FewestChoice other) =>
        new(
            one.Ways.IsEmpty || (!other.Ways.IsEmpty && other.Joints < one.Joints)
                ? other.Ways
                : one.Ways,
            null,
            Math.Max(one.LeastJoints, other.LeastJoints)
        );

    /// <summary>One turn, with so much effort.</summary>
    private static FewestChoice OneTurn(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        long effort,
        CancellationToken stop
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
