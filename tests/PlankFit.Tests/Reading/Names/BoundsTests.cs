using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Names;

/// <summary>Counts and sizes that are no boat's: refused before any work, with the line, the bound and what to do.</summary>
public sealed class BoundsTests
{
    public static TheoryData<string, string, string, string> Jobs
    {
        get
        {
            string[] head = Texts.Job.Split('\n');
            int last = head.Length;
            string Line(int n) =>
                string.Create(CultureInfo.InvariantCulture, $"job.toml, line {n}");
            string List(string key, int n) =>
                $"[setting-up]\n{key} = [\n{string.Join(",\n", Enumerable.Range(0, n))}]\n";
            string Many(int n, Func<int, string> table) =>
                string.Join('\n', Enumerable.Range(0, n).Select(table));
            return new()
            {
                { "waterlines", List("waterlines", 50_000), Line(last + 3 + 500), "up to 500" },
                { "frames", List("frames", 501), Line(last + 3 + 500), "up to 500" },
                { "layers", Many(10_000, _ => "[[layer]]"), Line(last + 40), "up to 40" },
                {
                    "keel layers",
                    Many(41, i => $"[[keel-layer]]\nname = \"k{i}\""),
                    Line(last + 1 + (2 * 40)),
                    "up to 40"
                },
                {
                    "behind",
                    Many(501, i => $"[[behind]]\nname = \"b{i}\""),
                    Line(last + 1 + (2 * 500)),
                    "up to 500"
                },
                {
                    "zones",
                    Many(501, i => $"[[ends.zone]]\nfrom = {i}"),
                    Line(last + 1 + (2 * 500)),
                    "up to 500"
                },
                {
                    "species",
                    Many(501, i => $"[[timber.species]]\nname = \"w{i}\""),
                    Line(last + 1 + (2 * 500)),
                    "up to 500"
                },
                { "spacing", "[fastenings]\nspacing = 0.001", Line(last + 2), "at least 10 mm" },
                {
                    "grid",
                    "[joints]\nkind = \"butt\"\nlongest = 2000\ngrid = 0.0001",
                    Line(last + 4),
                    "at least 5 mm"
                },
                {
                    "lengths",
                    $"[joints]\nkind = \"butt\"\nstock-lengths = [\n{Many(501, i => $"{i + 1},")}\n]",
                    Line(last + 4 + 500),
                    "up to 500"
                },
                {
                    "files of boards",
                    $"[nest]\nstock = [\n{Many(51, i => $"\"s{i}.csv\",")}\n]",
                    Line(last + 3 + 50),
                    "up to 50"
                },
                {
                    "fitted planks",
                    $"[as-built]\nfitted = [\n{Many(501, i => "\"S1-08\",")}\n]",
                    Line(last + 3 + 500),
                    "up to 500"
                },
            };
        }
    }

    [Theory]
    [MemberData(nameof(Jobs), DisableDiscoveryEnumeration = true)]
    public void TooManyInAJob(string what, string more, string where, string says)
    {
        ReadResult result = Texts.Read(Texts.Job + "\n" + more);
        Assert.Null(result.Job);
        Assert.True(
            result.Findings.Any(f =>
                f.Severity == Severity.Error
                && f.Where.StartsWith(where, StringComparison.Ordinal)
                && f.Message.Contains(says, StringComparison.Ordinal)
            ),
            $"{what}: {string.Join('\n', result.Findings.Take(5).Select(f => f.Where + ": " + f.Message))}"
        );
        Assert.True(result.Findings.Length < 600);
    }

    [Fact]
    public void AHullOf300MInPlanksOf1Mm()
    {
        string table = Texts.Offsets.Replace(
            ",position,0,600,1200,2400",
            ",position,0,600,1200,300000"
        );
        ReadResult result = Texts.Read(Texts.Job.Replace("width = 150", "width = 1"), table);
        Texts.Finds(
            result,
            Severity.Error,
            "job.toml, line 14, column 9",
            "about 212811 planks",
            "up to 2000",
            "is a unit wrong"
        );
        Assert.NotNull(Texts.Read(Texts.Job, table).Job);
    }

    [Fact]
    public void StationsAndRowsOfATable()
    {
        string stations = string.Join(',', Enumerable.Range(0, 501));
        Texts.Finds(
            Texts.Read(offsets: $"line,measure,{stations}\n,position,{stations}\n"),
            Severity.Error,
            "offsets.csv, line 1",
            "501 stations",
            "up to 500"
        );
        string rows = string.Concat(Enumerable.Range(0, 901).Select(i => $"l{i},height,1,2,3,4\n"));
        Texts.Finds(
            Texts.Read(offsets: "line,measure,0,1,2,3\n" + rows),
            Severity.Error,
            "offsets.csv, line 902",
            "901 rows",
            "up to 900"
        );
    }

    [Theory]
    [InlineData("1e9", "line 2")]
    [InlineData("1000000000", "line 2")]
    [InlineData("10001", "line 2")]
    public void ACountOfBoards(string count, string line) =>
        Assert.Contains(
            Stock($"A,{count},3000,150,9").Findings,
            f =>
                f.Where.Contains(line) && f.Message.Contains("1 to 10000", StringComparison.Ordinal)
        );

    [Fact]
    public void AMillionBoards()
    {
        string rows = string.Join(
            '\n',
            Enumerable.Range(0, 100).Select(i => $"A{i},10000,3000,150,9")
        );
        Assert.Contains(
            Stock(rows).Findings,
            f =>
                f.Where == "stock.csv, line 7"
                && f.Message.Contains("1000000 boards", StringComparison.Ordinal)
                && f.Message.Contains("up to 50000", StringComparison.Ordinal)
        );
        string many = string.Join(
            '\n',
            Enumerable.Range(0, 20_001).Select(i => $"A{i},1,3000,150,9")
        );
        Assert.Contains(
            Stock(many).Findings,
            f => f.Where == "stock.csv, line 20002" && f.Message.Contains("up to 20000")
        );
    }

    [Fact]
    public void Measurements()
    {
        string rows = string.Concat(Enumerable.Range(0, 20_001).Select(_ => "girth,1,port,900\n"));
        ReadResult result = JobReader.Read(
            Texts.Job + "\n[as-built]\nmeasured = \"measured.csv\"\n",
            "job.toml",
            Texts.Offsets,
            "offsets.csv",
            "what,where,side,value\n" + rows
        );
        Texts.Finds(result, Severity.Error, "measured.csv, line 20002", "up to 20000");
    }

    /// <summary>A station's own name may have a stroke, as may a keel layer's.</summary>
    [Fact]
    public void StrokesInNamesPartLayerAndStationWhereBothAreKnown()
    {
        ReadResult result = EveryName.Read(
            EveryName
                .Job.Replace("second keel", "second/keel")
                .Replace("station = \"2\"", "station = \"2/3\"")
                .Replace("position/2", "position/2/3"),
            EveryName.Offsets.Replace("line,measure,0,1,2,", "line,measure,0,1,2/3,"),
            measured: "what,where,side,value\nkeel half-width,second/keel/2/3,starboard,41\n"
        );
        Assert.NotNull(result.Job);
        MeasuredKeelHalfWidth measured = Assert.Single(result.Job.AsBuilt.KeelHalfWidths);
        Assert.Equal(("second/keel", "2/3"), (measured.Layer, measured.Station));
    }

    private static ReadResult Stock(string rows) =>
        JobReader.Read(
            Texts.Job + "\n[nest]\nstock = \"stock.csv\"\n",
            "job.toml",
            Texts.Offsets,
            "offsets.csv",
            stockTexts: ["board,count,length,width,thickness\n" + rows + "\n"]
        );
}
