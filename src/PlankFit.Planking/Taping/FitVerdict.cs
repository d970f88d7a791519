using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Taping;

/// <summary>Why a plank that was offered up does not fit: at most three causes, the likeliest first, if [trust] is right.</summary>
/// <param name="ShortMm">What it lacks at the chine; null where that was not measured.</param>
/// <param name="OpensForwardMm">By how much it stands off the keel at its forward corner more than at its after one; null likewise.</param>
/// <param name="Parting">The reading on the frames that parts the first two best; null where its own marks do.</param>
public sealed record FitVerdict(
    PlankId Plank,
    double? ShortMm,
    double? OpensForwardMm,
    ImmutableArray<LikelyCause> Likeliest,
    TapePlace? Parting
)
{
    /// <summary>It is no more than saw, feeler and tape are out by themselves.</summary>
    public bool IsNoMoreThanTools { get; init; }

    /// <summary>The first is likelier than all others together.</summary>
    public bool IsClear => Likeliest is [{ Odds: >= 0.5 }, ..];
}

public enum FitCauseKind
{
    /// <summary>It lies turned off its marks.</summary>
    LaidTurned,

    /// <summary>It was sawn too short or too long.</summary>
    Sawn,

    /// <summary>Its end at the keel was sawn at another angle.</summary>
    EndSawn,

    /// <summary>The keel is wider or narrower, higher or lower at a station.</summary>
    KeelAt,

    /// <summary>The keel is wider or narrower all along.</summary>
    KeelAlong,

    /// <summary>A frame's chine stands off.</summary>
    ChineAt,

    /// <summary>A station stands forward or aft of its place.</summary>
    StationAlong,
}

/// <summary>One cause, by itself.</summary>
/// <param name="Odds">0 to 1: of all causes that are looked at, each by itself and alike before.</param>
/// <param name="SizeMm">How large it would be: at a plank's chine mark where it lies turned, aft positive; what it lacks; at its forward corner; outboard, up or aft for a cell.</param>
/// <param name="Cell">The cell that it moves most, as the job would name it; null where none.</param>
/// <param name="ShortMm">What of the shortness it explains.</param>
public sealed record LikelyCause(
    FitCauseKind Kind,
    string? Station,
    string? Cell,
    double Odds,
    double SizeMm,
    double ShortMm,
    double OpensForwardMm
);
