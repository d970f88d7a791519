using System.Numerics;

namespace PlankFit.Planking.Joints;

/// <summary>Sets of the places of one plank, a bit each.</summary>
internal static class PlaceSet
{
    private const int Bits = 64;

    public static ulong[] Empty(int places) => new ulong[Math.Max(1, (places + Bits - 1) / Bits)];

    public static void Add(ulong[] set, int place) => set[place / Bits] |= 1UL << (place % Bits);

    public static void Add(Span<ulong> set, ReadOnlySpan<ulong> more)
    {
        for (int i = 0; i < set.Length; i++)
        {
            set[i] |= more[i];
        }
    }

    public static bool Has(ReadOnlySpan<ulong> set, int place) =>
        (set[place / Bits] >> (place % Bits) & 1) != 0;

    public static bool Meet(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b)
    {
        for (int i = 0; i < a.Length; i++)
        {
            if ((a[i] & b[i]) != 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The first of a set from a place on; -1 where there is none.</summary>
    public static int Next(ReadOnlySpan<ulong> set, int from)
    {
        for (int i = from / Bits; i < set.Length; i++)
        {
            ulong word = i == from / Bits ? set[i] & (~0UL << (from % Bits)) : set[i];
            if (word != 0)
            {
                return (i * Bits) + BitOperations.TrailingZeroCount(word);
            }
        }

        return -1;
    }
}
