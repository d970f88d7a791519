using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>The moving of a run's files, stopped after every single step as a kill would stop it, and mended by the next run.</summary>
public sealed class MoveStepsTests : IDisposable
{
    private const string Stage = ".plankfit-writing";
    private readonly TempFolder temp = new();
    private readonly string folder;
    private readonly string[] old,
        done;

    /// <summary>The same folder as every step left it; the first is that with nothing moved yet.</summary>
    private readonly List<string> stops = [];

    public MoveStepsTests()
    {
        folder = temp.File("out");
        Run("check", ("lines.svg", "lines"));
        Run(
            "lay",
            ("a", "old a"),
            ("dxf/r12/x", "old x"),
            ("dxf/r12/gone", "old"),
            ("cards/png/only", "old"),
            ("zero", "")
        );
        File.WriteAllText(Path.Combine(folder, "my notes"), "mine");
        old = FolderState.Of(folder);
        using (OutputFolder run = Begin(folder, "lay"))
        {
            run.Write("a", "new a"u8.ToArray());
            run.Write("dxf/r12/x", "new x"u8.ToArray());
            run.Write("patterns/tiled/y", "new y"u8.ToArray());
            run.Write("lines.svg", "taken over"u8.ToArray());
            FileMover mover = run.Ready();
            Stop();
            foreach (MoveStep step in mover.Steps())
            {
                step.Do();
                Stop();
            }
        }

        done = FolderState.Of(folder);
        Assert.Contains(done, l => l.StartsWith("patterns/tiled/y ", StringComparison.Ordinal));
        Assert.DoesNotContain(
            done,
            l => l.Contains("gone") || l.Contains("cards") || l.Contains(Stage)
        );
        Assert.True(stops.Count > 12);
    }

    public void Dispose() => temp.Dispose();

    [Fact]
    public void AfterAKillBetweenAnyTwoStepsTheNextRunFinishesTheMove()
    {
        Assert.All(
            stops,
            stop =>
            {
                string? told = UnfinishedMove.Mend(stop);
                Assert.Equal(done, FolderState.Of(stop));
                Assert.Equal(stop != stops[^1], told is not null);
                Assert.Null(UnfinishedMove.Mend(stop));
            }
        );
    }

    [Fact]
    public void ASecondKillWhileItIsMendedIsMendedToo() =>
        // By default after every third step of the first run.
        Assert.All(
            stops.Where((_, i) => LongRuns.Asked || i % 3 == 0),
            s => MendedAfterEveryStep(s, goesBack: false, done)
        );

    [Fact]
    public void EveryVerbThatWritesMendsBeforeItWrites()
    {
        foreach (string stop in stops)
        {
            using (OutputFolder run = Begin(stop, "keel"))
            {
                Assert.False(File.Exists(Path.Combine(stop, Stage, "journal")));
            }

            Assert.Equal(done, FolderState.Of(stop));
        }
    }

    /// <summary>A loss of power may leave a new file without its content: what was moved is taken back, after a second and a third kill too.</summary>
    [Fact]
    public void WhereANewFileIsNotWholeTheOldRunComesBack()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        int spoiled = 0;
        foreach (string stop in stops)
        {
            string staged = Path.Combine(stop, Stage, "new", "patterns", "tiled", "y");
            if (File.Exists(staged))
            {
                File.WriteAllText(staged, "");
                MendedAfterEveryStep(stop, goesBack: true, old);
                spoiled++;
            }
        }

        Assert.True(spoiled > 6);
    }

    [Fact]
    public void AFileThatTheUserPutInTheWayMeanwhileIsKeptAndTheOldRunComesBack()
    {
        int kept = 0;
        foreach (
            string stop in stops.Where(s =>
                File.Exists(Path.Combine(s, Stage, "new", "patterns", "tiled", "y"))
            )
        )
        {
            string mine = Path.Combine(stop, "patterns", "tiled", "y");
            Directory.CreateDirectory(Path.GetDirectoryName(mine)!);
            File.WriteAllText(mine, "mine");
            Assert.Contains("taken back", UnfinishedMove.Mend(stop)!, StringComparison.Ordinal);
            Assert.Equal("mine", File.ReadAllText(mine));
            Directory.Delete(Path.Combine(stop, "patterns"), recursive: true);
            Assert.Equal(old, FolderState.Of(stop));
            kept++;
        }

        Assert.True(kept > 6);
    }

    [Fact]
    public void ANewFileThatTheUserWorkedOnMeanwhileIsNotWrittenOver()
    {
        string[] placed =
        [
            .. stops
                .Take(stops.Count - 1)
                .Where(s => !File.Exists(Path.Combine(s, Stage, "new", "a"))),
        ];
        Assert.True(placed.Length > 6);
        foreach (string stop in placed)
        {
            string worked = Path.Combine(stop, "a");
            File.WriteAllText(worked, "worked on");
            OutputException refused = Assert.Throws<OutputException>(() => Begin(stop, "lay"));
            Assert.Equal(worked, refused.Path);
            Assert.True(refused.HalfDone);
            Assert.Contains("Move it away", refused.Message, StringComparison.Ordinal);
            Assert.Null(UnfinishedMove.Mend(stop));
            Assert.Equal("worked on", File.ReadAllText(worked));
            File.Delete(worked);
            Assert.Contains("taken back", UnfinishedMove.Mend(stop)!, StringComparison.Ordinal);
            Assert.Equal(old, FolderState.Of(stop));
        }
    }

    [Fact]
    public void AJournalThatWasDamagedOrReachesOutsideMovesNothing()
    {
        string journal = Path.Combine(stops[3], Stage, "journal");
        string text = File.ReadAllText(journal);
        string[] Moved() =>
            [.. FolderState.Of(stops[3]).Where(l => !l.Contains("/lock ") && !l.Contains("/who "))];
        string[] before = Moved();
        for (int i = 0; i < text.Length; i += 7)
        {
            char[] spoiled = text.ToCharArray();
            spoiled[i] ^= (char)1;
            Assert.Null(MoveJournal.Parse(new(spoiled)));
        }

        Assert.Null(MoveJournal.Parse(text[..^1]));
        Assert.NotNull(MoveJournal.Parse(text));
        var outside = new MoveJournal([new("../precious", null, new(1, new('0', 64)))], []);
        Assert.Null(MoveJournal.Parse(outside.ToText()));

        File.WriteAllText(journal, text[..^5]);
        OutputException refused = Assert.Throws<OutputException>(() => Begin(stops[3], "lay"));
        Assert.Contains("is damaged", refused.Message, StringComparison.Ordinal);
        Assert.True(refused.HalfDone);
        File.WriteAllText(journal, text);
        Assert.Equal(before, Moved());
    }

    [Fact]
    public void AStepThatIsRefusedHasAllTakenBackAtOnce()
    {
        string other = stops[^1];
        UnfinishedMove.Mend(other);
        string[] before = FolderState.Of(other);
        using (OutputFolder run = Begin(other, "lay"))
        {
            run.Write("a", "newer"u8.ToArray());
            run.Write("b/c", "new"u8.ToArray());
            run.Write("m", "new"u8.ToArray());
            FileMover mover = run.Ready();
            Directory.CreateDirectory(Path.Combine(other, "m"));
            OutputException refused = Assert.Throws<OutputException>(mover.Run);
            Assert.Equal(Path.Combine(other, "m"), refused.Path);
            Assert.False(refused.HalfDone);
        }

        Directory.Delete(Path.Combine(other, "m"));
        Assert.Equal(before, FolderState.Of(other));
    }

    /// <summary>Within one step: the old file is kept under a second name, the new one not yet moved over it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AfterAKillWithinAStepNothingIsLost(bool goesBack)
    {
        string stop = stops[1];
        string kept = Path.Combine(stop, Stage, "old", "a");
        Assert.True(File.Exists(Path.Combine(stop, Stage, "new", "a")));
        Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
        OutsideTool.Run("ln", "coreutils", Path.Combine(stop, "a"), kept);
        if (goesBack)
        {
            File.WriteAllText(Path.Combine(stop, Stage, "new", "lines.svg"), "");
        }

        UnfinishedMove.Mend(stop);
        Assert.Equal(goesBack ? old : done, FolderState.Of(stop));
    }

    /// <summary>Copies the folder after every step of its mending, and mends each copy.</summary>
    private static void MendedAfterEveryStep(string stop, bool goesBack, string[] wanted)
    {
        using (var stage = StageFolder.Hold(stop, "lay"))
        {
            if (UnfinishedMove.Mover(stage) is { } mover)
            {
                Assert.Equal(goesBack, mover.GoesBack);
                int k = 0;
                foreach (MoveStep step in mover.Steps())
                {
                    step.Do();
                    string again = FolderState.Copy(stop, $"{stop}-{k++}");
                    UnfinishedMove.Mend(again);
                    Assert.Equal(wanted, FolderState.Of(again));
                }
            }
        }

        Assert.Equal(wanted, FolderState.Of(stop));
    }

    private void Stop() => stops.Add(FolderState.Copy(folder, temp.File($"stop{stops.Count}")));

    private void Run(string command, params (string Name, string Content)[] files)
    {
        using OutputFolder run = Begin(folder, command);
        foreach ((string name, string content) in files)
        {
            run.Write(name, System.Text.Encoding.UTF8.GetBytes(content));
        }

        run.Commit();
    }

    private static OutputFolder Begin(string folder, string command) =>
        OutputFolder.Begin(folder, command, TestContext.Current.CancellationToken);
}
