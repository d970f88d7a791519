using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What the timber makes of every plank: bend, weight, movement.</summary>
public sealed record TimberPlan(ImmutableArray<Finding> Findings);
