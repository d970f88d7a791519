using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>
/// A row of planks and what is known of its first so many: how many joints they need beyond the fewest that each could have by itself. The last of a part is
/// given its joints first, then those before it, each with the places struck out that the rules forbid it.
/// </summary>
internal sealed class JointRow
{
    /// <summary>So many more joints are asked for one by one before it is asked whether any number would do.</summary>
    private const int OneByOne = 2;
    private const int MostFailures = 300_000;

    private readonly PiecePaths[] planks;
    private readonly CancellationToken stop;
    private readonly StruckPlaces struck;
    private readonly int[] extra;
    private readonly Dictionary<RowState, int> failed = [];

    /// <summary>For each plank the joints last found, which are tried first; and those taken just now.</summary>
    private readonly int[][] found;
    private readonly List<int>[] taken;
    private readonly int[][] onward;
    private int foundFor;
    private long left;
    private bool cut;

    public JointRow(PiecePaths[] planks, ImmutableArray<JointRule> rules, CancellationToken stop)
    {
        (this.planks, this.stop) = (planks, stop);
        struck = new(planks, rules);
        extra = new int[planks.Length + 1];
        found = [.. planks.Select(_ => Array.Empty<int>())];
        taken = [.. planks.Select(_ => new List<int>())];
        onward = [.. planks.Select(p => new int[p.Room.Places.Length])];
    }

    /// <summary>The first planks need at least so many joints more than each by itself.</summary>
    public int LeastExtra(int part) => extra[part];

    /// <summary>The joints found for each of the first planks; null where none were.</summary>
    public ImmutableArray<ImmutableArray<JointPlace>>? Found(int part) =>
        foundFor < part
            ? null
            :
            [
                .. found
                    .Take(part)
                    .Select((f, i) => f.Select(p => planks[i].Room.Places[p]).ToImmutableArray()),
            ];

    /// <summary>Works out what the first planks need, given that it is known of all but the last of them.</summary>
    /// <param name="findAny">Where the effort runs out over a proof, a way is looked for all the same.</param>
    /// <param name="effort">What there is of it; what is left.</param>
    /// <returns>False where it is proved that there is no way for them.</returns>
    public bool Grow(int part, bool findAny, ref long effort)
    {
        int low = extra[part] = extra[part - 1],
            most = planks.Take(part).Sum(p => PlankSchemes.MostJoints - (p.Least ?? 0)),
            high = most;
        bool asked = false,
            possible = true;
        for (int spare = low; spare <= high; spare++)
        {
            bool askAny = spare == low + OneByOne + 1 && !asked;
            int? any = Try(part, askAny ? most : spare, ref effort);
            if (any is not null && !askAny)
            {
                break;
            }

            if (askAny)
            {
                asked = true;
                high = any - 1 ?? high;
            }

            if (any is null && !cut)
            {
                extra[part] = askAny ? most + 1 : spare + 1;
                possible = extra[part] <= most;
            }

            if (!possible || (cut && !findAny) || effort < 2)
            {
                break;
            }

            spare -= askAny ? 1 : 0;
        }

        return possible;
    }

    /// <summary>Looks for ways with no more than so many joints beyond the least; gives how many there are, null where none are found.</summary>
    private int? Try(int part, int spare, ref long effort)
    {
        // Half of what is left, so that there is some for the next.
        long given = left = effort / 2;
        cut = false;
        bool there = Place(part - 1, spare);
        effort -= given - left;
        if (!there)
        {
            return null;
        }

        foundFor = part;
        for (int i = 0; i < part; i++)
        {
            found[i] = [.. taken[i]];
        }

        return Enumerable.Range(0, part).Sum(i => found[i].Length - (planks[i].Least ?? 0));
    }

    /// <summary>Gives a plank, and those before it, their joints.</summary>
    private bool Place(int plank, int spare)
    {
        if (plank < 0)
        {
            return true;
        }

        stop.ThrowIfCancellationRequested();
        RowState state = StateAt(plank, spare);
        if (failed.TryGetValue(state, out int tried) && tried >= spare)
        {
            return false;
        }

        bool wasCut = cut;
        cut = false;
        PiecePaths paths = planks[plank];
        taken[plank].Clear();
        paths.JointsFrom(struck.Of(plank), Most(plank, spare), onward[plank]);
        if (paths.Room.IsDivided ? Divide(plank, -1, -1, spare) : Place(plank - 1, spare))
        {
            return true;
        }

        if (!cut && failed.Count < MostFailures)
        {
            failed[state] = spare;
        }

        cut |= wasCut;
        return false;
    }

    /// <summary>Takes the next joint of a plank from a place on, or goes on to the plank before where its end is reached: a joint more would not be needed.</summary>
    private bool Divide(int plank, int before, int last, int spare)
    {
        PiecePaths paths = planks[plank];
        List<int> joints = taken[plank];
        int least = paths.Least ?? 0,
            most = Most(plank, spare - extra[plank]);
        if (last >= 0 && paths.Ends(last))
        {
            return Place(plank - 1, spare - (joints.Count - least));
        }

        int again = joints.Count < found[plank].Length ? found[plank][joints.Count] : -1;
        int[] order = paths.NearestFirst(joints.Count);
        for (int i = again < 0 ? 0 : -1; i < order.Length; i++)
        {
            int place = i < 0 ? again : order[i],
                all = joints.Count + onward[plank][place];
            if (
                (i >= 0 && place == again)
                || all > most
                || !PlaceSet.Has(paths.From(last), place)
                // Without the last joint a piece would reach as far.
                || (last >= 0 && PlaceSet.Has(paths.From(before), place))
            )
            {
                continue;
            }

            if (left <= 0)
            {
                cut = true;
                return false;
            }

            struck.Take(plank, place);
            joints.Add(place);
            bool stands =
                CanBe(plank - 1, spare - (all - least)) && Divide(plank, last, place, spare);
            struck.GiveBack(plank);
            if (stands)
            {
                return true;
            }

            joints.RemoveAt(joints.Count - 1);
        }

        return false;
    }

    /// <summary>Whether a plank and those before it may have ways with so many joints beyond the least, by what is struck out of those within reach.</summary>
    private bool CanBe(int plank, int spare)
    {
        int needed = 0;
        for (int back = 0; back < struck.Reach && plank - back >= 0; back++)
        {
            PiecePaths paths = planks[plank - back];
            left -= paths.Cost;
            if (paths.Joints(struck.Of(plank - back)) is not { } joints)
            {
                return false;
            }

            needed += joints - (paths.Least ?? 0);
        }

        return spare
            >= Math.Max(extra[plank + 1], needed + extra[Math.Max(0, plank + 1 - struck.Reach)]);
    }

    private RowState StateAt(int plank, int spare)
    {
        int from = Math.Max(0, plank - struck.Reach + 1),
            at = 1;
        ulong[] words = new ulong[1 + planks[from..(plank + 1)].Sum(p => p.Words)];
        words[0] = (ulong)plank;
        for (int i = from; i <= plank; i++)
        {
            left -= 2 * planks[i].Cost;
            int size = planks[i].Words;
            planks[i].AddUsed(struck.Of(i), Most(i, spare), words.AsSpan(at, size));
            at += size;
        }

        return new(words);
    }

    /// <summary>The most joints of a plank with so many to spare.</summary>
    private int Most(int plank, int spare) =>
        Math.Min(PlankSchemes.MostJoints, (planks[plank].Least ?? 0) + spare);
}
