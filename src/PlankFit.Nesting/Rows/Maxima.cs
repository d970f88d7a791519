using System.Numerics;
using System.Runtime.InteropServices;

namespace PlankFit.Nesting;

/// <summary>Greatest values, eight or so at a time.</summary>
internal static class Maxima
{
    /// <summary>into = max(into, from + add), place by place.</summary>
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
}
