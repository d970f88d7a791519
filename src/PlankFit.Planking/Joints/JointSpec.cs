namespace PlankFit.Planking;

/// <summary>How planks longer than the stock are pieced.</summary>
public sealed record JointSpec;
