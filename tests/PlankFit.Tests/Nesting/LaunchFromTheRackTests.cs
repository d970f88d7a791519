using System.Collections.Immutable;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Real planks of a real size of boat out of a rack of mixed boards; the rack is invented, the planks are the launch's.</summary>
public sealed class LaunchFromTheRackTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch-from-the-rack");
    private static readonly ImmutableArray<SawPiece> Pieces = Launch.PiecesToSaw();

    /// <summary>Marks: a gap of 2 % in 10 s on two cores is more than this effort takes; 5 % less timber than square crosscuts.</summary>
    [Fact]
    public void ThePlanKeepsTheLawsAndIsNearTheBound()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        NestPlan plan = NestedPlans.WholeLaunch.Nest!;
        Assert.Empty(CutLaws.Broken(plan, Pieces));
        Assert.Empty(plan.Unplaced);
        Assert.True(plan.GapPercent <= 2, $"gap {plan.GapPercent}");
        NestedMaterial only = Assert.Single(plan.Materials);
        Assert.True(only.SquareCutsFirstFit >= 1.05 * only.Value);
        Assert.All(plan.Boards, b => Assert.True(b.Stock.OnHand));
    }

    /// <summary>The demo as it is, with more and narrower planks: by its first prices alone, where 2.9 % was left as long as rows that cannot be sawn were among those looked for.</summary>
    [Fact]
    public void TheDemosNarrowerPlanksAreAsNearToTheBound()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Job job = JobReader
            .Read(Path.Combine(DemoTables.Demo("survey-launch-from-the-rack"), "job.toml"))
            .Job!;
        ImmutableArray<SawPiece> pieces = BottomPlanner
            .Plan(job, null, TestContext.Current.CancellationToken)
            .Plan!.PiecesToSaw();
        NestPlan plan = Planned.Of(job.Nest! with { Rounds = 0 }, pieces);
        Assert.Empty(CutLaws.Broken(plan, pieces));
        Assert.Equal(202, pieces.Length);
        Assert.Empty(plan.Unplaced);
        Assert.True(plan.GapPercent <= 1, $"gap {plan.GapPercent}");
    }

    /// <summary>Half the rack: what it gives is laid out, the rest is bought; without a yard the rest is named with what is missing.</summary>
    [Fact]
    public void ARackThatCannotServeIsFilledUpFromTheYard()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        // A fourth of the planks, and a rack as much too small for them, unless more is asked for.
        ImmutableArray<SawPiece> pieces = Long.IsAsked
            ? Pieces
            : [.. Pieces.Where((_, i) => i % 4 == 0)];
        int every = Long.IsAsked ? 4 : 16;
        NestSpec half = Launch.Job.Nest! with
        {
            Rounds = 0,
            Boards = [.. Launch.Job.Nest!.Boards.Where((b, i) => !b.OnHand || i % every == 0)],
        };
        NestPlan bought = Planned.Of(half, pieces);
        Assert.Empty(CutLaws.Broken(bought, pieces));
        Assert.Equal(NestMeasure.BoughtArea, bought.Measure);
        Assert.Empty(bought.Unplaced);
        Assert.Contains(bought.Boards, b => b.Stock.OnHand);
        Assert.Contains(bought.Boards, b => !b.Stock.OnHand);

        NestSpec rackOnly = half with { Boards = [.. half.Boards.Where(b => b.OnHand)] };
        NestPlan left = Planned.Of(rackOnly, pieces);
        Assert.Empty(CutLaws.Broken(left, pieces));
        Assert.NotEmpty(left.Unplaced);
        Assert.All(left.Unplaced, u => Assert.Contains("would serve", u.Why));
        Assert.Equal(
            left.Unplaced.Select(u => u.Piece.Id.ToString()).Order(StringComparer.Ordinal),
            left.Findings.SelectMany(f => f.Where.Split(", ")).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>Sheets: planks in lanes along their grain, which runs along the sheet or across it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void SheetsAreRippedAlongTheirGrain(bool across)
    {
        NestSpec spec = NestSpec.Usual with
        {
            Rounds = 0,
            Boards =
            [
                new(
                    "PLY",
                    StockKind.Sheet,
                    new(2440, across ? 1830 : 1220, 9),
                    new(null, null),
                    new(null, 40, true),
                    new(10, 10, [new(600, 640, 300, 340)]),
                    new("stock.csv", 2)
                )
                {
                    GrainAcross = across,
                },
            ],
        };
        ImmutableArray<SawPiece> pieces =
        [
            .. Pieces.Where(p => p.Layer == 1).Select(p => p with { LeastGrade = null }),
        ];
        NestPlan plan = Planned.Of(spec, pieces);
        Assert.Empty(CutLaws.Broken(plan, pieces));
        Assert.Empty(plan.Unplaced);
        // All but perhaps the last that was begun.
        Assert.True(plan.Boards.Count(b => b.Lanes.Length > 1) >= plan.Boards.Length - 1);
    }

    /// <summary>What is left over lies clear of everything, is as large as asked, and is cut square.</summary>
    [Fact]
    public void OffcutsAreClearOfPiecesFaultsAndEachOther()
    {
        NestSpec spec = Launch.Job.Nest! with
        {
            Rounds = 0,
            LeastOffcutMm = 150,
            LeastOffcutWidthMm = 20,
        };
        int found = 0;
        // Square crosscuts leave more over than a plan does.
        foreach (SawnBoard board in SquareCuts.Of(spec, Pieces, spec.CostOf, new(default)).Boards)
        {
            found += Offcuts.Of(spec, BoardCuts.Of(board, spec)).Length;
            Assert.Empty(OffcutLaws.Broken(spec, board));
        }

        Assert.True(found > 3, $"{found} offcuts");
    }

    /// <summary>Two lanes of 100, each with a piece of 1400 by 100 in a board of 2400 by 203: what is left beyond them comes off in one piece, by one cut before the rip.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void WhatAllLanesLeaveEmptyIsKeptInOnePiece(bool across)
    {
        StockBoard board = across
            ? SawPieces.Board("B-01", 203, 2400) with
            {
                Kind = StockKind.Sheet,
                GrainAcross = true,
            }
            : SawPieces.Board("B-01", 2400, 203);
        NestSpec spec = SawPieces.Spec(board) with
        {
            KerfMm = 3,
            EndMm = 0,
            EdgeMm = 0,
            LeastOffcutMm = 300,
            LeastOffcutWidthMm = 60,
            Rounds = 0,
        };
        ImmutableArray<SawPiece> pieces =
        [
            SawPieces.Rectangle("S1-01", 1400, 100),
            SawPieces.Rectangle("S1-02", 1400, 100),
        ];
        SawnBoard sawn = Planned.Of(spec, pieces).Boards.Single();
        Assert.Equal(2, sawn.Lanes.Length);
        ImmutableArray<Offcut> kept = Offcuts.Of(spec, BoardCuts.Of(sawn, spec));
        Assert.Equal([997], kept.Select(o => Math.Round(o.LengthMm, 6)));
        Assert.Equal([203], kept.Select(o => Math.Round(o.WidthMm, 6)));
        Assert.Empty(OffcutLaws.Broken(spec, sawn));
    }
}
