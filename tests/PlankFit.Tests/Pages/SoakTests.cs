using System.Text.Json;
using PlankFit.App.Noting;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>
/// Ten hands at one job, each with its own line of news, changing it in every way that there is, as fast as they are answered (CsCheck_Iter=10000 for ten thousand
/// changes; the long run makes fewer). By itself, since what other tests hold would be counted too.
/// </summary>
[Collection(nameof(SoakTests))]
[CollectionDefinition(nameof(SoakTests), DisableParallelization = true)]
public sealed class SoakTests(ITestOutputHelper output)
{
    private const int Hands = 10;

    /// <summary>More than this is not kept of changes that are over, bytes: undo keeps some 32 MB of texts, and nothing else grows but the journal.</summary>
    private const long MostGrowth = 60_000_000;

    /// <summary>
    /// No hand is answered with an error, what stands at last is what all of them made, every note is in the journal once, and no more memory is held than after the first quarter.
    /// </summary>
    [Fact]
    public async Task TenHandsLeaveNothingBehind()
    {
        int changes = LongRuns.Of(0, 500);
        if (changes == 0)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        string text = served.OnDisk;
        SoakingHand[] hands =
        [
            .. Enumerable.Range(0, Hands).Select(i => new SoakingHand(served.Address, i, text)),
        ];
        try
        {
            Task<int>[] listening = [.. hands.Select(h => Task.Run(h.Listen))];
            await hands[0].Settled();
            int warm = changes / Hands / 4;
            await Task.WhenAll(hands.Select(h => Task.Run(() => h.Change(warm))));
            await hands[0].Settled();
            await hands[0].Saw(3);
            (long baseline, long set) = Held();
            TimeSpan before = Environment.CpuUsage.TotalTime;
            await Task.WhenAll(hands.Select(h => Task.Run(() => h.Change(changes / Hands - warm))));
            JsonElement state = await hands[0].Settled();
            (long held, long setNow) = Held();
            long grown = held - baseline;
            output.WriteLine(
                FormattableString.Invariant(
                    $"{changes} changes, {(Environment.CpuUsage.TotalTime - before).TotalSeconds:0} s of processor time after the first quarter, hands and all: held {baseline / 1e6:0.0} MB and {grown / 1e6:0.0} more; as the system counts {set / 1e6:0} and {setNow / 1e6:0} MB; {string.Join(", ", hands.SelectMany(h => h.Answers).GroupBy(a => a.Key).OrderBy(g => g.Key).Select(g => $"{g.Key} {g.Sum(a => a.Value)}"))}"
                )
            );
            Assert.Empty(state.GetProperty("faults").EnumerateArray());
            Assert.Equal(
                state.GetProperty("turn").GetInt32(),
                state.GetProperty("laid").GetInt32()
            );
            Assert.InRange(grown, long.MinValue, MostGrowth);

            // Every note once, as it was noted, and the last of a plank and field by its place is what holds.
            (string Client, long N, string Value)[] noted =
            [
                .. hands.SelectMany(h => h.Noted).Order(),
            ];
            ProgressTick[] journal =
            [
                .. (
                    await File.ReadAllLinesAsync(
                        Path.Combine(
                            Path.GetDirectoryName(served.JobPath)!,
                            ProgressJournal.FileName
                        ),
                        ServedJob.Stop
                    )
                ).Select(l =>
                    JsonSerializer.Deserialize<ProgressTick>(l, JsonSerializerOptions.Web)!
                ),
            ];
            Assert.Equal(noted, journal.Select(t => (t.Client, t.N, t.Value)).Order());
            Assert.Equal(
                Enumerable.Range(1, journal.Length).Select(i => (long)i),
                journal.Select(t => t.Seq)
            );
            JsonElement notes = await hands[0].Json("notes");
            Assert.Equal(
                journal.GroupBy(t => (t.Plank, t.Field)).Select(g => g.Last().Seq).Order(),
                notes
                    .GetProperty("notes")
                    .EnumerateArray()
                    .Select(t => t.GetProperty("seq").GetInt64())
            );

            Array.ForEach(hands, h => h.Leave());
            Assert.All(await Task.WhenAll(listening), heard => Assert.True(heard > 0));
        }
        finally
        {
            Array.ForEach(hands, h => h.Dispose());
        }
    }

    /// <summary>What is still in use, and what the system has given to this process, bytes.</summary>
    private static (long Live, long Set) Held()
    {
        long set = Environment.WorkingSet;
        return (GC.GetTotalMemory(forceFullCollection: true), set);
    }
}
