using PlankFit.Export.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Export.Words;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Sheathing;

/// <summary>Sheets of cloth of jobs by chance, in all units and on all papers: nothing stands upon anything else, no piece's name is lost, lengths are in the job's notation.</summary>
public sealed class ClothSheetsByChanceTests
{
    [Fact]
    public void EverySheetCanBeReadInTheJobsUnits()
    {
        int sheets = 0,
            imperial = 0;
        List<string> faults = [];
        for (int seed = 1; seed <= LongRuns.Of(1, 60); seed++)
        {
            if (Plan(seed) is not { Sheathing: { } sheathing } plan)
            {
                continue;
            }

            Drawing[] all = [.. SheathingSheets.Of(plan, sheathing)];
            sheets += all.Length;
            faults.AddRange(BlockCheck.AllFaults(all, $"{seed}"));
            string[] words =
            [
                .. all.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text),
            ];
            faults.AddRange(
                sheathing
                    .Pieces.Where(p =>
                        !sheathing.Rolls.Any(r => r.Missing.Contains(p))
                        && !words.Any(w => w.StartsWith(p.Id, StringComparison.Ordinal))
                    )
                    .Select(p => $"{seed} lost: {p.Id}")
            );
            if (!LengthUnits.IsMetric(plan.Job.Units))
            {
                imperial++;
                faults.AddRange(
                    words
                        .Concat(sheathing.Findings.Select(f => f.Message))
                        .SelectMany(w => LengthsTold.Faults(w, plan.Job.Units))
                        .Select(f => $"{seed} notation: {f}")
                );
            }
        }

        Assert.True(sheets > 10 && imperial > 0);
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults of {sheets}:\n" + string.Join("\n", faults.Take(40))
        );
    }

    private static BottomPlan? Plan(int seed)
    {
        using var temp = new TempFolder();
        string path = ChanceJob.Write(seed, temp.File("job"));
        File.AppendAllText(path, ChanceCloth.Of(seed, File.ReadAllText(path)));
        return JobReader.Read(path) is { Job: { } job }
            ? BottomPlanner.Plan(job with { Nest = null }, null, CancellationToken.None).Plan
            : null;
    }
}
