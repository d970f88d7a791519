using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Reading.Measured;

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

    public static SawnEndText Of(PlankEnd e) =>
        new()
        {
            At = e.At.ToString().ToLowerInvariant(),
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

    public PlankEnd ToEnd() =>
        new(
            At switch
            {
                "keel" => HullEdge.Keel,
                "chine" => HullEdge.Chine,
                "stem" => HullEdge.Stem,
                "transom" => HullEdge.Transom,
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
