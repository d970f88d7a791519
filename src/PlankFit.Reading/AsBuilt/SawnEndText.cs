using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Reading.AsBuilt;

/// <summary>One end of a sawn plank as its record holds it.</summary>
internal sealed record SawnEndText
{
    public required string At { get; init; }
    public required string Cut { get; init; }
    public required double CutDegrees { get; init; }
    public required double[] Bevels { get; init; }
    public required double? OverhangMm { get; init; }
    public required double AllowanceMm { get; init; }
    public required double[][] Net { get; init; }
    public required double[][] Outline { get; init; }
    public required double[][] OuterLine { get; init; }
    public required double[][] InnerLine { get; init; }

    public static SawnEndText Of(PlankId plank, PlankEnd e) =>
        new()
        {
            At = Written(plank, e.At),
            Cut = e.Cut == EndCut.Fit ? "fit" : "left long",
            CutDegrees = PointText.Whole(e.CutDegrees),
            Bevels =
            [
                PointText.Whole(e.BevelDegrees),
                PointText.Whole(e.BevelAtLeastN),
                PointText.Whole(e.BevelAtGreatestN),
            ],
            OverhangMm = e.OverhangMm,
            AllowanceMm = e.AllowanceMm,
            Net = PointText.Of(e.NetLine),
            Outline = PointText.Of(e.Outline),
            OuterLine = PointText.Of(e.OuterLine),
            InnerLine = PointText.Of(e.InnerLine),
        };

    /// <summary>Keel and chine of a bottom; of another panel, whose edges have the names of lines, lower and upper.</summary>
    private static string Written(PlankId plank, PanelEdge edge) =>
        (plank.Panel, edge) switch
        {
            (not PlankId.Bottom, PanelEdge.Lower) => "lower",
            (not PlankId.Bottom, PanelEdge.Upper) => "upper",
            _ => Panel.BottomWordOf(edge),
        };

    public PlankEnd ToEnd() =>
        new(
            At switch
            {
                "keel" or "lower" => PanelEdge.Lower,
                "chine" or "upper" => PanelEdge.Upper,
                "stem" => PanelEdge.Stem,
                "transom" => PanelEdge.Transom,
                _ => throw new FormatException(),
            },
            Cut switch
            {
                "fit" => EndCut.Fit,
                "left long" => EndCut.LeftLong,
                _ => throw new FormatException(),
            },
            Bevels.Length == 3
                ? new(CutDegrees, Bevels[0], Bevels[1], Bevels[2])
                : throw new FormatException(),
            OverhangMm,
            AllowanceMm,
            new(
                PointText.Flat(Net),
                PointText.Space(Outline),
                PointText.Flat(OuterLine),
                PointText.Flat(InnerLine)
            )
        );
}
