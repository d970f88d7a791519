namespace PlankFit.Planking.Wood;

/// <summary>How well a figure of the species table is known.</summary>
public enum SourceTag
{
    /// <summary>Read in the publication that is named.</summary>
    Read,

    /// <summary>Read in a text that quotes the publication.</summary>
    SecondHand,

    /// <summary>Recalled, not read: to be looked up before anything depends on it.</summary>
    Memory,

    /// <summary>Worked out from other figures of the table.</summary>
    Derived,

    /// <summary>Given in the job.</summary>
    Job,
}

/// <summary>A figure with where it comes from.</summary>
public sealed record Sourced(double Value, SourceTag Tag, string Source);
