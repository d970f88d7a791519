using System.Text.Json;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>A master that is moved by hand is that of its own layer, whatever panels a job has and however its layers stand in the file.</summary>
public sealed class MasterAddressTests
{
    private static string Reordered(string text)
    {
        string[] parts = text.Split("[[layer]]");
        // The topside's layers before the bottom's.
        return parts[0]
            + string.Concat(
                parts
                    .Skip(1)
                    .Select((p, i) => (p, i))
                    .OrderBy(p => p.p.Contains("panel =", StringComparison.Ordinal) ? 0 : 1)
                    .ThenBy(p => p.i)
                    .Select(p => "[[layer]]" + p.p)
            );
    }

    public static TheoryData<bool> Orders => LongRuns.FirstOf(true, false);

    [Theory]
    [MemberData(nameof(Orders))]
    public async Task EveryMasterIsThatOfItsLayer(bool isReordered)
    {
        string LastTablesApart(string text)
        {
            // What stands after the last layer goes with the head, so that layers can be put in another order.
            int last = text.LastIndexOf("[[layer]]", StringComparison.Ordinal),
                after = text.IndexOf("\n[", last + 9, StringComparison.Ordinal),
                first = text.IndexOf("[[layer]]", StringComparison.Ordinal);
            return after < 0
                ? text
                : text[..first] + text[(after + 1)..] + "\n" + text[first..(after + 1)];
        }

        await using ServedJob served = await ServedJob.Of(
            "day-launch",
            t => isReordered ? Reordered(LastTablesApart(t)) : t
        );
        JsonElement state = await served.Tried(1);
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
        JsonElement masters = await served.Json("job/1/masters/1");
        Assert.True(masters.GetArrayLength() > 1);
        foreach (JsonElement master in masters.EnumerateArray())
        {
            string layer = master.GetProperty("layer").GetString()!;
            double x = master.GetProperty("askedX").GetDouble() + 40;
            using HttpResponseMessage answer = await served.Post(
                "job/1/wish",
                new { address = master.GetProperty("address").GetString(), x }
            );
            Assert.True(answer.IsSuccessStatusCode, layer);
            int turn = await ServedJob.Turn(answer);
            await served.Tried(turn);
            JsonElement now = await served.Json($"job/1/masters/{turn}");
            foreach (
                (JsonElement was, JsonElement after) in masters
                    .EnumerateArray()
                    .Zip(now.EnumerateArray())
            )
            {
                string code = was.GetProperty("layer").GetString()!;
                double moved =
                    after.GetProperty("askedX").GetDouble() - was.GetProperty("askedX").GetDouble();
                Assert.Equal(code == layer ? 40 : 0, moved, 1.0);
            }

            using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
            await served.Tried(await ServedJob.Turn(undone));
        }
    }
}
