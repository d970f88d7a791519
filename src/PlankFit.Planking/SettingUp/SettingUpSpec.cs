using System.Collections.Immutable;

namespace PlankFit.Planking.SettingUp;

/// <summary>What the job says of the edges of the bottom and of what it is set up on.</summary>
public sealed record SettingUpSpec
{
    /// <summary>Frames and moulds besides those at the stations.</summary>
    public ImmutableArray<FramePosition> Frames { get; init; } = [];

    /// <summary>Ribbands or battens between the frames' edges and the planking's inner face, mm; the transom has none.</summary>
    public double RibbandMm { get; init; }

    /// <summary>Fore-and-aft thickness of frames and moulds, over which a bevel falls. The default is common practice, no source.</summary>
    public double FrameMm { get; init; } = 20;

    /// <summary>The same of the transom; as the frames where the job does not say.</summary>
    public double? TransomMm { get; init; }

    /// <summary>Which face stands on the station line.</summary>
    public FrameFace Face { get; init; } = FrameFace.ByBevel;

    /// <summary>Heights of level lines to mark on the sections, mm.</summary>
    public ImmutableArray<double> WaterlinesMm { get; init; } = [];

    /// <summary>Width of a chine log over which its bevel falls, mm; null where there is none.</summary>
    public double? ChineLogMm { get; init; }

    /// <summary>Half-width of the timber inside the keel on which planks land (hog, keelson, apron); null where the job does not say.</summary>
    public BackboneWidth? Backbone { get; init; }

    /// <summary>The topside above the chine; null where the job does not say, and then there is no corner.</summary>
    public TopsideSpec? Topside { get; init; }

    /// <summary>The least radius over which cloth lies down without lifting, mm. The default is common practice, no source.</summary>
    public double ClothRadiusMm { get; init; } = 8;

    /// <summary>A piece of hard wood that makes the corner; null where there is none.</summary>
    public ChinePieceSpec? ChinePiece { get; init; }
}

/// <summary>A frame of its own position: its name as the job writes it, and its x, mm.</summary>
public sealed record FramePosition(string Name, double XMm);

/// <summary>Which face of a frame stands on its line.</summary>
public enum FrameFace
{
    /// <summary>The one from which the hull narrows, so that wood is planed off and none is wanting: an under bevel.</summary>
    ByBevel,
    Forward,
    After,
}

/// <summary>The half-width of the backbone inside the keel.</summary>
public abstract record BackboneWidth
{
    /// <summary>The same all along.</summary>
    public sealed record Even(double Mm) : BackboneWidth;

    /// <summary>A half-breadth row of the table of offsets.</summary>
    public sealed record Line(string Name) : BackboneWidth;
}

/// <summary>The topside's planking and how it stands at the chine.</summary>
/// <param name="ThicknessMm">Of its whole stack.</param>
public sealed record TopsideSpec(double ThicknessMm, ChineLap Lap, TopsideSlope Slope)
{
    /// <summary>x forward of which the skins are mitred, mm: where the corner opens forward a lap's end would taper to nothing over a great length. Null for nowhere.</summary>
    public double? MitreForwardOfMm { get; init; }

    public ChineLap LapAt(double xMm) => xMm < MitreForwardOfMm ? ChineLap.Mitre : Lap;
}

/// <summary>Which skin runs by the other at the chine.</summary>
public enum ChineLap
{
    BottomLapsTopside,
    TopsideLapsBottom,
    Mitre,
}

/// <summary>How the topside stands at the chine.</summary>
public abstract record TopsideSlope
{
    /// <summary>Straight in the section from the chine to a line of the offsets.</summary>
    public sealed record ToLine(string Name) : TopsideSlope;

    /// <summary>Off plumb in the section, degrees, positive where it spreads going up; straight between the stations named, held beyond them.</summary>
    public sealed record Flare(ImmutableArray<FlareAt> Stations) : TopsideSlope;
}

/// <param name="Station">The station's name; null for the same flare all along.</param>
public sealed record FlareAt(string? Station, double Degrees);

/// <summary>A hard chine piece: planks of the bottom end against it square to themselves, and the topside's lower edge likewise.</summary>
/// <param name="WidthMm">From the corner's edge in along the bottom's outer face.</param>
/// <param name="UpMm">From the edge up along the topside's outer face.</param>
public sealed record ChinePieceSpec(double WidthMm, double UpMm);
