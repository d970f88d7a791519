using System.Net;
using System.Text.Json;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Shelf;

namespace PlankFit.Tests.Pages;

/// <summary>A new hull as the page asks for it, and whoever would have it made elsewhere, or over something.</summary>
public sealed class NewHullTests
{
    internal const string Table = """
        line,measure,0,1,2,3,4,5,6
        ,position,0,600,1200,1800,2400,3000,3600
        keel edge,height,340,214,129,78,51,41,40
        keel edge,half-breadth,26,28,30,32,34,36,38
        chine,height,437,385,316,253,206,179,171
        chine,half-breadth,150,328,471,579,654,697,710
        """;

    private static Dictionary<string, string> Answers(params (string, string)[] more)
    {
        Dictionary<string, string> typed = new()
        {
            ["job.name"] = "Ours",
            ["job.units"] = "mm",
            ["hull.keel"] = "keel edge",
            ["hull.chine"] = "chine",
            ["hull.offsets-are-to"] = "outside",
            ["layer[0].thickness"] = "6",
            ["layer[0].width"] = "120",
            ["layer[0].heads"] = "aft",
            ["layer[0].angle"] = "45",
        };
        foreach ((string address, string value) in more)
        {
            typed[address] = value;
        }

        return typed;
    }

    private static object Asked(
        string table,
        string? folder = null,
        int layers = 1,
        params (string, string)[] more
    ) =>
        new
        {
            table,
            typed = Answers(more),
            layers,
            folder,
        };

    /// <summary>What is asked for is asked for one thing after the other, what the table tells is proposed, and once there is enough planks are laid; nothing is written.</summary>
    [Fact]
    public async Task WhatIsMissingIsToldAndPlanksAreLaidOnceThereIsEnough()
    {
        await using ServedFolder served = await ServedFolder.Start();
        JsonElement bare = await served.Look(
            new
            {
                table = Table,
                typed = new Dictionary<string, string>(),
                layers = 2,
            }
        );
        Assert.Equal(5, bare.GetProperty("missing").GetArrayLength());
        Assert.Equal("mm", bare.GetProperty("guess").GetProperty("units").GetString());
        Assert.Equal("keel edge", bare.GetProperty("guess").GetProperty("keel").GetString());
        Assert.Equal("chine", bare.GetProperty("guess").GetProperty("chine").GetString());
        Assert.Equal(JsonValueKind.Null, bare.GetProperty("skins").ValueKind);

        JsonElement laid = await served.Look(Asked(Table, layers: 2));
        Assert.Equal(0, laid.GetProperty("missing").GetArrayLength());
        JsonElement runs = laid.GetProperty("skins").GetProperty("runs");
        Assert.Equal(
            ["inner", "inner", "outer", "outer"],
            runs.EnumerateArray().Select(r => r.GetProperty("name").GetString())
        );
        Assert.All(
            runs.EnumerateArray(),
            r => Assert.True(r.GetProperty("planks").GetArrayLength() > 10)
        );
        Assert.StartsWith("<", laid.GetProperty("picture").GetString(), StringComparison.Ordinal);
        Assert.Empty(served.There);
    }

    /// <summary>The same planks whether the cells are parted by commas or by the tabs of a spreadsheet, with line ends of Windows.</summary>
    [Fact]
    public async Task ABlockFromASpreadsheetIsTheSameTable()
    {
        await using ServedFolder served = await ServedFolder.Start();
        string tabs = Table.Replace(',', '\t').Replace("\n", "\r\n", StringComparison.Ordinal);
        JsonElement one = await served.Look(Asked(Table)),
            two = await served.Look(Asked(tabs));
        Assert.Equal(
            one.GetProperty("picture").GetString(),
            two.GetProperty("picture").GetString()
        );
    }

    /// <summary>A job, or a list of boards, put in the table's place is told as such, and nothing is asked about it.</summary>
    [Theory]
    [InlineData(
        "[job]\nname = \"Ours\"\n[hull]\n",
        "this looks like a job, not a table of offsets"
    )]
    [InlineData(
        "board,count,length,width,thickness\nB,1,4000,120,8\n",
        "this looks like a list of boards, not a table of offsets"
    )]
    public async Task WhatIsNoTableIsToldAtOnce(string text, string told)
    {
        await using ServedFolder served = await ServedFolder.Start();
        JsonElement seen = await served.Look(
            new
            {
                table = text,
                typed = new Dictionary<string, string>(),
                layers = 1,
            }
        );
        Assert.Equal(0, seen.GetProperty("missing").GetArrayLength());
        Assert.Contains(
            told,
            Assert
                .Single(seen.GetProperty("found").EnumerateArray())
                .GetProperty("words")
                .GetString(),
            StringComparison.Ordinal
        );
        Assert.True(seen.GetProperty("table").GetProperty("rows").GetArrayLength() > 0);
    }

    [Fact]
    public async Task FeetAndInchesAreRecognised()
    {
        await using ServedFolder served = await ServedFolder.Start();
        JsonElement seen = await served.Look(
            new
            {
                table = "line\tmeasure\t0\t1\n\tposition\t0-0-0\t2-0-0\nrabbet\theight\t1-3-3\t0-10-4+\nchine\theight\t2-1-0\t2-0-0",
                typed = new Dictionary<string, string>(),
                layers = 1,
            }
        );
        Assert.Equal("ft-in-8", seen.GetProperty("guess").GetProperty("units").GetString());
        Assert.Equal("rabbet", seen.GetProperty("guess").GetProperty("keel").GetString());
    }

    /// <summary>What is wrong with a cell is told at it, by the reader of the files.</summary>
    [Fact]
    public async Task AFaultIsToldAtItsCell()
    {
        await using ServedFolder served = await ServedFolder.Start();
        JsonElement seen = await served.Look(
            Asked(Table.Replace("437", "4e7x", StringComparison.Ordinal))
        );
        JsonElement doubt = Assert.Single(
            seen.GetProperty("table").GetProperty("doubts").EnumerateArray()
        );
        Assert.Equal(5, doubt.GetProperty("line").GetInt32());
        Assert.Equal(3, doubt.GetProperty("column").GetInt32());
        Assert.Equal(JsonValueKind.Null, seen.GetProperty("skins").ValueKind);
        Assert.NotEqual(0, seen.GetProperty("found").GetArrayLength());
    }

    /// <summary>Kept where it is asked for: both files, no other, readable by the command line as they stand, and the job is on the shelf.</summary>
    [Fact]
    public async Task AFolderIsMadeWhereItIsAskedFor()
    {
        await using ServedFolder served = await ServedFolder.Start();
        using HttpResponseMessage answer = await served.Post(
            "new",
            Asked(Table, "Our launch", 2, ("layer[0].thickness", "1/4 in"))
        );
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("/job/1/", (await ServedJob.Read(answer)).GetProperty("address").GetString());
        Assert.Equal(["Our launch", "Our launch/job.toml", "Our launch/offsets.csv"], served.There);
        string path = Path.Combine(served.Place, "Our launch", "job.toml");
        PlankFit.Reading.Jobs.ReadResult read = PlankFit.Reading.Jobs.JobReader.Read(path);
        Assert.False(read.HasFaults, string.Join('\n', read.Findings));
        Assert.Equal(2, read.Job!.Layers.Length);
        Assert.Equal(
            Table + "\n",
            await File.ReadAllTextAsync(
                Path.ChangeExtension(path, null)[..^3] + "offsets.csv",
                ServedJob.Stop
            )
        );
        JsonElement jobs = JsonDocument
            .Parse(await served.Client.GetStringAsync("jobs", ServedJob.Stop))
            .RootElement;
        Assert.Equal("Our launch", jobs[0].GetProperty("name").GetString());
    }

    /// <summary>Names that lead out of the folder, name a device, or hide something.</summary>
    [Theory]
    [InlineData("..")]
    [InlineData(".")]
    [InlineData("../ours")]
    [InlineData("..\\ours")]
    [InlineData("/tmp/ours")]
    [InlineData("ours/../../theirs")]
    [InlineData("C:")]
    [InlineData("C:\\ours")]
    [InlineData("\\\\server\\ours")]
    [InlineData("ours\0")]
    [InlineData("ours\n")]
    [InlineData(" ours")]
    [InlineData("ours ")]
    [InlineData("ours.")]
    [InlineData(".ours")]
    [InlineData("NUL")]
    [InlineData("nul.txt")]
    [InlineData("COM1")]
    [InlineData("lpt9 .x")]
    [InlineData("%2e%2e")]
    [InlineData("~")]
    [InlineData("$HOME")]
    [InlineData("<b>ours</b>")]
    [InlineData("ours:hidden")]
    [InlineData("ours\u202egnp")]
    [InlineData("")]
    [InlineData(null)]
    public async Task ANameThatLeadsElsewhereIsRefused(string? name)
    {
        await using ServedFolder served = await ServedFolder.Start();
        using HttpResponseMessage answer = await served.Post("new", Asked(Table, name));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await ServedJob.Read(answer)).GetProperty("message").GetString()!);
        Assert.Empty(served.There);
        Assert.Equal("[]", await served.Client.GetStringAsync("jobs", ServedJob.Stop));
    }

    [Fact]
    public void ANameThatIsTooLongIsRefused() =>
        Assert.NotNull(NewFolder.Fault(new string('a', NewFolder.Longest + 1)));

    /// <summary>Whatever is there of that name stays as it is: a folder, an empty one, a file, a link, a link that leads nowhere.</summary>
    [Fact]
    public async Task NothingThatIsThereIsTouched()
    {
        await using ServedFolder served = await ServedFolder.Start();
        string In(string name) => Path.Combine(served.Place, name);
        Directory.CreateDirectory(In("full"));
        await File.WriteAllTextAsync(In("full/job.toml"), "theirs", ServedJob.Stop);
        Directory.CreateDirectory(In("empty"));
        await File.WriteAllTextAsync(In("file"), "theirs", ServedJob.Stop);
        Directory.CreateSymbolicLink(In("link"), In("empty"));
        File.CreateSymbolicLink(In("dangling"), In("not-there"));
        string[] before = served.There;
        foreach (string name in new[] { "full", "empty", "file", "link", "dangling" })
        {
            using HttpResponseMessage answer = await served.Post("new", Asked(Table, name));
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        }

        Assert.Equal(before, served.There);
        Assert.Equal("theirs", await File.ReadAllTextAsync(In("full/job.toml"), ServedJob.Stop));
    }

    /// <summary>Answers are values and nothing more: none of them puts a line or a table of its own into the job, and no file can be named.</summary>
    [Theory]
    [InlineData("job.name", "x\"\n[nest]\nboards = [\"/etc/passwd\"]\n#")]
    [InlineData("hull.keel", "keel edge\"\n[as-built]\nmeasured = \"/etc/passwd\"")]
    [InlineData("layer[0].width", "120\n[[layer]]")]
    public async Task AnAnswerIsOneValue(string address, string value)
    {
        await using ServedFolder served = await ServedFolder.Start();
        using HttpResponseMessage answer = await served.Post(
            "new",
            Asked(Table, "ours", 1, (address, value))
        );
        if (answer.StatusCode == HttpStatusCode.OK)
        {
            string job = await File.ReadAllTextAsync(
                Path.Combine(served.Place, "ours", "job.toml"),
                ServedJob.Stop
            );
            Assert.DoesNotMatch(@"(?m)^\[(nest|as-built)\]", job);
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(job, @"(?m)^\[\[layer"));
        }
    }

    /// <summary>No other table may be named, nor a value that such a job has not.</summary>
    [Theory]
    [InlineData("nest.boards", "[\"/etc/passwd\"]")]
    [InlineData("as-built.measured", "/etc/passwd")]
    [InlineData("hull.offsets", "/etc/passwd")]
    [InlineData("layer[7].width", "1")]
    public async Task AnotherValueIsRefused(string address, string value)
    {
        await using ServedFolder served = await ServedFolder.Start();
        using HttpResponseMessage answer = await served.Post(
            "new",
            Asked(Table, "ours", 1, (address, value))
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Empty(served.There);
    }

    [Fact]
    public async Task ThreeMegabytesAreRefused()
    {
        await using ServedFolder served = await ServedFolder.Start();
        Assert.True(3_000_000 > PageServer.MostBodyBytes);
        using HttpResponseMessage answer = await served.Post(
            "new",
            Asked(new string('1', 3_000_000), "ours")
        );
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Empty(served.There);
    }

    /// <summary>Where one job was named there is no other to be made.</summary>
    [Fact]
    public async Task OfOneNamedJobNoOtherIsMade()
    {
        await using ServedJob served = await ServedJob.Small();
        using HttpResponseMessage page = await served.Get("new"),
            look = await served.Post("new/look", Asked(Table)),
            kept = await served.Post("new", Asked(Table, "ours"));
        Assert.All([page, look, kept], a => Assert.Equal(HttpStatusCode.NotFound, a.StatusCode));
    }
}
