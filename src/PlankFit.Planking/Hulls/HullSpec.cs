using System.Collections.Immutable;

namespace PlankFit.Planking.Hulls;

/// <summary>Which panel of the hull is planked, and which face of the finished stack the table is to.</summary>
/// <param name="KeelSide">Of a panel whose lower edge is the keel.</param>
public sealed record HullSpec(Panel Panel, OffsetsAreTo OffsetsAreTo, KeelSide KeelSide)
{
    /// <summary>A bottom, by the lines that make it.</summary>
    public HullSpec(
        string keel,
        string chine,
        ImmutableArray<string> between,
        OffsetsAreTo offsetsAreTo,
        KeelSide keelSide
    )
        : this(Panel.Bottom(keel, chine, between), offsetsAreTo, keelSide) { }
}

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
