using CsCheck;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Jobs by chance that no builder would draw: lines that cross, lie on one another, jump about or stand still; planks of any angle, width and place.</summary>
internal static class OddTables
{
    public static readonly Gen<Job> Gen = CsCheck
        .Gen.Select(Table, Layer, CsCheck.Gen.Int[1, 3], Keel)
        .Select(Build);

    private static Gen<(int Stations, double Spacing, double[] Numbers, int Kind)> Table =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Int[2, 9],
            CsCheck.Gen.OneOf(CsCheck.Gen.Double[0.5, 50], CsCheck.Gen.Double[100, 2000]),
            CsCheck.Gen.Double[-1, 1].Array[54],
            CsCheck.Gen.Int[0, 7]
        );

    private static Gen<(
        double Thickness,
        double Width,
        double Angle,
        double? Master,
        double Drift,
        double? Stagger
    )> Layer =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[0.1, 80],
            CsCheck.Gen.Double[20, 700],
            CsCheck.Gen.Double[1, 179],
            CsCheck.Gen.Double[-500, 9000].Nullable(),
            CsCheck.Gen.Double[0, 60],
            CsCheck.Gen.Double[0, 1].Nullable()
        );

    private static Gen<(bool Plumb, bool Outside, bool Between, bool HoldAngle)> Keel =>
        CsCheck.Gen.Select(CsCheck.Gen.Bool, CsCheck.Gen.Bool, CsCheck.Gen.Bool, CsCheck.Gen.Bool);

    private static Job Build(
        (int Stations, double Spacing, double[] Numbers, int Kind) table,
        (
            double Thickness,
            double Width,
            double Angle,
            double? Master,
            double Drift,
            double? Stagger
        ) layer,
        int layers,
        (bool Plumb, bool Outside, bool Between, bool HoldAngle) keel
    )
    {
        int n = table.Stations;
        double Noise(int i) => table.Numbers[i % table.Numbers.Length];
        (double Keel, double Chine, double Rise, double Jump) size = table.Kind switch
        {
            0 => (0, 0, 0, 0), // all on the middle line
            1 => (500, 200, 100, 0), // chine inboard of the keel
            2 => (0, 900, 0, 600), // jumping about
            3 => (0, 900, -400, 50), // chine under the keel
            4 => (0, 900, 3000, 10), // nearly upright
            5 => (0, 30, 5, 1), // very narrow
            6 => (0, 900, 0, 0), // flat
            _ => (20, 900, 300, 60), // nearly a hull
        };
        OffsetLine Line(string name, double part, int from) =>
            new(
                name,
                [],
                [
                    .. Enumerable
                        .Range(0, n)
                        .Select(i => (double?)((part * size.Rise) + (size.Jump * Noise(from + i)))),
                ],
                [
                    .. Enumerable
                        .Range(0, n)
                        .Select(i =>
                            (double?)
                                Math.Abs(
                                    size.Keel
                                        + (part * (size.Chine - size.Keel))
                                        + (size.Jump * Noise(from + 9 + i))
                                )
                        ),
                ]
            );
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. Enumerable.Range(0, n).Select(i => new Station($"{i}", i * table.Spacing))],
                    [Line("keel", 0, 0), Line("between", 0.5, 18), Line("chine", 1, 36)]
                ),
                new(
                    "keel",
                    "chine",
                    keel.Between ? ["between"] : [],
                    keel.Outside ? OffsetsAreTo.Outside : OffsetsAreTo.Inside,
                    keel.Plumb ? KeelSide.Plumb : KeelSide.SquareToPlank
                ),
                [
                    .. Enumerable
                        .Range(0, layers)
                        .Select(i =>
                            (LayerSpec)
                                PlankLayer.Of(
                                    $"layer {i + 1}",
                                    layer.Thickness,
                                    layer.Width,
                                    i == 1 ? Heads.Forward : Heads.Aft,
                                    layer.Angle,
                                    layer.Master,
                                    keel.HoldAngle ? Hold.Angle : Hold.Width,
                                    layer.Drift,
                                    0.5,
                                    layer.Stagger
                                )
                        ),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        );
    }
}
