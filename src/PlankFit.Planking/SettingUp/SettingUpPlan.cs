using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What the surface gives for setting up: deductions, bevels, the rabbet and the corner at the chine.</summary>
public sealed record SettingUpPlan(ImmutableArray<Finding> Findings);
