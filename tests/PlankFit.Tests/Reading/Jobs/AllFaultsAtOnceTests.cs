using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Keys;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>A job with faults of every feature is told of all of them at once, each with its place.</summary>
public sealed class AllFaultsAtOnceTests
{
    /// <summary>What stands in the job that has every key, what is put in its place, and what is said of it.</summary>
    private static readonly (string Sound, string Spoiled, string Says)[] Faults =
    [
        ("master = 2200", "master = 9000", "master = 9000 mm is off the bottom"),
        (
            "name = \"outer\"\nthickness = 9\nwidth = 150",
            "name = \"outer\"\nthickness = 9\nwidth = 590",
            "wider than the bottom"
        ),
        (
            "keel = { cut = \"fit\", allowance = 2 }",
            "keel = { cut = \"fit\", by = 2 }",
            "belongs to an end left long"
        ),
        ("edge-strain-percent = 0.1", "edge-strain-percent = 11", "at most 10"),
        ("paper = \"A3\"", "paper = \"A5\"", "\"Letter\""),
        ("from-keel = 120", "from-keel = -120", "must be 0 or more"),
        ("shortest = 600", "shortest = 2000", "at most half the longest"),
        (
            "name = \"outer\"\nlongest = 2500",
            "name = \"outre\"\nlongest = 2500",
            "is no layer of planks"
        ),
        ("what = \"next plank\"", "what = \"next planks\"", "did you mean \"next plank\""),
        ("proud-tolerance = 0.4", "proud-tolerance = 0", "must be greater than 0"),
        ("masters = \"clear\"", "masters = \"best\"", "is none of the grades"),
        ("kerf = 3", "kerf = -3", "must not be less than 0"),
        ("lap = \"mitre\"", "lap = \"miter\"", "did you mean \"mitre\""),
        ("fitted = [\"S1-08\"]", "fitted = [\"S9-08\"]", "layers of planks"),
        ("planks = \"yard larch\"", "planks = \"yard birch\"", "is no species of the table"),
        ("density = 560", "density = 0", "kg a cubic metre"),
        ("spacing = 75", "spacing = 5", "must be at least 10 mm"),
        ("layer = \"middle\"", "layer = \"midle\"", "no layer of planks has that name"),
    ];

    public static TheoryData<string> Sounds => new(Faults.Select(f => f.Sound));

    [Theory]
    [MemberData(nameof(Sounds))]
    public void EachByItselfIsTold(string sound)
    {
        (string Sound, string Spoiled, string Says) fault = Faults.Single(f => f.Sound == sound);
        Assert.Contains(fault.Says, Told(Spoiled(EveryKey.Job.ReplaceLineEndings("\n"), fault)));
    }

    [Fact]
    public void AllAreToldAtOnceEachWithFileLineAndColumn()
    {
        string job = Faults.Aggregate(EveryKey.Job.ReplaceLineEndings("\n"), Spoiled);
        string told = Told(job);
        // What the layers are, the wood that they name and the keel are all known; the rest need not be.
        Assert.All(Faults, f => Assert.Contains(f.Says, told));
        Assert.All(
            EveryKey.Read(job).Findings.Where(f => f.Severity == Severity.Error),
            f => Assert.Matches("^job\\.toml, line [0-9]+, column [0-9]+", f.Where)
        );
    }

    [Fact]
    public void AFaultOfTheBoatHasThePlaceOfItsKey()
    {
        string[] lines = EveryKey.Job.ReplaceLineEndings("\n").Split('\n');
        int line = Array.IndexOf(lines, "master = 2200");
        lines[line] = "master = 9000";
        lines[Array.IndexOf(lines, "kerf = 3")] = "kerf = -3";
        Finding fault = Assert.Single(
            EveryKey.Read(string.Join('\n', lines)).Findings,
            f => f.Message.StartsWith("master = 9000", StringComparison.Ordinal)
        );
        Assert.Equal($"job.toml, line {line + 1}, column 10 (layer inner)", fault.Where);
    }

    /// <summary>Where reading finds nothing, planning tells it, with the same place.</summary>
    [Fact]
    public void SoItHasWhereNothingElseIsWrong()
    {
        ReadResult read = Texts.Read(Texts.Job.Replace("angle = 45", "angle = 5"));
        Assert.NotNull(read.Job);
        Finding fault = Assert.Single(
            read.Placed(
                BottomPlanner.Plan(read.Job, stop: TestContext.Current.CancellationToken).Findings
            ),
            f => f.Severity == Severity.Error
        );
        Assert.Equal("job.toml, line 16, column 9 (layer inner)", fault.Where);
        Assert.Contains("give a larger `angle`", fault.Message);
    }

    [Fact]
    public void AStationThatIsNotTheBottomsHasItsPlaceToo()
    {
        // The chine ends a station before the table does.
        string offsets = Texts
            .Offsets.Replace(",position,0,600,1200,2400", ",position,0,600,1200,2400,3000")
            .Replace("line,measure,0,1,2,3", "line,measure,0,1,2,3,4")
            .Replace("620,250,95,15", "620,250,95,15,10")
            .Replace("25,32,40,55", "25,32,40,55,55")
            .Replace("900,735,620,470", "900,735,620,470,")
            .Replace("120,420,650,960", "120,420,650,960,");
        ReadResult read = JobReader.Read(
            Texts.Job + "\n[as-built]\nfrom = \"4\"\nfitted = [\"S1-03\"]\n",
            "job.toml",
            offsets,
            "offsets.csv"
        );
        Assert.NotNull(read.Job);
        Finding fault = Assert.Single(
            read.Placed(
                BottomPlanner.Plan(read.Job, stop: TestContext.Current.CancellationToken).Findings
            ),
            f => f.Severity == Severity.Error
        );
        Assert.Equal("job.toml, line 18, column 8 ([as-built] from)", fault.Where);
    }

    private static string Spoiled(string job, (string Sound, string Spoiled, string Says) fault)
    {
        int at = job.IndexOf(fault.Sound, StringComparison.Ordinal);
        Assert.True(at >= 0, fault.Sound);
        return job.Remove(at, fault.Sound.Length).Insert(at, fault.Spoiled);
    }

    private static string Told(string job)
    {
        ReadResult read = EveryKey.Read(job);
        if (read.Job is null)
        {
            return Texts(read.Findings);
        }

        return Texts(BottomPlanner.Plan(read.Job).Findings);

        static string Texts(IEnumerable<Finding> findings) =>
            string.Join('\n', findings.Select(f => f.Message));
    }
}
