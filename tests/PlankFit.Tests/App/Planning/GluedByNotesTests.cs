using System.Collections.Immutable;
using PlankFit.App.Noting;
using PlankFit.App.Planning;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Planning;

/// <summary>What the page has as glued is down for whoever plans the rest, the command line as well, and also while the page is open.</summary>
public sealed class GluedByNotesTests
{
    private static readonly PlankId First = PlankId.Parse("S1-20")!.Value,
        Second = PlankId.Parse("P1-21")!.Value;

    private static ProgressTick Tick(
        long n,
        PlankId plank,
        string at,
        string value = "glued",
        string field = ProgressField.State
    ) => new("a", n, plank.ToString(), field, value, 0, at);

    /// <summary>Days are counted from that of the first plank; a note that was taken back, or is of something else, is none.</summary>
    [Fact]
    public void TheJournalIsReadWhileThePageHoldsIt()
    {
        using var folder = new TempFolder();
        Job job = GluedLaunch.Job(3);
        string path = folder.File("job.toml");
        (Job none, ImmutableArray<Finding> nothing) = ProgressBeside.Of(job, path);
        Assert.Same(job, none);
        Assert.Empty(nothing);
        using var page = ProgressJournal.Open(folder.File(ProgressJournal.FileName));
        page.Add([
            Tick(1, First, "2026-05-03 14:02"),
            Tick(2, Second, "2026-05-05 09:30"),
            Tick(3, PlankId.Parse("S1-22")!.Value, "2026-05-02 09:30"),
            Tick(4, PlankId.Parse("S1-22")!.Value, "2026-05-05 09:31", "fitted"),
            Tick(5, PlankId.Parse("S1-23")!.Value, "2026-05-01 09:31", "glued", ProgressField.Note),
            Tick(6, PlankId.Parse("ST1-03")!.Value, "2026-05-03 09:31"),
        ]);
        (Job with, ImmutableArray<Finding> told) = ProgressBeside.Of(job, path);
        GlueProgress done = with.Glue!.Done;
        Assert.Equal([First, Second], done.Rows.Select(r => r.Plank!.Value).Order());
        Assert.Equal((14 * 60) + 2, done.DownAt(First));
        Assert.Equal((2 * 1440) + (9 * 60) + 30, done.DownAt(Second));
        Assert.Equal(ProgressJournal.FileName, done.Source);
        Assert.Contains("2026-05-03", Assert.Single(told).Message, StringComparison.Ordinal);
        Assert.NotEqual(job.Revision, with.Revision);

        // A note that gluing does not go by leaves the revision as it is.
        page.Add([Tick(7, First, "2026-05-06 09:30", "3 mm short", ProgressField.Off)]);
        Assert.Equal(with.Revision, ProgressBeside.Of(job, path).Job.Revision);
    }

    /// <summary>progress.csv goes before it; what it lacks is told and is not put in by half.</summary>
    [Fact]
    public void TheFileGoesBeforeAndWhatItLacksIsTold()
    {
        using var folder = new TempFolder();
        Job job = GluedLaunch.Job(3);
        using (var page = ProgressJournal.Open(folder.File(ProgressJournal.FileName)))
        {
            page.Add([Tick(1, First, "14:02"), Tick(2, Second, "14:10")]);
        }

        (Job with, ImmutableArray<Finding> told) = ProgressBeside.Of(job, folder.File("job.toml"));
        Assert.Equal((14 * 60) + 10, with.Glue!.Done.Latest);
        Assert.Contains("on day 1", Assert.Single(told).Message, StringComparison.Ordinal);

        File.WriteAllText(
            folder.File("progress.csv"),
            $"id,done-at,batch,temperature\n{First},\"day 2, 09:00\",B01,\n"
        );
        (with, told) = ProgressBeside.Of(job, folder.File("job.toml"));
        Assert.Equal(1440 + 540, with.Glue!.Done.Latest);
        Assert.Null(with.Glue.Done.DownAt(Second));
        Finding lacking = Assert.Single(told);
        Assert.Equal((Severity.Warning, "progress.csv"), (lacking.Severity, lacking.Where));
        Assert.Contains($"{Second}, which is glued", lacking.Message, StringComparison.Ordinal);
    }

    /// <summary>A plank that the bottom does not have is told by name, whichever file has it.</summary>
    [Fact]
    public void APlankThatIsNoneIsTold()
    {
        Job job = GluedLaunch.Job(3);
        PlankId strange = PlankId.Parse("S1-94")!.Value;
        var done = new GlueProgress([
            new(strange, null, Side.Starboard, 600),
            new(First, null, Side.Starboard, 600),
        ]);
        BottomPlan plan = GluedLaunch.Of(job with { Glue = job.Glue! with { Done = done } });
        Finding told = Assert.Single(
            plan.Glue!.Findings,
            f => f.Message.Contains("no such plank", StringComparison.Ordinal)
        );
        Assert.StartsWith("S1-94: ", told.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Cloth under planks that are glued is on, on both sides, and is not planned to be wetted out beneath them; that it is taken so is told. Its hour is a guess, by which no
    /// bonding window is open: what is still to go on it waits until it has cured and is keyed.
    /// </summary>
    [Fact]
    public void ClothUnderGluedPlanksIsNotWettedAgainAndItsWindowIsNotGuessed()
    {
        using var folder = new TempFolder();
        Job job = GluedLaunch.Job(3);
        Mix resin = job.Glue!.Resin!;
        job = job with
        {
            Glue = job.Glue with
            {
                Resin = resin with
                {
                    Clocks = resin.Clocks with { Recoat = new(Always(1), Always(1e5)) },
                },
            },
        };
        using (var page = ProgressJournal.Open(folder.File(ProgressJournal.FileName)))
        {
            page.Add([
                Tick(1, PlankId.Parse("S2-20")!.Value, "2026-05-04 10:00"),
                Tick(2, PlankId.Parse("S2-21")!.Value, "2026-05-04 09:30"),
                Tick(3, First, "2026-05-03 14:02"),
            ]);
        }

        (Job with, _) = ProgressBeside.Of(job, folder.File("job.toml"));
        GluePlan plan = GluedLaunch.Of(with).Glue!;
        Assert.All(
            new[] { Side.Starboard, Side.Port },
            s => Assert.Equal(1440 + (9 * 60) + 30, plan.Spec.Done.WettedAt("core cloth", s))
        );
        Assert.Contains(
            plan.Findings,
            f =>
                f.Severity == Severity.Warning
                && f.Message.Contains(
                    "core cloth starboard, core cloth port",
                    StringComparison.Ordinal
                )
        );
        Assert.Empty(plan.Stages.Single(s => s.Layer == "core cloth").Batches);
        // Of the inner skin one plank is noted: the others would be glued beneath the cloth, and that is told.
        Finding beneath = Assert.Single(
            plan.Findings,
            f => f.Message.Contains("planned to be glued all the same", StringComparison.Ordinal)
        );
        Assert.StartsWith(
            "S1-01 to 19, S1-21 to 41, P1-01 to 41: ",
            beneath.Message,
            StringComparison.Ordinal
        );
        HoldPoint cured = plan
            .Stages.Single(s => s.Layer == "outer")
            .Before.Single(h => h.What == "the cloth has cured");
        Assert.True(cured.NotBefore > 1440 + (9 * 60) + 30 + 60);

        // Where its rows are written the same cloth still bonds, and nothing is keyed.
        var written = new GlueProgress([
            .. with.Glue!.Done.Rows,
            new(null, "core cloth", Side.Starboard, 2000),
            new(null, "core cloth", Side.Port, 2000),
        ]);
        GluePlan told = GluedLaunch
            .Of(with with { Glue = with.Glue with { Done = written } })
            .Glue!;
        Assert.DoesNotContain(
            told.Stages.Single(s => s.Layer == "outer").Before,
            h => h.What == "the cloth has cured"
        );
    }

    /// <summary>A slip of the pen puts no cloth on.</summary>
    [Fact]
    public void AStrangePlankPutsNoClothUnderItself()
    {
        Job job = GluedLaunch.Job(3);
        var done = new GlueProgress([
            new(PlankId.Parse("S2-94")!.Value, null, Side.Starboard, 40 * 1440),
            new(First, null, Side.Starboard, 600),
        ]);
        using var folder = new TempFolder();
        File.WriteAllText(
            folder.File("progress.csv"),
            $"id,done-at,batch,temperature\nS2-94,\"day 40, 09:00\",,\n{First},\"day 1, 10:00\",,\n"
        );
        (Job with, _) = ProgressBeside.Of(job, folder.File("job.toml"));
        GluePlan plan = GluedLaunch.Of(with).Glue!;
        Assert.Null(plan.Spec.Done.WettedAt("core cloth", Side.Starboard));
        Assert.DoesNotContain(
            plan.Findings,
            f => f.Message.Contains("planned to be glued all the same", StringComparison.Ordinal)
        );
        Assert.True(plan.Batches.Min(b => b.MixAt) < 2 * 1440);
        Assert.Equal(
            new[] { Side.Starboard, Side.Port },
            plan.Stages.Single(s => s.Layer == "core cloth").Batches.Select(b => b.Side).Distinct()
        );
        Assert.Equal(
            plan.Batches.Min(b => b.MixAt),
            GluedLaunch
                .Of(job with { Glue = job.Glue! with { Done = done } })
                .Glue!.Batches.Min(b => b.MixAt)
        );
    }

    private static ClockLaw Always(double minutes) =>
        ClockLaw.Through([new(10, minutes), new(30, minutes)])!;

    /// <summary>A phone whose clock is wrong moves no plan by years: its planks are down with the last of the others, and named.</summary>
    [Theory]
    [InlineData("1970-01-01 00:03")]
    [InlineData("9999-05-03 10:00")]
    public void AWrongClockMovesNoPlan(string at)
    {
        var noted = GluedByNotes.Of(
            [
                Tick(1, First, "2026-05-03 14:02"),
                Tick(2, Second, at),
                Tick(3, PlankId.Parse("S1-22")!.Value, "2026-05-05 09:30"),
            ],
            GluedLaunch.Job(3).Layers
        );
        Assert.Equal("2026-05-03", noted.FirstDay);
        Assert.Equal(Second.ToString(), GluedByNotes.Names(noted.Doubtful));
        double last = (2 * 1440) + (9 * 60) + 30;
        Assert.Equal(last, noted.Rows.Max(r => r.At));
        Assert.Equal(last, noted.Rows.Single(r => r.Plank == Second).At);
    }

    /// <summary>A coat that the job does not ask for is told.</summary>
    [Fact]
    public void ACoatThatIsNoneIsTold()
    {
        Job job = GluedLaunch.Job(3);
        var done = new GlueProgress([
            new(null, "core cloth", Side.Starboard, 600) { Coat = 1 },
            new(First, null, Side.Starboard, 600),
        ]);
        BottomPlan plan = GluedLaunch.Of(job with { Glue = job.Glue! with { Done = done } });
        Assert.Contains(
            plan.Glue!.Findings,
            f => f.Message.StartsWith("core cloth coat 1: ", StringComparison.Ordinal)
        );
        // Nor has its hour gone by.
        var later = new GlueProgress([
            new(null, "core cloth", Side.Starboard, 9000) { Coat = 1 },
            new(PlankId.Parse("S1-94")!.Value, null, Side.Starboard, 9000),
            new(First, null, Side.Starboard, 600),
        ]);
        Assert.Equal(
            plan.Glue.Batches.Min(b => b.MixAt),
            GluedLaunch
                .Of(job with { Glue = job.Glue! with { Done = later } })
                .Glue!.Batches.Min(b => b.MixAt)
        );
    }

    [Fact]
    public void AJournalThatCannotBeReadIsAFaultAndNotPassedOver()
    {
        using var folder = new TempFolder();
        Directory.CreateDirectory(folder.File(ProgressJournal.FileName));
        (_, ImmutableArray<Finding> told) = ProgressBeside.Of(
            GluedLaunch.Job(3),
            folder.File("job.toml")
        );
        Assert.Equal(Severity.Error, Assert.Single(told).Severity);
    }
}
