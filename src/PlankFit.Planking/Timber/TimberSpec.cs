namespace PlankFit.Planking;

/// <summary>What the planks are made of, and how dry.</summary>
public sealed record TimberSpec;
