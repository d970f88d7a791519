using System.Collections.Immutable;
using PlankFit.Export.Stock;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets of jobs that are no demos, in all units, from stocks by chance: all of them can be read.</summary>
public sealed class CutSheetsByChanceTests
{
    /// <summary>One of the seeds at which a law was broken once; a long run has as many jobs in each of the units.</summary>
    private static readonly int[] Few = [12];
    private const int Many = 30;

    /// <summary>So many pieces of a job are laid out: their search is what takes the time.</summary>
    private const int MostPieces = 40;

    [Fact]
    public void CutSheetsOfAnyJobCanBeRead()
    {
        int[] seeds = LongRuns.Asked ? [.. Enumerable.Range(0, Many)] : Few;
        int boards = 0;
        var faults = new List<string>();
        foreach (int seed in seeds)
        {
            using var temp = new TempFolder();
            string job = ChanceJob.WriteStocked(seed, temp.File("job"));
            if (Nested(job, MostPieces) is { } plan)
            {
                faults.AddRange(Faults(plan).Select(f => $"{seed}: {f}"));
                boards += plan.Nest!.Boards.Length;
            }
        }

        Assert.True(boards >= seeds.Length, $"{boards} boards in {seeds.Length} jobs");
        None(faults);
    }

    /// <summary>The demo tender's first skin out of sheets of plywood: of the first no more is used than a corner.</summary>
    [Fact]
    public void ASheetHardlyUsedCanBeRead()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        using var temp = new TempFolder();
        string job = OneLayerTender.In(temp, "");
        File.AppendAllText(job, "[nest]\nrounds = 0\nstock = \"stock.csv\"\n");
        File.WriteAllText(
            temp.File("stock.csv"),
            "board,count,length,width,thickness,kind\nPLY,4,2440,1220,4.5,sheet\nB,3,3600,215,4.5,board\n"
        );
        BottomPlan plan = Nested(job, int.MaxValue)!;
        Assert.Contains(
            plan.Nest!.Boards,
            b => b.Stock.Kind == StockKind.Sheet && b.Pieces.Length < 10
        );
        None(Faults(plan));
    }

    public static TheoryData<double> Factors => LongRuns.FirstOf(0.05, 0.03, 0.02);

    /// <summary>Drawn so small that hardly anything has room, a strip still has nothing upon anything else, and what it leaves out is told.</summary>
    [Theory]
    [MemberData(nameof(Factors))]
    public void WhatFindsNoPlaceIsLeftOutAndTold(double factor)
    {
        const double Around = 60;
        BottomPlan plan = NestedPlans.Launch;
        int without = 0;
        foreach (SawnBoard board in plan.Nest!.Boards)
        {
            var view = StripView.Whole(BoardCuts.Of(board, plan.Nest.Spec));
            var drawn = StripDrawing.AtAnyRate(plan, view, factor, 0);
            var sheet = new Drawing(
                board.Id,
                (factor * view.LengthMm) + (2 * Around),
                (factor * view.HeightMm) + (2 * Around),
                [.. drawn.Shapes.Select(s => s.MovedBy(new(Around, Around)))]
            );
            None(
                StripLaws
                    .Faults(sheet)
                    .Where(f => !f.Contains("marked e", StringComparison.Ordinal))
            );
            string[] words = [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];
            Assert.Equal(
                view.Cuts.Select(c => NumberText.Trimmed(c.Number, 0)).Except(words),
                drawn.WithoutNumber.Select(n => NumberText.Trimmed(n, 0))
            );
            Assert.Equal(
                view.Pieces.Select(p => p.Piece.Id.ToString())
                    .Except(words)
                    .Order(StringComparer.Ordinal),
                drawn.WithoutName.Order(StringComparer.Ordinal)
            );
            without += drawn.WithoutNumber.Length + drawn.WithoutName.Length;
        }

        Assert.True(without > 0 || factor > 0.02);
    }

    /// <summary>Null for a job that cannot be planned: what that says is held elsewhere.</summary>
    private static BottomPlan? Nested(string job, int mostPieces)
    {
        ReadResult read = JobReader.Read(job);
        if (
            read.Job is not { Nest: { } spec }
            || BottomPlanner.Plan(read.Job, null, CancellationToken.None).Plan is not { } plan
        )
        {
            return null;
        }

        ImmutableArray<SawPiece> pieces = plan.PiecesToSaw();
        int every = Math.Max(1, (pieces.Length + mostPieces - 1) / mostPieces);
        NestPlan nest = NestPlanner.Of(
            spec,
            [.. pieces.Where((_, i) => i % every == 0)],
            plan.Job.Units,
            new Progress<NestProgress>(),
            CancellationToken.None
        );
        return plan with { Nest = nest };
    }

    private static IEnumerable<string> Faults(BottomPlan plan) =>
        CutSheets
            .Of(plan, plan.Nest!)
            .Concat(plan.Nest!.Boards.Select(b => CutSheets.Board(plan, plan.Nest!.Spec, b)))
            .SelectMany(StripLaws.Faults)
            .Concat(plan.Nest.Boards.SelectMany(b => StripTold.Faults(plan, b)));

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(40)));
    }
}
