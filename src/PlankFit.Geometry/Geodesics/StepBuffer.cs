using System.Buffers;

namespace PlankFit.Geometry.Geodesics;

/// <summary>
/// Steps as they are taken, in a borrowed array: a step is 376 bytes, and a row of planks traces hundreds of lines, whose half-filled lists were most of what the
/// collector had to do.
/// </summary>
internal sealed class StepBuffer : IDisposable
{
    private GeodesicStep[] steps = ArrayPool<GeodesicStep>.Shared.Rent(32);

    public int Count { get; private set; }

    public ref readonly GeodesicStep this[Index i] => ref steps[i.GetOffset(Count)];

    public void Add(in GeodesicStep step)
    {
        if (Count == steps.Length)
        {
            GeodesicStep[] more = ArrayPool<GeodesicStep>.Shared.Rent(2 * Count);
            steps.CopyTo(more, 0);
            ArrayPool<GeodesicStep>.Shared.Return(steps);
            steps = more;
        }

        steps[Count++] = step;
    }

    public void Reverse() => Array.Reverse(steps, 0, Count);

    public GeodesicStep[] ToArray() => steps.AsSpan(0, Count).ToArray();

    public void Dispose() => ArrayPool<GeodesicStep>.Shared.Return(steps);
}
