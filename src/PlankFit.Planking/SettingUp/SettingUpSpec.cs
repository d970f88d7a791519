using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What the job says of the frames, of the corner at the chine and of what lies between skin and frame; null in a job that asks for no setting-up.</summary>
/// <param name="FrameThicknessMm">Fore and aft, of frames and moulds.</param>
/// <param name="Face">Which face of a frame stands on its station's line.</param>
/// <param name="RibbandMm">What lies between the planking's inner face and the frame: ribbands, battens; nought for none.</param>
/// <param name="CornerRadiusMm">What the cloth is taken round at the chine. Default 8 mm: common practice, no source.</param>
public sealed record SettingUpSpec(
    double FrameThicknessMm,
    FrameFace Face,
    double RibbandMm,
    double CornerRadiusMm
)
{
    /// <summary>Frames, besides those at the stations, x in mm.</summary>
    public ImmutableArray<double> FramesAtMm { get; init; } = [];

    /// <summary>The topside; null where the job does not say, and the corner is not worked out.</summary>
    public TopsideSpec? Topside { get; init; }

    /// <summary>Width of a hard chine piece on the corner; null for none.</summary>
    public double? ChinePieceMm { get; init; }
}

/// <summary>Which face of a frame stands on its line.</summary>
public enum FrameFace
{
    Forward,
    After,
}

/// <summary>The topside at the chine.</summary>
/// <param name="Sheer">The line of the offsets that it runs to; null where its slope is given.</param>
/// <param name="SlopeDegrees">From level in the section, 90 upright, more than 90 where it falls inward; null where a line gives it.</param>
public sealed record TopsideSpec(
    double ThicknessMm,
    ChineLap Lap,
    string? Sheer,
    double? SlopeDegrees
);

/// <summary>Which skin laps which at the chine.</summary>
public enum ChineLap
{
    BottomLapsTopside,
    TopsideLapsBottom,
    Mitre,
}
