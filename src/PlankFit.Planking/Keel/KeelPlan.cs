using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>The keel held against the planking, layer by layer.</summary>
public sealed record KeelPlan(ImmutableArray<Finding> Findings);
