using PlankFit.Export.Glue;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Glue;

/// <summary>Sheets of gluing of crews, products and days by chance, in both kinds of units: nothing stands upon anything else, and every batch of a chart is named on it.</summary>
public sealed class GlueSheetsByChanceTests
{
    [Fact]
    public void EverySheetCanBeRead()
    {
        List<string> faults = [];
        int sheets = 0,
            told = 0;
        for (int seed = 1; seed <= LongRuns.Of(2, 60); seed++)
        {
            Job job = ChanceGlue.Added(GluedLaunch.Plan.Job, seed);
            BottomPlan plan = GluedLaunch.Of(seed % 2 == 0 ? Wordy(job) : job);
            Drawing[] all = [.. GlueSheets.Of(plan, plan.Glue!)];
            sheets += all.Length;
            faults.AddRange(BlockCheck.AllFaults(all, $"{seed}"));
            string[] chart =
            [
                .. all.Where(s => s.Title.Contains("chart", StringComparison.Ordinal))
                    .SelectMany(s => s.Shapes.OfType<Lettering>())
                    .Select(l => l.Text),
            ];
            foreach (GlueSession session in plan.Glue!.Sessions)
            {
                bool alone = session.Batches.All(b => chart.Contains(b.Name));
                told += alone ? 0 : 1;
                // Else the first and the last of each row stand at its end.
                if (
                    !alone
                    && !chart.Any(c =>
                        c.StartsWith(session.Batches[0].Name, StringComparison.Ordinal)
                    )
                )
                {
                    faults.Add($"{seed} session {session.Number}: {session.Batches[0].Name} lost");
                }
            }
        }

        Assert.True(sheets > 20 && (!LongRuns.Asked || told > 0));
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults of {sheets}:\n" + string.Join("\n", faults.Take(40))
        );
    }

    /// <summary>In feet and inches, with all that a card may have on it.</summary>
    private static Job Wordy(Job job) =>
        job with
        {
            Units = LengthUnit.Foot,
            Glue = job.Glue! with
            {
                Cup = new(30, 0.1) { RimMm = 150 },
                Fairing = new(0.8, 0.3),
                Fillets = [new("the chine log, inside and out", new(12, 100), 18000)],
                Fillers =
                [
                    new("colloidal silica", FillerInto.All, new(40, 60, 90)),
                    new("hollow glass", FillerInto.Fairing, new(150, 250, 350)),
                ],
                Crew = job.Glue.Crew! with { HeldBy = "spring clamps and battens" },
            },
        };

    /// <summary>A shift of 16 hours with batches of a minute: no bar has room for its name.</summary>
    [Fact]
    public void WhereBarsAreTooShortTheirNamesStandAtTheEndOfTheRow()
    {
        GlueBatch[] batches =
        [
            .. Enumerable
                .Range(0, 90)
                .Select(i => new GlueBatch(
                    $"B{i + 1:00}",
                    "cloth",
                    i < 45 ? Side.Starboard : Side.Port,
                    300 + (10 * i),
                    100,
                    default,
                    new(308 + (10 * i), 400, 312 + (10 * i), 400, default)
                )),
        ];
        var session = new GlueSession(1, "cloth", 300, 1202, 1260, [.. batches])
        {
            Use = GlueUse.WettingOut,
        };
        var bars = SessionBars.Of(session, 200, 100);
        Assert.True(bars.Told);
        Assert.Equal(batches.Length, bars.Lanes.Sum(l => l.Batches.Length));
        Assert.All(
            bars.Lanes,
            l =>
                Assert.All(
                    l.Batches.Zip(l.Batches.Skip(1)),
                    p => Assert.True(p.Second.MixAt >= p.First.Clocks.DownAt)
                )
        );
        Assert.False(
            SessionBars.Of(session with { Batches = [.. batches.Take(6)], To = 360 }, 200, 100).Told
        );
    }
}
