using System.Collections.Immutable;

namespace PlankFit.Export.Comparing;

/// <summary>One lay-out among those that are held against each other.</summary>
/// <param name="Number">Its own, whatever else is tried: 0 is the job as it stands.</param>
/// <param name="Name">angle 42, width 120; as it stands; the file of another job.</param>
/// <param name="Changed">The values that it differs from the job by, by key.</param>
/// <param name="Figures">Null where it could not be laid.</param>
/// <param name="Why">Why not, in the words of what was found; empty where it was laid.</param>
public sealed record Layout(
    int Number,
    string Name,
    ImmutableArray<(string Key, string Value)> Changed,
    LaidFigures? Figures,
    ImmutableArray<string> Why
)
{
    /// <summary>Its planks, small; null where it could not be laid.</summary>
    public SmallPicture? Picture { get; init; }

    /// <summary>The value of that key where it was changed; empty where it stands as the job has it.</summary>
    public string Of(string key) => Changed.FirstOrDefault(c => c.Key == key).Value ?? "";
}
