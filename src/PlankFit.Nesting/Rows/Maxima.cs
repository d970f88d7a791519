using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PlankFit.Nesting.Rows;

/// <summary>Greatest values, eight or so at a time; compiled well at once, since they are most of the work from the first call on.</summary>
internal static class Maxima
{
    /// <summary>into = max(into, from + add), place by place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Raise(Span<float> into, ReadOnlySpan<float> from, float add)
    {
        from = from[..into.Length];
        Span<Vector<float>> wideInto = MemoryMarshal.Cast<float, Vector<float>>(into);
        ReadOnlySpan<Vector<float>> wideFrom = MemoryMarshal.Cast<float, Vector<float>>(from);
        var wideAdd = new Vector<float>(add);
        for (int i = 0; i < wideInto.Length; i++)
        {
            wideInto[i] = Vector.Max(wideInto[i], wideFrom[i] + wideAdd);
        }

        for (int i = wideInto.Length * Vector<float>.Count; i < into.Length; i++)
        {
            into[i] = Math.Max(into[i], from[i] + add);
        }
    }

    /// <summary>
    /// table[into + i] = max of itself and all table[starts[q] + i] + add[q], for i from 0 to at least a count: places up to the next <see cref="Wide"/> may be raised
    /// as well.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Raise(
        float[] table,
        int into,
        int count,
        ReadOnlySpan<int> starts,
        int shift,
        ReadOnlySpan<float> add
    )
    {
        int wide = Vector<float>.Count,
            at = 0;
        ref float first = ref MemoryMarshal.GetArrayDataReference(table);
        // Four at a time: what is greatest so far stays in registers.
        for (; at + (3 * wide) < count; at += 4 * wide)
        {
            ref float here = ref Unsafe.Add(ref first, into + at);
            Vector<float> a = Vector.LoadUnsafe(ref here),
                b = Vector.LoadUnsafe(ref here, (nuint)wide),
                c = Vector.LoadUnsafe(ref here, (nuint)(2 * wide)),
                d = Vector.LoadUnsafe(ref here, (nuint)(3 * wide));
            for (int q = 0; q < starts.Length; q++)
            {
                ref float from = ref Unsafe.Add(ref first, starts[q] + shift + at);
                var more = new Vector<float>(add[q]);
                a = Vector.Max(a, Vector.LoadUnsafe(ref from) + more);
                b = Vector.Max(b, Vector.LoadUnsafe(ref from, (nuint)wide) + more);
                c = Vector.Max(c, Vector.LoadUnsafe(ref from, (nuint)(2 * wide)) + more);
                d = Vector.Max(d, Vector.LoadUnsafe(ref from, (nuint)(3 * wide)) + more);
            }

            a.StoreUnsafe(ref here);
            b.StoreUnsafe(ref here, (nuint)wide);
            c.StoreUnsafe(ref here, (nuint)(2 * wide));
            d.StoreUnsafe(ref here, (nuint)(3 * wide));
        }

        for (; at < count; at += wide)
        {
            ref float here = ref Unsafe.Add(ref first, into + at);
            var a = Vector.LoadUnsafe(ref here);
            for (int q = 0; q < starts.Length; q++)
            {
                ref float from = ref Unsafe.Add(ref first, starts[q] + shift + at);
                a = Vector.Max(a, Vector.LoadUnsafe(ref from) + new Vector<float>(add[q]));
            }

            a.StoreUnsafe(ref here);
        }
    }

    /// <summary>So many places are raised at once, at the most.</summary>
    public static int Wide => 4 * Vector<float>.Count;
}
