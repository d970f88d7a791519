using System.Net;
using System.Text.Json;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>The search for a plan of cutting as the page asks for it: whose boards they are, what is told of it, and that a stop keeps what there is.</summary>
public sealed class BoardSearchTests
{
    /// <summary>Wide boards enough, and rounds instead of seconds, so that it ends by itself.</summary>
    private static async Task<ServedJob> Stocked(string effort = "rounds = 1")
    {
        ServedJob served = await ServedJob.Small(text =>
            $"{text}\n[nest]\nstock = \"stock.csv\"\n{effort}\n"
        );
        // Not there when the page begins: it is followed as any file that the job names.
        await File.WriteAllTextAsync(
            Path.Combine(Path.GetDirectoryName(served.JobPath)!, "stock.csv"),
            "board,count,length,width,thickness\nB,40,3000,220,5\n",
            ServedJob.Stop
        );
        for (JsonElement state = await served.Tried(1); ; )
        {
            if (
                state.GetProperty("faults").GetArrayLength() == 0
                && state.GetProperty("laid").ValueKind == JsonValueKind.Number
            )
            {
                return served;
            }

            state = await served.Tried(state.GetProperty("turn").GetInt32() + 1);
        }
    }

    private static async Task<JsonElement> Ended(ServedJob served)
    {
        while (true)
        {
            JsonElement now = await served.Json("job/1/boards");
            if (now.GetProperty("what").ValueKind == JsonValueKind.Null)
            {
                return now;
            }

            await Task.Delay(20, ServedJob.Stop);
        }
    }

    private static async Task<HttpStatusCode> Begun(ServedJob served)
    {
        using HttpResponseMessage begun = await served.Post("job/1/boards", new { });
        return begun.StatusCode;
    }

    /// <summary>Boards are of the planks that they were searched for: every one of them has its board, and the sheets of a lay-out that came since have none of them.</summary>
    [Fact]
    public async Task BoardsGoWithTheirPlanksAndWithNoOthers()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        await using ServedJob served = await Stocked();
        JsonElement none = await served.Json("job/1/boards");
        Assert.Equal(JsonValueKind.Null, none.GetProperty("turn").ValueKind);
        int turn = (await served.State()).GetProperty("laid").GetInt32(),
            bare = await Sheets(served, turn);
        Assert.Equal(HttpStatusCode.OK, await Begun(served));
        JsonElement found = await Ended(served);
        Assert.Equal("", found.GetProperty("fault").GetString());
        Assert.Equal(turn, found.GetProperty("turn").GetInt32());
        Assert.Equal(1, found.GetProperty("part").GetDouble());
        Assert.NotEqual(0, found.GetProperty("improved").GetArrayLength());
        Assert.DoesNotContain(
            found.GetProperty("improved").EnumerateArray(),
            w => w.GetString()!.Contains("Ctrl-C", StringComparison.Ordinal)
        );
        JsonElement facts = await served.Json($"job/1/facts/{turn}");
        string[] planks =
        [
            .. facts.GetProperty("order").EnumerateArray().Select(p => p.GetString()!),
        ];
        Assert.Equal(
            planks.Order(StringComparer.Ordinal),
            found
                .GetProperty("boards")
                .EnumerateObject()
                .Select(b => b.Name)
                .Order(StringComparer.Ordinal)
        );
        Assert.All(
            found.GetProperty("boards").EnumerateObject(),
            b => Assert.StartsWith("B", b.Value.GetString()!, StringComparison.Ordinal)
        );
        Assert.True(await Sheets(served, turn) > bare);

        int next = await served.Change("layer[0].width", "90");
        await served.Tried(next);
        Assert.Equal(turn, (await served.Json("job/1/boards")).GetProperty("turn").GetInt32());
        Assert.Equal(bare, await Sheets(served, next));
        Assert.Equal(HttpStatusCode.OK, await Begun(served));
        Assert.Equal(next, (await Ended(served)).GetProperty("turn").GetInt32());
    }

    /// <summary>Asked for twice it is one search; stopped, it ends at once with what it has, and may be begun again.</summary>
    [Fact]
    public async Task AStopEndsItAndItMayBeBegunAgain()
    {
        await using ServedJob served = await Stocked("time = 3600");
        int turn = (await served.State()).GetProperty("laid").GetInt32();
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(HttpStatusCode.OK, await Begun(served));
            Assert.Equal(HttpStatusCode.OK, await Begun(served));
            using HttpResponseMessage stopped = await served.Post("job/1/boards/stop", new { });
            JsonElement found = await Ended(served);
            Assert.Equal("", found.GetProperty("fault").GetString());
            Assert.Equal(turn, found.GetProperty("turn").GetInt32());
            Assert.NotEmpty(found.GetProperty("boards").EnumerateObject());
        }
    }

    /// <summary>A job without stock, or none that is laid, has nothing to search.</summary>
    [Fact]
    public async Task WithoutStockThereIsNoSearch()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        Assert.Equal(HttpStatusCode.NotFound, await Begun(served));
        Assert.Equal(
            JsonValueKind.Null,
            (await served.Json("job/1/boards")).GetProperty("what").ValueKind
        );
    }

    private static async Task<int> Sheets(ServedJob served, int turn)
    {
        using HttpResponseMessage answer = await served.Get($"job/1/rooms/{turn}/boards");
        return answer.StatusCode == HttpStatusCode.OK
            ? (await ServedJob.Read(answer)).GetProperty("sheets").GetArrayLength()
            : 0;
    }
}
