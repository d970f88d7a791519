using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Framing;

/// <summary>
/// What lies behind as lines to snap on the face that a layer of planks is laid on (the cloth, or the skin below), where nothing of it shows any more.
/// </summary>
/// <param name="Layer">Number of the plank layer to be laid.</param>
/// <param name="FaceMm">The face's place, from the table's surface along the outward normal, mm.</param>
/// <param name="Sides">The sides of the boat for which it holds.</param>
/// <param name="Girths">Keel's side to chine at each station where the face has both, mm.</param>
public sealed record SnapFace(
    int Layer,
    double FaceMm,
    ImmutableArray<Side> Sides,
    ImmutableArray<SnapGirth> Girths,
    ImmutableArray<SnapMark> Marks,
    ImmutableArray<SnapAcross> Across
);

public sealed record SnapGirth(string Station, double XMm, double GirthMm);

/// <summary>One place of a centre line that runs along the hull, by tape in the section: from the keel's side and from the chine, along the face, mm.</summary>
/// <param name="At">The section: a station, or so far from one where the thing begins or ends (level, mm).</param>
/// <param name="Is">What is there.</param>
public sealed record SnapMark(
    FramingSpec Of,
    FromStation At,
    double XMm,
    double FromKeelMm,
    double FromChineMm,
    SnapPlace Is
);

public enum SnapPlace
{
    /// <summary>It runs through.</summary>
    Through,

    /// <summary>It begins here, or the half of it that lies ahead ends here: nothing of it is further forward.</summary>
    Begins,

    /// <summary>It ends here.</summary>
    Ends,

    /// <summary>The middle of a place with four sides.</summary>
    Middle,
}

/// <summary>
/// Where the centre line of a thing across the hull meets keel and chine: from the nearest station's own mark, along that edge of the face, mm; null where it
/// does not reach there.
/// </summary>
/// <param name="OutToMm">Where it ends short of the chine, that distance from the keel's side; null where it runs to the chine.</param>
public sealed record SnapAcross(
    FramingSpec Of,
    double XMm,
    FromStation? AtKeel,
    FromStation? AtChine,
    double? OutFromMm,
    double? OutToMm
);
