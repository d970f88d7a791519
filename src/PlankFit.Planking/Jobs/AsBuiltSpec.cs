using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Jobs;

/// <summary>What was measured on the hull as it stands, and what is fitted already.</summary>
public sealed record AsBuiltSpec
{
    public static readonly AsBuiltSpec None = new();

    public ImmutableArray<MeasuredKeelHalfWidth> KeelHalfWidths { get; init; } = [];

    public ImmutableArray<MeasuredGirth> Girths { get; init; } = [];

    public ImmutableArray<MeasuredSeam> Seams { get; init; } = [];

    /// <summary>
    /// All that the tape read, girths among them, each as often as it was read: the hull is adjusted to them with [trust]. Empty without it, and then the bottom is bent
    /// to <see cref="Girths"/> alone.
    /// </summary>
    public ImmutableArray<TapeReading> Readings { get; init; } = [];

    /// <summary>Cells of the table that may move as far as the readings have them, however far that is: chine/half-breadth/6.</summary>
    public ImmutableArray<string> AsMeasured { get; init; } = [];

    /// <summary>What the hull is adjusted to by these; null where it is not, or the bottom is bent to the girths alone.</summary>
    public TapedTables? Tables { get; init; }

    /// <summary>Planks that are on the hull though nothing was measured of them, by name.</summary>
    public ImmutableArray<PlankId> Fitted { get; init; } = [];

    /// <summary>The station from which seams are measured; null for the first of the bottom.</summary>
    public string? From { get; init; }

    /// <summary>Planks that are sawn, by the record of them, in any order.</summary>
    public ImmutableArray<SawnPlank> Sawn { get; init; } = [];

    /// <summary>The boards that they came from, as far as that record has them.</summary>
    public ImmutableArray<BoardSawnInto> SawnInto { get; init; } = [];

    /// <summary>The file of that record, as the job names it; null where it names none.</summary>
    public string? SawnFile { get; init; }

    /// <summary>What of it is a panel's: its planks, and of a panel without a keel no girth and no keel.</summary>
    public AsBuiltSpec Of(Panel panel)
    {
        bool Is(PlankId id) => id.Panel == panel.Letter;
        AsBuiltSpec of = this with
        {
            Seams = [.. Seams.Where(s => Is(s.PlankId))],
            Fitted = [.. Fitted.Where(Is)],
            Sawn = [.. Sawn.Where(c => Is(c.Id)).Select(c => c.Named(panel))],
        };
        return panel.HasKeel
            ? of
            : of with
            {
                KeelHalfWidths = [],
                Girths = [],
                Readings = [],
                Tables = null,
            };
    }

    public bool NothingMeasured =>
        KeelHalfWidths.IsEmpty && Girths.IsEmpty && Seams.IsEmpty && Readings.IsEmpty;

    public bool IsEmpty => NothingMeasured && Fitted.IsEmpty && Sawn.IsEmpty;
}

/// <summary>The half-width of a keel layer at its outer face, as measured at one station on one side.</summary>
public sealed record MeasuredKeelHalfWidth(string Layer, string Station, Side Side, double Mm);

/// <summary>
/// Keel edge to chine at a station, along the face that the first layer is laid on (the inner face of the planking, on the bare frames), tape held to it.
/// </summary>
public sealed record MeasuredGirth(string Station, Side Side, double Mm);

/// <summary>
/// Where the after seam of a fitted plank really crosses keel or chine: its distance along that edge, on the face its layer is laid on, from the station that the
/// job names; aft positive.
/// </summary>
/// <param name="At">Keel or chine.</param>
public sealed record MeasuredSeam(PlankId PlankId, PanelEdge At, double Mm)
{
    public Side Side => PlankId.Side;
}
