using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace PlankFit.Planking.Joints;

/// <summary>The answer of a search over the ways of all planks.</summary>
/// <param name="Ways">The way chosen for each plank; empty where there is none.</param>
/// <param name="Stuck">The first plank that no way of those before it leaves a place; null where the search succeeded.</param>
/// <param name="Complete">Nothing was left out: an answer is the best there is, and none means that there is none.</param>
public sealed record SchemeChoice(ImmutableArray<JointScheme> Ways, int? Stuck, bool Complete)
{
    public bool Found => Stuck is null;

    public int Pieces => Ways.Sum(w => w.Pieces);

    public double WasteMm => Ways.Sum(w => w.WasteMm);
}

/// <summary>
/// Chooses one way for each plank of a row so that the rules hold between all planks that they reach, with the fewest pieces and then the least waste: dynamic
/// programming from plank to plank, a state being the ways of the last planks that still matter. Where only the name of the backing still matters of a plank,
/// ways on the same backing are one state.
/// </summary>
public static class SchemeSearch
{
    /// <summary>A digit of a state's key holds so many ways of a plank.</summary>
    public const int MostWays = 254;

    /// <summary>And a key so many planks.</summary>
    public const int MostReach = 8;

    /// <summary>More states than this are cut down to the best: a state is a handful of bytes, and each costs its time with every way of the next plank.</summary>
    private const int MostStates = 3000;

    /// <param name="ways">For each plank in order; at most <see cref="MostWays"/> each.</param>
    /// <exception cref="ArgumentException">A plank has too many ways, or a rule reaches too far.</exception>
    public static SchemeChoice Least(
        ImmutableArray<ImmutableArray<JointScheme>> ways,
        ImmutableArray<JointRule> rules,
        CancellationToken stop = default
    )
    {
        int reach = rules.Select(r => r.Reach).DefaultIfEmpty(0).Max();
        if (reach > MostReach || ways.Any(w => w.Length > MostWays))
        {
            throw new ArgumentException(
                $"a search takes {MostWays} ways a plank and rules that reach {MostReach} planks"
            );
        }

        int exact = rules
            .Where(r => r.What != JointRuleKind.SameBacking || r.DistanceMm is not null)
            .Select(r => r.Reach)
            .DefaultIfEmpty(0)
            .Max();
        bool complete = true;
        var stages = new List<List<State>> { new() { new(-1, 0, 0, 0) } };
        ImmutableArray<ImmutableArray<ulong>> alike = [.. ways.Select(Alike)];
        for (int i = 0; i < ways.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            List<State> next = Next(ways, alike, rules, stages, i, reach, exact);
            if (next.Count == 0)
            {
                return new([], i, complete);
            }

            if (next.Count > MostStates)
            {
                next.Sort(
                    (a, b) =>
                        a.Pieces != b.Pieces ? a.Pieces - b.Pieces : a.WasteMm.CompareTo(b.WasteMm)
                );
                next.RemoveRange(MostStates, next.Count - MostStates);
                complete = false;
            }

            stages.Add(next);
        }

        return new(Trace(ways, stages), null, complete);
    }

    private static List<State> Next(
        ImmutableArray<ImmutableArray<JointScheme>> ways,
        ImmutableArray<ImmutableArray<ulong>> alike,
        ImmutableArray<JointRule> rules,
        List<List<State>> stages,
        int i,
        int reach,
        int exact
    )
    {
        ImmutableArray<JointScheme> here = ways[i];
        int back = Math.Min(reach, i);
        // agree[d - 1][a, w]: way w of this plank stands with way a of the plank d before it.
        bool[][,] agree = new bool[back][,];
        for (int d = 1; d <= back; d++)
        {
            agree[d - 1] = Table(ways[i - d], here, rules, d);
        }

        var found = new Dictionary<ulong, int>();
        var next = new List<State>();
        List<State> last = stages[i];
        Span<int> before = stackalloc int[MostReach];
        Span<ulong> digits = stackalloc ulong[MostReach];
        for (int at = 0; at < last.Count; at++)
        {
            State state = last[at];
            int stage = i,
                node = at;
            for (int d = 1; d <= back; d++)
            {
                State s = stages[stage][node];
                before[d - 1] = s.Way;
                (stage, node) = (stage - 1, s.Before);
                digits[d - 1] = d < exact ? (ulong)s.Way + 1 : alike[i - d][s.Way];
            }

            ulong key = 0;
            for (int d = Math.Min(back, reach - 1); d >= 1; d--)
            {
                key = (key << 8) | digits[d - 1];
            }

            for (int w = 0; w < here.Length; w++)
            {
                bool stands = true;
                for (int d = 0; d < back && stands; d++)
                {
                    stands = agree[d][before[d], w];
                }

                if (!stands)
                {
                    continue;
                }

                ulong own =
                    reach == 0 ? 0
                    : exact > 0 ? (ulong)w + 1
                    : alike[i][w];
                ulong whole = reach > 1 ? (key << 8) | own : own;
                var candidate = new State(
                    at,
                    w,
                    state.Pieces + here[w].Pieces,
                    state.WasteMm + here[w].WasteMm
                );
                ref int slot = ref CollectionsMarshal.GetValueRefOrAddDefault(
                    found,
                    whole,
                    out bool there
                );
                if (!there)
                {
                    slot = next.Count;
                    next.Add(candidate);
                }
                else if (candidate.IsBetterThan(next[slot]))
                {
                    next[slot] = candidate;
                }
            }
        }

        return next;
    }

    private static bool[,] Table(
        ImmutableArray<JointScheme> a,
        ImmutableArray<JointScheme> b,
        ImmutableArray<JointRule> rules,
        int apart
    )
    {
        bool[,] table = new bool[a.Length, b.Length];
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < b.Length; j++)
            {
                table[i, j] = JointRuleCheck.Allows(rules, a[i], b[j], apart);
            }
        }

        return table;
    }

    /// <summary>For each way of a plank the first whose joints are on the same backings, counted from 1.</summary>
    private static ImmutableArray<ulong> Alike(ImmutableArray<JointScheme> ways) =>
        [
            .. ways.Select(way =>
                (ulong)ways.TakeWhile(first => !SameBackings(first, way)).Count() + 1
            ),
        ];

    private static bool SameBackings(JointScheme a, JointScheme b)
    {
        if (a.Joints.Length != b.Joints.Length)
        {
            return false;
        }

        for (int k = 0; k < a.Joints.Length; k++)
        {
            JointPlace p = a.Joints[k],
                q = b.Joints[k];
            if (p.Named != q.Named || (p.Named && p.Backing != q.Backing))
            {
                return false;
            }
        }

        return true;
    }

    private static ImmutableArray<JointScheme> Trace(
        ImmutableArray<ImmutableArray<JointScheme>> ways,
        List<List<State>> stages
    )
    {
        List<State> last = stages[^1];
        int at = 0;
        for (int k = 1; k < last.Count; k++)
        {
            at = last[k].IsBetterThan(last[at]) ? k : at;
        }

        var chosen = new JointScheme[ways.Length];
        for (int i = ways.Length; i > 0; i--)
        {
            State state = stages[i][at];
            chosen[i - 1] = ways[i - 1][state.Way];
            at = state.Before;
        }

        return [.. chosen];
    }

    /// <summary>The best way to come to a state: which state before, and which way of this plank.</summary>
    private readonly record struct State(int Before, int Way, int Pieces, double WasteMm)
    {
        /// <summary>Waste is compared to a millionth, so that the order of adding does not choose.</summary>
        private const double NoiseMm = 1e-6;

        public bool IsBetterThan(State other) =>
            Pieces != other.Pieces ? Pieces < other.Pieces : WasteMm < other.WasteMm - NoiseMm;
    }
}
