using System.Collections.Immutable;

namespace PlankFit.Reading.AsBuilt;

/// <summary>A row of measured.csv that was read elsewhere, with a mark by which it is known again in the file.</summary>
/// <param name="Mark">Twelve digits of base sixteen, each reading's own.</param>
/// <param name="Cells">What, where, side, value.</param>
public sealed record MeasuredEntry(string Mark, ImmutableArray<string> Cells);
