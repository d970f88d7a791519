using System.Collections.Immutable;

namespace PlankFit.Planking.Hulls;

/// <summary>Which lines of the table make the bottom, and which face of the finished stack the table is to.</summary>
public sealed record HullSpec(
    string Keel,
    string Chine,
    ImmutableArray<string> Between,
    OffsetsAreTo OffsetsAreTo,
    KeelSide KeelSide
);

public enum OffsetsAreTo
{
    Outside,
    Inside,
}

/// <summary>How the keel's side stands: a vertical surface through the keel line, or square to the planking.</summary>
public enum KeelSide
{
    Plumb,
    SquareToPlank,
}
