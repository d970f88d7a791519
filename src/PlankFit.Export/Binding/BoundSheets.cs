namespace PlankFit.Export.Binding;

/// <summary>A section of the bench book: sheets that are used together.</summary>
public sealed record BoundSheets(string Name, IReadOnlyList<Drawing> Pages);
