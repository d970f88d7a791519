using System.Collections.Immutable;
using System.Diagnostics;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Nesting;
using PlankFit.Planking;
using PlankFit.Reading;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets of jobs that are no demos, in all units, from stocks by chance: all of them can be read.</summary>
public sealed class CutSheetsByChanceTests(ITestOutputHelper output)
{
    private const int Quick = 6;
    private const int Long = 120;

    /// <summary>So many pieces are laid out where few jobs are drawn: their search is what takes the time.</summary>
    private const int QuickPieces = 40;

    [Fact]
    public void Cut_sheets_of_any_job_can_be_read()
    {
        int sheets = 0,
            jobs = LongRuns.Of(Quick, Long);
        var faults = new List<string>();
        for (int seed = 0; seed < jobs; seed++)
        {
            using var temp = new TempFolder();
            string job = ChanceJob.WriteStocked(seed, temp.File("job"));
            long t0 = Stopwatch.GetTimestamp();
            if (Nested(job, LongRuns.Of(QuickPieces, int.MaxValue)) is { } plan)
            {
                double nest = Stopwatch.GetElapsedTime(t0).TotalSeconds;
                string[] found = [.. Sheets(plan).SelectMany(StripLaws.Faults)];
                output.WriteLine(
                    $"{seed}: {plan.Job.Units}, {plan.Nest!.Boards.Length} boards, {plan.Nest.Boards.Sum(b => b.Pieces.Length)} pieces, {found.Length} faults, {Sheets(plan).SelectMany(d => d.Shapes.OfType<Lettering>()).Count(l => l.Text.Contains("NOT MARKED"))} not marked, {CutSheets.Of(plan, plan.Nest).Length} pages {nest:0.00} {Stopwatch.GetElapsedTime(t0).TotalSeconds:0.00}"
                );
                faults.AddRange(found.Select(f => $"{seed}: {f}"));
                sheets += plan.Nest.Boards.Length;
            }
        }

        Assert.True(sheets >= jobs, $"{sheets} boards in {jobs} jobs");
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults:\n" + string.Join("\n", faults.Take(60))
        );
    }

    /// <summary>The demo tender's first skin out of sheets of plywood: of the first no more is used than a corner.</summary>
    [Fact]
    public void A_sheet_hardly_used_can_be_read()
    {
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
        string[] faults = [.. Sheets(plan).SelectMany(StripLaws.Faults)];
        Assert.True(
            faults.Length == 0,
            $"{faults.Length} faults:\n" + string.Join("\n", faults.Take(40))
        );
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

        ImmutableArray<SawPiece> pieces = SawPieces.Of(plan);
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

    private static IEnumerable<Drawing> Sheets(BottomPlan plan) =>
        CutSheets
            .Of(plan, plan.Nest!)
            .Concat(plan.Nest!.Boards.Select(b => CutSheets.Board(plan, b)));
}
