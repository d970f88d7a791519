using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>A plane bottom: the same deadrise all along, the keel rising aft at a slope; two skins on opposite diagonals with a cloth between.</summary>
internal static class PlaneBottom
{
    public const double KeelHalf = 40;
    public const double ChineHalf = 900;

    private static readonly double[] Positions = [0, 900, 1700, 2600, 3400, 4300, 5100, 6000];

    public static Job Job(
        double deadriseDegrees,
        double slopeDegrees,
        double plankMm,
        double clothMm,
        OffsetsAreTo to
    )
    {
        double tb = Math.Tan(deadriseDegrees * Math.PI / 180),
            tp = Math.Tan(slopeDegrees * Math.PI / 180);
        var table = new OffsetTable(
            [.. Positions.Select((x, i) => new Station($"{i}", x))],
            [
                Line("keel", x => x * tp, KeelHalf),
                Line("chine", x => (x * tp) + ((ChineHalf - KeelHalf) * tb), ChineHalf),
            ]
        );
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                table,
                new("keel", "chine", [], to, KeelSide.Plumb),
                [
                    Skin("inner", plankMm, Heads.Aft),
                    new ClothLayerSpec("cloth", clothMm),
                    Skin("outer", plankMm, Heads.Forward),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        );
    }

    public static KeelLayerSpec KeelLayer(string name, string meets, double thickness) =>
        new(name, meets, thickness, new KeelHalfWidth.Mitre(), new KeelLayerSide.Plumb());

    private static PlankLayerSpec Skin(string name, double thickness, Heads heads) =>
        PlankLayer.Of(name, thickness, 150, heads, 45, null, Hold.Width, 7.5, 0.5, null);

    private static OffsetLine Line(string name, Func<double, double> height, double half) =>
        new(
            name,
            [],
            [.. Positions.Select(x => (double?)height(x))],
            [.. Positions.Select(_ => (double?)half)]
        );
}
