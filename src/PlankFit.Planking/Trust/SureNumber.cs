using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Trust;

/// <summary>What a number on a plank's card or sheet says. Lengths in mm, angles in degrees.</summary>
public enum NumberKind
{
    /// <summary>From the plank's middle to its end at the keel, along its own line: out by what the keel's cells make its length out by, and by half of what belongs to neither edge.</summary>
    Inboard,

    /// <summary>From there to its outboard end: out by what the chine's cells make its length out by, and by the other half.</summary>
    Outboard,

    /// <summary>Both together: the net length.</summary>
    Length,

    /// <summary>Between its own line and the inboard end, corner to corner.</summary>
    InboardAngle,

    /// <summary>The same at the outboard end.</summary>
    OutboardAngle,

    /// <summary>Of the end at the keel's side, at its middle.</summary>
    Bevel,

    /// <summary>The mark of its forward seam along the keel, from the station that the layer is taped from.</summary>
    ForwardKeelMark,

    /// <summary>The mark of the same seam along the chine.</summary>
    ForwardChineMark,

    /// <summary>The forward seam, end to end.</summary>
    ForwardSeam,

    AfterKeelMark,

    AfterChineMark,

    AfterSeam,

    /// <summary>From the forward seam's inboard end to the after seam's outboard one.</summary>
    Diagonal,

    /// <summary>Of a keel layer at a station, at its outer face.</summary>
    KeelHalfWidth,
}

/// <summary>One of the numbers that a table's errors move.</summary>
/// <param name="Plank">To starboard; its twin's is the same. Null for the keel.</param>
public sealed record SureNumber(PlankId? Plank, NumberKind Kind)
{
    /// <summary>Of a keel layer: its name, and the station.</summary>
    public (string Layer, string Station)? Keel { get; init; }
}
