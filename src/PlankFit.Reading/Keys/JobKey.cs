using System.Collections.Immutable;

namespace PlankFit.Reading.Keys;

/// <summary>
/// A key of the job file, described once: what the reader takes, what messages quote, what `plankfit help` tells. It stands in a <see cref="JobTable"/>,
/// or in several that have it alike.
/// </summary>
/// <param name="Example">A value as a job writes it after the equals sign.</param>
/// <param name="What">In a sentence, in the builder's words.</param>
public abstract record JobKey(string Name, string Example, string What)
{
    /// <summary>What sort of value it takes, in words.</summary>
    public abstract string Kind { get; }

    /// <summary>The table's head or the whole line as a job has it.</summary>
    public virtual string Line => $"{Name} = {Example}";

    /// <summary>The job must have it, wherever its table is given.</summary>
    public bool Required { get; init; }

    /// <summary>What holds where it is left out and no single value says it, in words.</summary>
    public string? Otherwise { get; init; }

    /// <summary>Where the default and the limits come from: a published source, or that there is none; null where there are neither.</summary>
    public string? Source { get; init; }

    /// <summary>What holds where it is left out, in words; null where that is nothing at all.</summary>
    public virtual string? Default => Otherwise;

    /// <summary>What a value is held to, in words; null where any will do.</summary>
    public virtual string? LimitWords => null;

    /// <summary>What is taken for a slip of the unit, and asked about, in words; null where nothing is.</summary>
    public virtual string? LikelyWords => null;

    /// <summary>The words that it takes; empty where it is not one of a few.</summary>
    public virtual ImmutableArray<string> Words => [];
}

/// <summary>What most sources are.</summary>
internal static class KeySources
{
    public const string Proposal = "a proposal, no source";
    public const string Practice = "common practice, no source";
    public const string Plausible = "our own bounds of what is plausible, wide, no source";
}
