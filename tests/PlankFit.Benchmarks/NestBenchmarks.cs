using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Benchmarks;

/// <summary>The plan of cutting without improvement: the first plans and the bound, for the launch's rack and for a thousand pieces on three hundred boards by chance.</summary>
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 1, iterationCount: 3)]
public class NestBenchmarks
{
    private NestSpec launch = null!;
    private ImmutableArray<SawPiece> planks;
    private NestSpec rack = null!;
    private ImmutableArray<SawPiece> many;

    [GlobalSetup]
    public void Setup()
    {
        Job job = PlankFit
            .Reading.Jobs.JobReader.Read(Demo.File("survey-launch-from-the-rack"))
            .Job!;
        launch = job.Nest! with { Rounds = 0 };
        planks = BottomPlanner.Plan(job, null, default).Plan!.PiecesToSaw();
        var chance = new Random(7);
        rack = NestSpec.Usual with
        {
            Rounds = 0,
            Boards =
            [
                .. Enumerable
                    .Range(0, 300)
                    .Select(i => new StockBoard(
                        $"B-{i}",
                        StockKind.Board,
                        new(
                            2400 + (100 * chance.Next(25)),
                            new[] { 152, 155, 160, 165, 200, 310, 315 }[chance.Next(7)],
                            9
                        ),
                        new(null, null),
                        new(null, 1, true),
                        new(0, 0, []),
                        new("", i)
                    )),
            ],
        };
        many =
        [
            .. Enumerable
                .Range(0, 1000)
                .Select(i =>
                {
                    double l = 400 + (1000 * chance.NextDouble()),
                        a = 150 / Math.Tan((35 + (20 * chance.NextDouble())) * Math.PI / 180),
                        b = 150 / Math.Tan((35 + (20 * chance.NextDouble())) * Math.PI / 180);
                    ImmutableArray<Vec2> outline =
                    [
                        new(0, 0),
                        new(l, 0),
                        new(l + b, 150),
                        new(a, 150),
                    ];
                    return new SawPiece(
                        PieceId.Whole(PlankId.OfBottom(Side.Starboard, 1, i)),
                        outline,
                        9,
                        new(null, null),
                        new(true, false),
                        null,
                        false
                    );
                }),
        ];
    }

    [Benchmark]
    public double TheLaunch() => Gap(launch, planks);

    [Benchmark]
    public double AThousandPieces() => Gap(rack, many);

    private static double Gap(NestSpec spec, ImmutableArray<SawPiece> pieces) =>
        NestPlanner
            .Of(spec, pieces, LengthUnit.Millimetre, new Progress<NestProgress>(), default)
            .GapPercent;
}
