using System.Collections.Immutable;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Whole;

/// <summary>A part of a plan with all that it was made from.</summary>
/// <param name="Spec">What the job says of it; another equal by value makes the same part.</param>
/// <param name="On">What it stands on: other parts, which must be the very same.</param>
internal sealed record MadePart(object? Spec, ImmutableArray<object?> On, object Part);

/// <summary>The parts of a plan as they are made: one that would be made from the same as before is taken over.</summary>
/// <param name="before">Of the plan before; empty where there is none.</param>
internal sealed class MadeParts(ImmutableArray<MadePart> before)
{
    private readonly ImmutableArray<MadePart>.Builder all =
        ImmutableArray.CreateBuilder<MadePart>();

    public ImmutableArray<MadePart> All => all.ToImmutable();

    /// <summary>The part as it was before, for what of it may be taken over where the whole may not; null where there was none.</summary>
    public T? Before<T>()
        where T : class => before.Select(m => m.Part).OfType<T>().FirstOrDefault();

    /// <summary>The part, taken over or made. Parts that <paramref name="make"/> needs are made before, and not within it: it is not always called.</summary>
    public T Of<T>(object? spec, object?[] on, Func<T> make)
        where T : class
    {
        MadePart? was = before.FirstOrDefault(m => m.Part is T);
        bool same =
            was is not null
            && was.On.SequenceEqual(on, ReferenceEqualityComparer.Instance)
            && SameValue.Are(was.Spec, spec);
        T part = same ? (T)was!.Part : make();
        all.Add(new(spec, [.. on], part));
        return part;
    }
}
