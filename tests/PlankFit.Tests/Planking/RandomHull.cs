using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Hull-like jobs by chance, all within what a builder might draw: rising keel, warped bottom, one to three layers.</summary>
internal static class RandomHull
{
    public static readonly Gen<Job> Gen = CsCheck
        .Gen.Select(
            CsCheck.Gen.Int[5, 12],
            CsCheck.Gen.Double[3000, 9000],
            CsCheck.Gen.Double[8, 24],
            CsCheck.Gen.Double[0, 28],
            CsCheck.Gen.Double[0.10, 0.15],
            Shape,
            Layers
        )
        .Select(
            (stations, length, deadriseAft, warp, beam, shape, layers) =>
                Build(stations, length, deadriseAft, warp, beam, shape, layers)
        );

    private static Gen<(
        double Rocker,
        double Keel,
        bool Apex,
        bool Camber,
        bool Outside,
        bool Plumb
    )> Shape =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[0, 0.05],
            CsCheck.Gen.Double[0, 50],
            CsCheck.Gen.Bool,
            CsCheck.Gen.Bool,
            CsCheck.Gen.Bool,
            CsCheck.Gen.Bool
        );

    private static Gen<(
        int Count,
        double Thickness,
        double Width,
        double Angle,
        bool Aft,
        bool HoldAngle
    )> Layers =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Int[1, 3],
            CsCheck.Gen.Double[3, 12],
            CsCheck.Gen.Double[60, 250],
            CsCheck.Gen.Double[30, 75],
            CsCheck.Gen.Bool,
            CsCheck.Gen.Bool
        );

    private static Job Build(
        int stations,
        double length,
        double deadriseAft,
        double warp,
        double beam,
        (double Rocker, double Keel, bool Apex, bool Camber, bool Outside, bool Plumb) shape,
        (int Count, double Thickness, double Width, double Angle, bool Aft, bool HoldAngle) layers
    )
    {
        bool camber = shape.Camber && !shape.Apex;
        double[] x =
        [
            .. Enumerable
                .Range(0, stations)
                .Select(i => length * Math.Pow((double)i / (stations - 1), 1.25)),
        ];
        double half = beam * length;
        double Part(double at) => 1 - (at / length);
        double KeelY(double at) =>
            shape.Apex
                ? shape.Keel * Math.Sqrt(1 - Math.Pow(Part(at), 2)) * (1 - Part(at))
                : shape.Keel;
        double ChineY(double at) =>
            (shape.Apex ? 0 : (0.25 * half) + KeelY(at))
            + (half * (shape.Apex ? 1 : 0.75) * (1 - Math.Pow(Part(at), 2.2)));
        double KeelZ(double at) => length * shape.Rocker * Math.Pow(Part(at), 2.5);
        double Slope(double at) =>
            Math.Tan((deadriseAft + (warp * Math.Pow(Part(at), 1.6))) * Math.PI / 180);
        double ChineZ(double at) => KeelZ(at) + ((ChineY(at) - KeelY(at)) * Slope(at));
        OffsetLine Line(string name, Func<double, double> y, Func<double, double> z) =>
            new(name, [], [.. x.Select(a => (double?)z(a))], [.. x.Select(a => (double?)y(a))]);
        ImmutableArray<OffsetLine>.Builder lines = ImmutableArray.CreateBuilder<OffsetLine>();
        lines.Add(Line("keel", KeelY, KeelZ));
        if (camber)
        {
            lines.Add(
                Line(
                    "bilge",
                    a => ((KeelY(a) + ChineY(a)) / 2) + (0.012 * (ChineY(a) - KeelY(a))),
                    a => ((KeelZ(a) + ChineZ(a)) / 2) - (0.02 * (ChineY(a) - KeelY(a)))
                )
            );
        }

        lines.Add(Line("chine", ChineY, ChineZ));
        double width = Math.Min(layers.Width, half / 3);
        IEnumerable<LayerSpec> stack = Enumerable
            .Range(0, layers.Count)
            .Select(i =>
                (LayerSpec)
                    PlankLayer.Of(
                        $"layer {i + 1}",
                        layers.Thickness,
                        width,
                        (i % 2 == 0) == layers.Aft ? Heads.Aft : Heads.Forward,
                        layers.Angle,
                        null,
                        layers.HoldAngle ? Hold.Angle : Hold.Width,
                        7.5,
                        0.5,
                        null
                    )
            );
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new([.. x.Select((a, i) => new Station($"{i}", a))], lines.ToImmutable()),
                new(
                    "keel",
                    "chine",
                    camber ? ["bilge"] : [],
                    shape.Outside ? OffsetsAreTo.Outside : OffsetsAreTo.Inside,
                    shape.Plumb ? KeelSide.Plumb : KeelSide.SquareToPlank
                ),
                [.. stack],
                EndRules.Default,
                BendLimits.Default
            )
        );
    }
}
