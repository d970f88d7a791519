namespace PlankFit.Planking.Laying;

/// <summary>How far the work has come: what is being done, and the part of the whole that is done, 0 to 1.</summary>
public readonly record struct PlanProgress(string Doing, double Part);
