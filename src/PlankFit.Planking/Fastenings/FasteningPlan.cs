using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>Every fastening of every plank, and what is to be bought.</summary>
public sealed record FasteningPlan(ImmutableArray<Finding> Findings);
