using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Planks;

/// <summary>
/// What a tape should read on the bare bottom for one plank, before it is sawn. All distances are on the face that the layer is laid on (its inner
/// face), because that is where the tape lies: half a thickness inside the layer's mid-thickness surface, which on a bottom of 3 m radius is 2.5 mm
/// in a plank of 1.65 m.
/// </summary>
/// <param name="Forward">The forward seam; null where the plank has none.</param>
/// <param name="After">The after seam; null where the plank has none.</param>
/// <param name="DiagonalMm">From the inboard end of the forward seam to the outboard end of the after seam, tape held down on the surface; null where one of them is missing or no straight run of tape joins them on the face.</param>
public sealed record SeamCheck(
    PlankId PlankId,
    TapedSeam? Forward,
    TapedSeam? After,
    double? DiagonalMm
)
{
    public Side Side => PlankId.Side;
}

/// <summary>One seam as taped: where it starts inboard, where it ends outboard, and its length along the surface between the two.</summary>
public sealed record TapedSeam(TapedEnd Inboard, TapedEnd Outboard, double LengthMm);

/// <summary>Where a seam crosses an edge of the bottom.</summary>
/// <param name="At">The edge crossed.</param>
/// <param name="From">
/// What the tape is hooked to: along keel and chine the name of a station (one and the same for a whole layer, the one nearest the master plank, so
/// that errors do not add up); along stem and transom "keel", the corner where that edge meets the keel.
/// </param>
/// <param name="AlongMm">Distance along the edge from there; along keel and chine positive aft and negative forward of the station.</param>
public sealed record TapedEnd(PanelEdge At, string From, double AlongMm);
