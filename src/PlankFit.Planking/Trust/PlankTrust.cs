using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Trust;

/// <summary>How sure a plank is, if [trust] is right; all figures 19 times in 20, either way.</summary>
/// <param name="Id">To starboard; port is alike.</param>
public sealed record PlankTrust(PlankId Id)
{
    /// <summary>Of its net length, mm; null for one that is to be fitted in place, since its ends may meet other edges than the table has them meet.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Of its inboard end from its middle, mm.</summary>
    public double? InboardMm { get; init; }

    /// <summary>Of its outboard end from its middle, mm.</summary>
    public double? OutboardMm { get; init; }

    /// <summary>Of the angle of its inboard end, degrees; null where its corners lie on two edges.</summary>
    public double? InboardDegrees { get; init; }

    public double? OutboardDegrees { get; init; }

    public double? BevelDegrees { get; init; }

    /// <summary>To scribe away, so that of planks like it one in twenty comes short, mm.</summary>
    public double? OneInTwentyMm { get; init; }

    /// <summary>The same, so that none of the layer's planks on a side comes short, 19 times in 20.</summary>
    public double? NoneShortMm { get; init; }

    /// <summary>It may be sawn to fit at both ends: its length is as sure as the job asks for.</summary>
    public bool MayFitBothEnds { get; init; }

    /// <summary>Of the net length of one that is fitted in place, by tables drawn by chance, mm; null where it is not there on all of them.</summary>
    public double? InPlaceMm { get; init; }

    /// <summary>Fitted in place: its length goes by no slope.</summary>
    public bool InPlace => LengthMm is null;
}

/// <summary>The planks of one layer, and what scribing allowance they want.</summary>
/// <param name="Number">Of the layer of planks.</param>
/// <param name="Planks">Of starboard, in order.</param>
public sealed record LayerTrust(int Number, string Name, ImmutableArray<PlankTrust> Planks)
{
    /// <summary>So many standard deviations to scribe keep all planks of a side from coming short, 19 times in 20.</summary>
    public double NoneShortSigmas { get; init; }
}

/// <summary>How sure a bottom's planks are.</summary>
public sealed record TrustPlan(
    Sureness Sureness,
    ImmutableArray<LayerTrust> Layers,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>The plank of this name or its twin; null where there is none.</summary>
    public PlankTrust? On(PlankId id)
    {
        PlankId starboard = id with { Side = Side.Starboard };
        return id.Panel != PlankId.Bottom
            ? null
            : Layers.SelectMany(l => l.Planks).FirstOrDefault(p => p.Id == starboard);
    }
}
