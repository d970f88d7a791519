using PlankFit.Planking.Trust;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Trust;

/// <summary>The tables in braces of [trust].</summary>
public static class TrustWithinKeys
{
    /// <summary>Nobody who is further out than this needs to be told how far, mm.</summary>
    internal const double MostMm = 100;

    public static readonly LengthKey Athwart = Mm(
        "athwart",
        "2",
        "To one side: what stands on the keel moves, the keel's edge does not."
    ) with
    {
        DefaultMm = FrameStanding.Default.AthwartMm,
    };

    public static readonly LengthKey Up = Mm("up", "2", "Too high or too low, likewise.") with
    {
        DefaultMm = FrameStanding.Default.UpMm,
    };

    public static readonly LengthKey Along = Mm("along", "3", "Forward or aft of its place.") with
    {
        DefaultMm = FrameStanding.Default.AlongMm,
    };

    public static readonly NumberKey Heel = new(
        "heel",
        "2",
        "parts in 1000",
        "Turned about the keel's edge: mm in a metre."
    )
    {
        DefaultValue = FrameStanding.Default.HeelMmPerM,
        Limits = Limits.FromTo(0, 50),
        Source = KeySources.Proposal,
    };

    internal static readonly JobTable Stand = new(Athwart, Up, Along, Heel);

    public static readonly LengthKey Chine = Mm(
        "chine",
        "2",
        "The chine, and what else stands on the keel, to the side."
    ) with
    {
        DefaultMm = LineBends.Default.ChineMm,
    };

    public static readonly LengthKey Keel = Mm("keel", "2", "The keel's edge to the side.") with
    {
        DefaultMm = LineBends.Default.KeelMm,
    };

    public static readonly LengthKey KeelUp = Mm("keel-up", "3", "The keel's edge up or down.") with
    {
        DefaultMm = LineBends.Default.KeelUpMm,
    };

    public static readonly NumberKey Over = new(
        "over",
        "0.2",
        "part of the length",
        "Within what part of the hull's length a swelling stays much the same."
    )
    {
        DefaultValue = LineBends.Default.Over,
        Limits = Limits.FromTo(0.02, 2),
        Source = KeySources.Proposal,
    };

    internal static readonly JobTable Bends = new(Chine, Keel, KeelUp, Over);

    public static readonly LengthKey Width = Mm("width", "0.2", "Of planks, all alike.") with
    {
        DefaultMm = TrustSpec.Default.StockWidthWithinMm,
    };

    public static readonly LengthKey Thickness = Mm(
        "thickness",
        "0.3",
        "Of planks, all alike."
    ) with
    {
        DefaultMm = TrustSpec.Default.StockThicknessWithinMm,
    };

    internal static readonly JobTable Stock = new(Width, Thickness);

    internal static LengthKey Mm(string name, string example, string what) =>
        new(name, example, what)
        {
            Limits = Limits.NotNegative.UpTo(MostMm),
            Beyond = "must be from 0 to {most}",
            Source = KeySources.Proposal,
        };
}
