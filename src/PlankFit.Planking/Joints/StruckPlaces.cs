using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>The places that the rules strike out of the planks before those that have their joints. Joints are taken from the last plank to the first, and given back in turn.</summary>
internal sealed class StruckPlaces
{
    private readonly PiecePaths[] planks;
    private readonly ImmutableArray<JointRule> rules;

    /// <summary>By plank, place and how many planks before it: what a joint there strikes out.</summary>
    private readonly ulong[]?[][] byPlace;
    private readonly ulong[][] struck;
    private readonly Stack<ulong[]> taken = new();

    public StruckPlaces(PiecePaths[] planks, ImmutableArray<JointRule> rules)
    {
        (this.planks, this.rules) = (planks, rules);
        Reach = rules.Select(r => r.Reach).DefaultIfEmpty(0).Max();
        byPlace = [.. planks.Select(p => new ulong[]?[p.Room.Places.Length * Reach])];
        struck = [.. planks.Select(p => new ulong[p.Words])];
    }

    /// <summary>How many planks away a joint still matters.</summary>
    public int Reach { get; }

    public ReadOnlySpan<ulong> Of(int plank) => struck[plank];

    public void Take(int plank, int place)
    {
        for (int back = 1; back <= Math.Min(Reach, plank); back++)
        {
            ulong[] set = struck[plank - back];
            taken.Push([.. set]);
            PlaceSet.Add(set, By(plank, place, back));
        }
    }

    /// <summary>Gives back the joint last taken.</summary>
    public void GiveBack(int plank)
    {
        for (int back = Math.Min(Reach, plank); back >= 1; back--)
        {
            taken.Pop().CopyTo(struck[plank - back], 0);
        }
    }

    private ulong[] By(int plank, int place, int back)
    {
        ref ulong[]? set = ref byPlace[plank][(place * Reach) + back - 1];
        if (set is not null)
        {
            return set;
        }

        ImmutableArray<JointPlace> places = planks[plank - back].Room.Places;
        set = PlaceSet.Empty(places.Length);
        JointPlace here = planks[plank].Room.Places[place];
        for (int p = 0; p < places.Length; p++)
        {
            if (!JointRuleCheck.Allows(rules, places[p], here, back))
            {
                PlaceSet.Add(set, p);
            }
        }

        return set;
    }
}
