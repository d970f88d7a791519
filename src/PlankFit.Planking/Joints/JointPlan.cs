using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>The pieces of all planks longer than the stock.</summary>
public sealed record JointPlan(ImmutableArray<Finding> Findings);
