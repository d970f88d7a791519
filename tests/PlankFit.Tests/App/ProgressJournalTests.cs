using CsCheck;
using PlankFit.App.Noting;
using PlankFit.Draughting.Files;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>What is noted of planks is lost by no crash, doubled by no repetition, and settled the same way whoever was first.</summary>
public sealed class ProgressJournalTests
{
    private static ProgressTick Tick(
        string client,
        long n,
        string plank = "S1-07",
        string value = "fitted",
        string field = ProgressField.State,
        long seen = 0
    ) => new(client, n, plank, field, value, seen, "14:02");

    /// <summary>Cut off at every byte of its last lines, a journal opens with every note that was whole, and the next is written behind it.</summary>
    [Fact]
    public void ACrashAtAnyByteLosesNothingThatWasAnswered()
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using (var journal = ProgressJournal.Open(path))
        {
            journal.Add([Tick("a", 1), Tick("a", 2, "S1-08", "glued")]);
            journal.Add([Tick("b", 1, "S1-09", "3 mm short at chine ⅜", ProgressField.Off)]);
        }

        byte[] whole = File.ReadAllBytes(path);
        for (int cut = 0; cut <= whole.Length; cut++)
        {
            File.WriteAllBytes(path, whole[..cut]);
            int lines = whole[..cut].Count(b => b == '\n');
            using (var journal = ProgressJournal.Open(path))
            {
                Assert.Equal(lines, journal.Last.Count);
                Assert.Equal(lines, journal.Newest);
                Assert.True(
                    journal.Add([Tick("c", 1, "P1-01", "note", ProgressField.Note)]).Written
                );
            }

            using var again = ProgressJournal.Open(path);
            Assert.Equal(lines + 1, again.Last.Count);
            Assert.Equal("note", again.Last[("P1-01", ProgressField.Note)].Value);
        }
    }

    /// <summary>Two browsers that send their notes by chance, in pieces, turned about and again, leave what each has noted last and seen, and each note once.</summary>
    [Fact]
    public void SentTwiceAndTurnedAboutItIsTheSame() =>
        Gen.Select(
                Gen.Int[0, 1],
                Gen.Int[1, 4],
                Gen.Int[0, 2].Select(i => new[] { "", "fitted", "glued" }[i])
            )
            .Array[1, 20]
            .Select(Gen.Int[1, 5])
            .Sample(
                (noted, piece) =>
                {
                    using var folder = new TempFolder();
                    string path = folder.File(ProgressJournal.FileName);
                    ProgressTick[] ticks =
                    [
                        .. noted.Select(
                            (t, i) => Tick($"client {t.Item1}", i, $"S1-0{t.Item2}", t.Item3)
                        ),
                    ];
                    using (var journal = ProgressJournal.Open(path))
                    {
                        foreach (ProgressTick[] sent in ticks.Chunk(piece))
                        {
                            journal.Add(sent);
                            // The answer was lost, so it is sent once more.
                            journal.Add([.. sent.Reverse()]);
                        }
                    }

                    Assert.Equal(ticks.Length, File.ReadLines(path).Count());
                    using var read = ProgressJournal.Open(path);
                    Assert.Equal(ticks.Length, read.Newest);
                    foreach (IGrouping<string, ProgressTick> plank in ticks.GroupBy(t => t.Plank))
                    {
                        Assert.Equal(
                            plank.Last().Value,
                            read.Last[(plank.Key, ProgressField.State)].Value
                        );
                    }
                },
                iter: LongRuns.Of(20, 500)
            );

    /// <summary>A note that takes the place of one that its writer had not seen holds, and is told of; one that says the same, or was seen, is not.</summary>
    [Fact]
    public void WhatWasNotSeenIsTold()
    {
        using var folder = new TempFolder();
        using var journal = ProgressJournal.Open(folder.File(ProgressJournal.FileName));
        Assert.Empty(journal.Add([Tick("a", 1, value: "fitted")]).Told);
        Assert.Empty(journal.Add([Tick("b", 1, value: "fitted")]).Told);
        string told = Assert.Single(journal.Add([Tick("c", 1, value: "glued")]).Told);
        Assert.Contains("\"fitted\"", told, StringComparison.Ordinal);
        Assert.Contains("14:02", told, StringComparison.Ordinal);
        Assert.Empty(journal.Add([Tick("a", 2, value: "", seen: journal.Newest)]).Told);
        Assert.Equal("", journal.Last[("S1-07", ProgressField.State)].Value);
    }

    /// <summary>One that will not do keeps the others of its batch out as well, and the file as it was.</summary>
    [Theory]
    [InlineData("S1-07", "state", "sawn twice")]
    [InlineData("../x", "state", "fitted")]
    [InlineData("S1-07", "colour", "red")]
    [InlineData("S1-07", "note", "two\nlines")]
    public void WhatWillNotDoIsNotWritten(string plank, string field, string value)
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using var journal = ProgressJournal.Open(path);
        Assert.False(journal.Add([Tick("a", 1), Tick("a", 2, plank, value, field)]).Written);
        Assert.Empty(journal.Last);
        Assert.Equal(0, new FileInfo(path).Length);
        Assert.False(
            journal.Add([Tick("a", 1, value: new string('x', 501), field: "note")]).Written
        );
    }

    /// <summary>Two programs do not write one journal.</summary>
    [Fact]
    public void OnlyOneWrites()
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using var journal = ProgressJournal.Open(path);
        Assert.Throws<OutputException>(() => ProgressJournal.Open(path));
    }

    /// <summary>A line of another hand's stays, and is no note.</summary>
    [Fact]
    public void WhatIsNoNoteIsPassedOver()
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        File.WriteAllText(
            path,
            "{\"plank\": 3}\nnothing\n\nnull\n{}\n{\"client\":\"a\",\"n\":1,\"plank\":\"S1-07\",\"field\":\"state\",\"value\":\"glued\"}\n"
        );
        using (var journal = ProgressJournal.Open(path))
        {
            Assert.Empty(journal.Last);
            journal.Add([Tick("a", 1)]);
        }

        Assert.StartsWith(
            "{\"plank\": 3}\nnothing\n",
            File.ReadAllText(path),
            StringComparison.Ordinal
        );
        using var again = ProgressJournal.Open(path);
        Assert.Single(again.Last);
        // Which they are is said; an empty line is none.
        Assert.Contains(
            "lines 1, 2, 4, 5, 6 are no notes",
            again.StrangeTold,
            StringComparison.Ordinal
        );
    }

    private const string Blank = "seam length | S1-10 after | starboard | ";

    private static ProgressTick Read(
        string client,
        long n,
        string value,
        int time = 1,
        long seen = 0
    ) => Tick(client, n, "", value, Blank + time, seen) with { ShouldMm = 1490.5 };

    /// <summary>One blank read in two browsers at once is two readings; sent again it is no third. What a browser has seen it may put right.</summary>
    [Fact]
    public void TwoWhoReadOneBlankHaveReadItTwice()
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using (var journal = ProgressJournal.Open(path))
        {
            journal.Add([Read("a.1", 1, "1491 mm")]);
            for (int i = 0; i < 2; i++)
            {
                (bool written, _) = journal.Add([Read("b.1", 1, "1493 mm")]);
                Assert.True(written);
            }

            Assert.Equal(["1491 mm", "1493 mm"], Values(journal));
            // Another page of the same browser is the same hand.
            Assert.Empty(journal.Add([Read("a.2", 1, "1492 mm")]).Told);
            Assert.Equal(["1492 mm", "1493 mm"], Values(journal));
            // Taken back unseen it stays; seen it goes.
            Assert.NotEmpty(journal.Add([Read("c.1", 1, "")]).Told);
            Assert.Equal(["1492 mm", "1493 mm"], Values(journal));
            Assert.Empty(journal.Add([Read("c.1", 2, "", seen: journal.Newest)]).Told);
        }

        using var again = ProgressJournal.Open(path);
        Assert.Equal(["", "1493 mm"], Values(again));
        Assert.Equal(1490.5, again.Last[("", Blank + 2)].ShouldMm);
        Assert.Equal(
            [true, false],
            new[] { ("a.2", 1L), ("b.1", 1L) }.Select(m =>
                again.Replaced[ProgressJournal.MarkOf(m.Item1, m.Item2)]
            )
        );
    }

    /// <summary>
    /// Another's 1490 stands in a blank before what this hand read there, out of reach, comes in: all that it typed goes beside that one as it was meant, whether it comes at once
    /// or piece by piece, and whether the page was loaded anew meanwhile.
    /// </summary>
    [Theory]
    // Two readings, one in each blank: both hold.
    [InlineData("1: 1491 mm, 2: 1492 mm", "1490 mm, 1491 mm, 1492 mm")]
    // Put right: it is one reading.
    [InlineData("1: 1491 mm, 1: 1419 mm", "1490 mm, 1419 mm")]
    [InlineData("1: 1491 mm, 2: 1492 mm, 1: 1419 mm, 2: 1493 mm", "1490 mm, 1419 mm, 1493 mm")]
    // Taken back: none.
    [InlineData("1: 1491 mm, 1: ", "1490 mm, ")]
    [InlineData("1: , 1: 1491 mm", "1490 mm, 1491 mm")]
    public void WhatIsPutRightFollows(string typed, string holds)
    {
        ProgressTick[] notes =
        [
            .. typed
                .Split(", ")
                .Select(
                    (t, i) =>
                        Read(
                            i % 2 == 0 ? "a.1" : "a.2",
                            i,
                            t.Split(": ")[1],
                            int.Parse(t[..1], System.Globalization.CultureInfo.InvariantCulture)
                        )
                ),
        ];
        foreach (bool isOnePage in new[] { true, false })
        {
            foreach (int piece in new[] { 1, 2, notes.Length })
            {
                using var folder = new TempFolder();
                string path = folder.File(ProgressJournal.FileName);
                using (var journal = ProgressJournal.Open(path))
                {
                    journal.Add([Read("b.1", 1, "1490 mm")]);
                }

                foreach (ProgressTick[] sent in notes.Chunk(piece))
                {
                    // The server is started anew between.
                    using var journal = ProgressJournal.Open(path);
                    journal.Add([.. sent.Select(n => isOnePage ? n with { Client = "a.1" } : n)]);
                }

                using var read = ProgressJournal.Open(path);
                Assert.Equal(holds, string.Join(", ", Values(read)));
            }
        }
    }

    /// <summary>Who has seen where his reading went, and types in the blank that another's stands in, puts that one right.</summary>
    [Fact]
    public void WhatWasSeenIsPutRightWhereItStands()
    {
        using var folder = new TempFolder();
        using var journal = ProgressJournal.Open(folder.File(ProgressJournal.FileName));
        journal.Add([Read("b.1", 1, "1490 mm"), Read("a.1", 1, "1491 mm")]);
        Assert.Empty(journal.Add([Read("a.1", 2, "1489 mm", seen: journal.Newest)]).Told);
        Assert.Equal(["1489 mm", "1491 mm"], Values(journal));
        // Another page of that browser that has seen the first alone, as it stands there.
        Assert.Empty(journal.Add([Read("a.3", 1, "1488 mm", seen: 1)]).Told);
        Assert.Equal(["1488 mm", "1491 mm"], Values(journal));
    }

    private static string[] Values(ProgressJournal journal) =>
        [
            .. journal
                .Last.Where(l => l.Key.Plank == "")
                .OrderBy(l => l.Key.Field)
                .Select(l => l.Value.Value),
        ];

    /// <summary>Readings cut off at every byte: every whole one is there, and the next is written behind it.</summary>
    [Fact]
    public void AReadingThatWasAnsweredIsLostByNoCrash()
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using (var journal = ProgressJournal.Open(path))
        {
            journal.Add([Read("a.1", 1, "1491 mm")]);
            journal.Add([Read("a.1", 2, "4'-10 11/16\"", time: 2)]);
        }

        byte[] whole = File.ReadAllBytes(path);
        for (int cut = 0; cut <= whole.Length; cut += 3)
        {
            File.WriteAllBytes(path, whole[..cut]);
            int lines = whole[..cut].Count(b => b == '\n');
            using (var journal = ProgressJournal.Open(path))
            {
                Assert.Equal(lines, journal.Last.Count);
                Assert.True(journal.Add([Read("b.1", 1, "12 mm", time: 3)]).Written);
            }

            using var again = ProgressJournal.Open(path);
            Assert.Equal(lines + 1, again.Last.Count);
        }
    }

    [Theory]
    [InlineData("seam length | S1-10 after | starboard | 1", "1491")]
    [InlineData("seam length | S1-10 after | starboard | 1", "=1+1")]
    [InlineData("seam length | S1-10 after | starboard | 1", "1e999 mm")]
    [InlineData("state", "fitted")]
    [InlineData("depth | S1-10 | both | 1", "1 mm")]
    public void WhatIsNoReadingIsNotWritten(string field, string value)
    {
        using var folder = new TempFolder();
        string path = folder.File(ProgressJournal.FileName);
        using var journal = ProgressJournal.Open(path);
        Assert.False(journal.Add([Tick("a", 1, "", value, field)]).Written);
        Assert.False(journal.Add([Read("a", 2, "1 mm") with { ShouldMm = double.NaN }]).Written);
        Assert.Equal(0, new FileInfo(path).Length);
    }
}
