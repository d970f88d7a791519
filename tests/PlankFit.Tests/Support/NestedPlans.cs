using System.Collections.Immutable;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>The demo launch and the skiff nested in racks of boards, once a run of the tests.</summary>
internal static class NestedPlans
{
    private static readonly Lazy<BottomPlan> LaunchPlan = new(() => Nested("survey-launch", Rack));

    private static readonly Lazy<BottomPlan> SkiffPlan = new(() =>
        Nested("pilot-skiff", plan => Yard(plan))
    );

    private static readonly Lazy<BottomPlan> WholeLaunchPlan = new(() =>
    {
        BottomPlan plan = DemoPlans.Of("survey-launch-from-the-rack");
        NestSpec spec = plan.Job.Nest! with
        {
            Rounds = 0,
            LeastOffcutMm = 200,
            LeastOffcutWidthMm = 30,
        };
        return plan with
        {
            Nest = NestPlanner.Of(
                spec,
                plan.PiecesToSaw(),
                plan.Job.Units,
                new Progress<NestProgress>(),
                CancellationToken.None
            ),
        };
    });

    /// <summary>All 168 planks out of the demo's rack, and what is left of 200 by 30 mm kept.</summary>
    public static BottomPlan WholeLaunch => WholeLaunchPlan.Value;

    /// <summary>The same where more is asked for, as in CI, else the next: its search takes seven seconds.</summary>
    public static BottomPlan WholeLaunchWhereAsked => LongRuns.More ? WholeLaunch : Launch;

    /// <summary>In millimetres, out of a rack of mixed boards with faults, and a yard that has as many as are wanted.</summary>
    public static BottomPlan Launch => LaunchPlan.Value;

    private static readonly Lazy<BottomPlan> PlyPlan = new(() => Nested("pilot-skiff", Sheets));

    /// <summary>In feet-inches-eighths, out of wide sheets whose grain runs across one and along the next.</summary>
    public static BottomPlan Ply => PlyPlan.Value;

    /// <summary>In feet-inches-eighths, boards to be bought by price, wide ones among them.</summary>
    public static BottomPlan Skiff => SkiffPlan.Value;

    /// <summary>Every third plank, so that a plan is found in a moment.</summary>
    private static ImmutableArray<SawPiece> Pieces(BottomPlan plan) =>
        [.. plan.PiecesToSaw().Where(p => plan.Find(p.PlankId)!.Number % 3 == 1)];

    public static BottomPlan Nested(string hull, Func<BottomPlan, NestSpec> stock)
    {
        BottomPlan drawn = DemoPlans.Of(hull);
        NestSpec spec = stock(drawn);
        BottomPlan plan = drawn with { Job = drawn.Job with { Nest = spec } };
        NestPlan nest = NestPlanner.Of(
            spec,
            Pieces(plan),
            plan.Job.Units,
            new Progress<NestProgress>(),
            CancellationToken.None
        );
        return plan with { Nest = nest };
    }

    private static StockBoard Board(
        string id,
        double length,
        double width,
        double thickness,
        int? count,
        decimal? price,
        bool onHand
    ) =>
        new(
            id,
            StockKind.Board,
            new(length, width, thickness),
            new("douglas-fir", null),
            new(price, count, onHand),
            new(0, 0, []),
            new(onHand ? "stock.csv" : "yard.csv", 2)
        );

    private static NestSpec Rack(BottomPlan plan)
    {
        double thickness = plan.PlankLayers.First().Planks.ThicknessMm,
            width = plan.PlankLayers.Max(l => l.Planks.WidthMm);
        return NestSpec.Usual with
        {
            Rounds = 1,
            TurnFaceForFace = true,
            Boards =
            [
                Board("B-01", 4200, width + 10, thickness, 6, 38.5m, true) with
                {
                    MarkedEndMm = 40,
                    Faults = [new(1320, 1385, null, null), new(2890, 2910, 120, width + 10)],
                },
                Board("B-02", 3600, width, thickness, 8, 31m, true),
                Board("B-03", 2400, (2 * width) + 12, thickness, 4, 45m, true) with
                {
                    OtherEndMm = 25,
                },
                Board("Y-1", 4800, width, thickness, null, 52m, false),
                Board("Y-2", 3000, width, thickness, null, 30m, false),
            ],
        };
    }

    private static NestSpec Yard(BottomPlan plan)
    {
        double thickness = plan.PlankLayers.First().Planks.ThicknessMm,
            width = plan.PlankLayers.Max(l => l.Planks.WidthMm);
        return NestSpec.Usual with
        {
            Rounds = 1,
            KerfMm = 25.4 / 8,
            Objective = NestObjective.Cost,
            Boards =
            [
                Board("B-1", 12 * 304.8, width + 6.35, thickness, 3, 0m, true) with
                {
                    Faults = [new(700, 760, 0, 40)],
                },
                Board("Y-1", 10 * 304.8, (2 * width) + 6.35, thickness, null, 61.25m, false),
                Board("Y-2", 8 * 304.8, width, thickness, null, 19.9m, false),
            ],
        };
    }

    private static NestSpec Sheets(BottomPlan plan)
    {
        double thickness = plan.PlankLayers.First().Planks.ThicknessMm;
        StockBoard sheet = Board("S-1", 4 * 304.8, 8 * 304.8, thickness, 1, null, true) with
        {
            Kind = StockKind.Sheet,
            GrainAcross = true,
            Faults = [new(100, 180, 900, 1000)],
        };
        return NestSpec.Usual with
        {
            Rounds = 1,
            Boards =
            [
                sheet,
                sheet with
                {
                    Id = "S-2",
                    LengthMm = 8 * 304.8,
                    WidthMm = 4 * 304.8,
                    GrainAcross = false,
                    Count = null,
                    OnHand = false,
                    Price = 60,
                    Faults = [],
                },
            ],
        };
    }
}
