using PlankFit.Planking.Jobs;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Keel;

/// <summary>[keel]: what is judged of the keel's layers.</summary>
public static class KeelKeys
{
    public static readonly LengthKey StockWidth = new(
        "stock-width",
        "110",
        "The full width of the timber that the keel's layers are sawn from: drawn in, and told where it is too narrow."
    )
    {
        Limits = Limits.Positive,
    };

    public static readonly LengthKey HalfWidthTolerance = new(
        "half-width-tolerance",
        "0.8",
        "How far a half-width may be off what the planks want before it is told."
    )
    {
        Limits = Limits.Positive,
        DefaultMm = KeelSpec.None.HalfWidthToleranceMm,
        Source = "1/32 in from any point of a fair line: common practice, no source",
    };

    public static readonly LengthKey ProudTolerance = new(
        "proud-tolerance",
        "0.5",
        "How far the keel may stand proud of the planks, or shy, before it is told."
    )
    {
        Limits = Limits.Positive,
        DefaultMm = KeelSpec.None.ProudToleranceMm,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey MostDeadrise = new(
        "most-deadrise",
        "40",
        "degrees",
        "Where planks rise more steeply than this at the keel they are left long there and fit at the chine."
    )
    {
        Limits = Limits.Within(0, 90),
        AcceptedWords =
            "accepted: degrees more than {least} and less than {most}; a saw tilts to 45 as a rule",
        Otherwise = "planks are fit however steep it is",
        Source = KeySources.Practice,
    };

    public static readonly LengthKey LeastHalfWidth = new(
        "least-half-width",
        "30",
        "Where the keel layer would be narrower than this, planks are left long at the keel and fit at the chine."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "planks are fit however narrow it is",
    };

    public static readonly LengthKey LeftLong = new(
        "left-long",
        "30",
        "By how much planks are left long where the keel has run out."
    )
    {
        Limits = Limits.Positive,
        DefaultMm = KeelSpec.None.LeftLongMm,
        Source = KeySources.Proposal,
    };

    public static readonly JobTable Table = new(
        StockWidth,
        HalfWidthTolerance,
        ProudTolerance,
        MostDeadrise,
        LeastHalfWidth,
        LeftLong
    );
}
