using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>
/// A plank as a graph: from place to place by pieces that the stock allows, from its inboard end to its outboard one. Answers how few joints are enough where
/// some places are struck out.
/// </summary>
internal sealed class PiecePaths
{
    private readonly ulong[] first;
    private readonly ulong[] last;
    private readonly ulong[][] next;
    private readonly ulong[][] before;
    private readonly int[][] orders;

    public PiecePaths(PlankRoom room, JointStock stock)
    {
        Room = room;
        ImmutableArray<JointPlace> places = room.Places;
        int n = places.Length;
        Words = PlaceSet.Empty(n).Length;
        (first, last) = (PlaceSet.Empty(n), PlaceSet.Empty(n));
        next = [.. places.Select(_ => PlaceSet.Empty(n))];
        before = [.. places.Select(_ => PlaceSet.Empty(n))];
        for (int p = 0; p < n; p++)
        {
            if (PlankSchemes.Fits(places[p].FarMm - room.FromMm, stock))
            {
                PlaceSet.Add(first, p);
            }

            if (PlankSchemes.Fits(room.ToMm - places[p].NearMm, stock))
            {
                PlaceSet.Add(last, p);
            }

            for (int q = p + 1; q < n; q++)
            {
                if (PlankSchemes.Fits(places[q].FarMm - places[p].NearMm, stock))
                {
                    PlaceSet.Add(next[p], q);
                    PlaceSet.Add(before[q], p);
                }
            }
        }

        Least = room.IsDivided ? Joints(PlaceSet.Empty(n)) : 0;
        orders =
        [
            .. Enumerable
                .Range(1, (Least ?? 0) + 1)
                .Select(k =>
                    Enumerable
                        .Range(0, n)
                        .OrderBy(p =>
                            Math.Abs(
                                places[p].AtMm
                                    - room.FromMm
                                    - ((room.ToMm - room.FromMm) * k / ((Least ?? 0) + 1))
                            )
                        )
                        .ToArray()
                ),
        ];
    }

    public PlankRoom Room { get; }

    public int Words { get; }

    /// <summary>What a question costs, in units of that of a small plank.</summary>
    public int Cost => 1 + (Room.Places.Length * Words / 64);

    /// <summary>The fewest joints, nothing struck out; null where the places leave no way.</summary>
    public int? Least { get; }

    /// <summary>The places at which a piece from a place may end; from the inboard end for -1.</summary>
    public ReadOnlySpan<ulong> From(int place) => place < 0 ? first : next[place];

    /// <summary>Whether a piece from a place may reach the outboard end.</summary>
    public bool Ends(int place) => PlaceSet.Has(last, place);

    /// <summary>All places, those first that would leave the pieces even for a joint with so many before it.</summary>
    public int[] NearestFirst(int joints) => orders[Math.Min(joints, orders.Length - 1)];

    /// <summary>The fewest joints with some places struck out; null where there is no way.</summary>
    public int? Joints(ReadOnlySpan<ulong> struck)
    {
        if (!Room.IsDivided)
        {
            return 0;
        }

        Span<ulong> open = stackalloc ulong[Words],
            here = stackalloc ulong[Words],
            there = stackalloc ulong[Words];
        for (int i = 0; i < Words; i++)
        {
            open[i] = ~struck[i];
            here[i] = first[i] & open[i];
        }

        for (int joints = 1; joints <= PlankSchemes.MostJoints; joints++)
        {
            if (PlaceSet.Meet(here, last))
            {
                return joints;
            }

            if (!Step(next, here, open, there))
            {
                return null;
            }

            there.CopyTo(here);
        }

        return null;
    }

    /// <summary>For each place that is not struck out how few joints there are from it to the outboard end, itself among them; more than <paramref name="most"/> for none.</summary>
    public void JointsFrom(ReadOnlySpan<ulong> struck, int most, Span<int> joints)
    {
        Span<ulong> open = stackalloc ulong[Words],
            here = stackalloc ulong[Words],
            there = stackalloc ulong[Words];
        joints.Fill(most + 1);
        for (int i = 0; i < Words; i++)
        {
            open[i] = ~struck[i];
            here[i] = last[i] & open[i];
        }

        for (int k = 1; k <= most; k++)
        {
            for (int p = PlaceSet.Next(here, 0); p >= 0; p = PlaceSet.Next(here, p + 1))
            {
                joints[p] = k;
            }

            if (!Step(before, here, open, there))
            {
                return;
            }

            there.CopyTo(here);
        }
    }

    /// <summary>Adds to a key which places some way with no more than so many joints uses, those struck out left aside.</summary>
    public void AddUsed(ReadOnlySpan<ulong> struck, int most, Span<ulong> used)
    {
        Span<int> left = stackalloc int[Room.Places.Length];
        JointsFrom(struck, most, left);
        Span<ulong> here = stackalloc ulong[Words],
            there = stackalloc ulong[Words],
            open = stackalloc ulong[Words];
        for (int i = 0; i < Words; i++)
        {
            open[i] = ~struck[i];
            here[i] = first[i] & open[i];
        }

        for (int k = 1; k <= most; k++)
        {
            for (int p = PlaceSet.Next(here, 0); p >= 0; p = PlaceSet.Next(here, p + 1))
            {
                if (left[p] + k - 1 <= most)
                {
                    used[p / 64] |= 1UL << (p % 64);
                }
                else
                {
                    open[p / 64] &= ~(1UL << (p % 64));
                    here[p / 64] &= ~(1UL << (p % 64));
                }
            }

            if (!Step(next, here, open, there))
            {
                return;
            }

            there.CopyTo(here);
        }
    }

    /// <summary>One piece further from any of a set, to places not seen yet, which are then seen; false where there are none.</summary>
    private static bool Step(
        ulong[][] by,
        ReadOnlySpan<ulong> here,
        Span<ulong> open,
        Span<ulong> there
    )
    {
        there.Clear();
        for (int i = 0; i < open.Length; i++)
        {
            open[i] &= ~here[i];
        }

        for (int p = PlaceSet.Next(here, 0); p >= 0; p = PlaceSet.Next(here, p + 1))
        {
            PlaceSet.Add(there, by[p]);
        }

        bool any = false;
        for (int i = 0; i < open.Length; i++)
        {
            there[i] &= open[i];
            any |= there[i] != 0;
        }

        return any;
    }
}
