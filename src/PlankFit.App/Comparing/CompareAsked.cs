using System.Collections.Immutable;

namespace PlankFit.App.Comparing;

/// <summary>What is to be tried, as somebody wrote it; what is left out stays as the job has it.</summary>
public sealed record CompareAsked
{
    /// <summary>Values of the angle at the keel: 40..50, or 40,45; likewise those below.</summary>
    public string? Angle { get; init; }

    public string? Width { get; init; }

    public string? Master { get; init; }

    public string? Heads { get; init; }

    /// <summary>The layers that are changed, by name or by the number that their planks have; all layers of planks of the bottom where none is named.</summary>
    public ImmutableArray<string> Layers { get; init; } = [];

    /// <summary>What lay-outs are held against each other by: planks,waste; null for all that there is.</summary>
    public string? By { get; init; }

    /// <summary>What stands along the chart and up it: planks,waste.</summary>
    public string? Chart { get; init; }

    /// <summary>Rounds of the search for a plan of cutting, of each lay-out; null where none is wanted.</summary>
    public int? BoardRounds { get; init; }

    /// <summary>What stands before the name of each of these where its value is told of: two hyphens on the command line.</summary>
    public string Mark { get; init; } = "--";

    /// <summary>Other jobs, which are held against this one as they stand.</summary>
    public ImmutableArray<string> Others { get; init; } = [];
}
