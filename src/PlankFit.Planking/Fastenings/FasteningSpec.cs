namespace PlankFit.Planking;

/// <summary>How planks are held while the glue sets, or for good.</summary>
public sealed record FasteningSpec;
