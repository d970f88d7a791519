using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What drifted, since when, and what no longer fits.</summary>
public sealed record StandingPlan(ImmutableArray<Finding> Findings);
