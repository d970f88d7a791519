using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Geometry;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>Faults that a job can be told from itself and its table come back all at once, in the words that each has by itself.</summary>
public sealed class JobChecksTests
{
    private static readonly Job Demo = LoftTests.Demo("survey-launch");

    /// <summary>Each with what it is told about, and the words.</summary>
    private static readonly (Func<Job, Job> Plant, string Where, string Says)[] Faults =
    [
        (
            j => Layer(j, 0, l => l with { MasterMm = 12000 }),
            "layer inner",
            "master = 12000 mm is off the bottom, whose middle runs from x ="
        ),
        (
            j => Layer(j, 1, l => l with { AngleDegrees = 5 }),
            "layer outer",
            "at 5 degrees, runs out forward or aft before it meets the keel; move `master` or give a larger `angle`"
        ),
        (
            j => Added(j, l => l with { Name = "wide", WidthMm = 1500 }),
            "layer wide",
            "the stock, width = 1500 mm, is wider than the bottom, which is at most"
        ),
        (
            j =>
                Added(
                    j,
                    l =>
                        l with
                        {
                            Name = "steep",
                            AngleDegrees = 30,
                            WidthMm = 500,
                            MasterMm = 7900,
                        }
                ),
            "layer steep",
            "degrees never reaches the chine"
        ),
        (
            j =>
                j with
                {
                    Keel = j.Keel with
                    {
                        Layers =
                        [
                            new(
                                "k",
                                "nobody",
                                9,
                                new KeelHalfWidth.Mitre(),
                                new KeelLayerSide.Plumb()
                            ),
                        ],
                    },
                },
            "keel",
            "keel layer 'k' meets 'nobody', and no layer of planks has that name"
        ),
        (
            j => j with { Framing = [.. j.Framing, Thing("A", new FramingLine.AtStation("99"))] },
            "behind A",
            "the table has no station 99; it has "
        ),
        (
            j =>
                j with
                {
                    Framing = [.. j.Framing, Thing("B", new FramingLine.Offsets("no such"))],
                },
            "behind B",
            "the table has no line 'no such'"
        ),
        (
            j => j with { Framing = [.. j.Framing, Thing("C", new FramingLine.Offsets("stub"))] },
            "behind C",
            "the line 'stub' has 1 point with both height and half-breadth; two or more are needed"
        ),
        (
            j => SettingUp(j, s => s with { Backbone = new BackboneWidth.Line("nowhere") }),
            "setting-up",
            "the table has no line 'nowhere'"
        ),
        (
            j =>
                SettingUp(
                    j,
                    s =>
                        s with
                        {
                            Topside = new(
                                18,
                                ChineLap.Mitre,
                                new TopsideSlope.Flare([new("no station", 12), new("0", 8)])
                            ),
                        }
                ),
            "setting-up",
            "the bottom has no station 'no station' for the topside's flare; it has "
        ),
        (
            j =>
                j with
                {
                    AsBuilt = j.AsBuilt with
                    {
                        From = "no station",
                        Fitted = [PlankId.OfBottom(Side.Starboard, 1, 9)],
                    },
                },
            "[as-built] from",
            "station no station is not one of the bottom's: it runs from "
        ),
    ];

    public static TheoryData<int> Each => new(Enumerable.Range(0, Faults.Length));

    [Theory]
    [MemberData(nameof(Each))]
    public void EachFaultByItselfIsRefusedInItsWords(int one)
    {
        (Func<Job, Job> plant, string where, string says) = Faults[one];
        PlanResult planned = BottomPlanner.Plan(
            plant(Stubbed()),
            stop: TestContext.Current.CancellationToken
        );
        Assert.Null(planned.Plan);
        Finding fault = Assert.Single(planned.Findings);
        Assert.Equal(where, fault.Where);
        Assert.Contains(says, fault.Message);
    }

    /// <summary>The keel that a layer meets is the one thing that must be known before its master plank can be judged.</summary>
    [Fact]
    public void AllOfThemTogetherAreToldAtOnce()
    {
        (Func<Job, Job> Plant, string Where, string Says)[] together =
        [
            .. Faults.Where(f => f.Where != "keel"),
        ];
        PlanResult planned = BottomPlanner.Plan(
            together.Aggregate(Stubbed(), (job, fault) => fault.Plant(job)),
            stop: TestContext.Current.CancellationToken
        );
        Assert.Null(planned.Plan);
        Assert.All(
            together,
            t =>
                Assert.Single(
                    planned.Findings,
                    f =>
                        f.Severity == Severity.Error
                        && f.Where == t.Where
                        && f.Message.Contains(t.Says, StringComparison.Ordinal)
                )
        );
        Assert.Equal(together.Length, planned.Findings.Length);
    }

    [Fact]
    public void WithoutItsKeelAJobIsToldAllThatDoesNotHangOnIt()
    {
        PlanResult planned = BottomPlanner.Plan(
            Faults.Aggregate(Stubbed(), (job, fault) => fault.Plant(job)),
            stop: TestContext.Current.CancellationToken
        );
        string[] hang = ["layer inner", "layer outer", "layer steep"];
        Assert.Equal(
            Faults.Select(f => f.Where).Except(hang).Order(),
            planned.Findings.Select(f => f.Where).Distinct().Order()
        );
    }

    [Fact]
    public void ASoundJobHasNone() => Assert.Empty(JobChecks.Of(Demo));

    /// <summary>The launch with a line in its table that has one point only.</summary>
    private static Job Stubbed()
    {
        OffsetLine chine = Demo.Offsets.Find(Demo.Hull.Panel.Upper)!;
        OffsetLine stub = chine with
        {
            Name = "stub",
            HeightsMm = [chine.HeightsMm[0], .. chine.HeightsMm.Skip(1).Select(_ => (double?)null)],
        };
        return Demo with { Offsets = Demo.Offsets with { Lines = Demo.Offsets.Lines.Add(stub) } };
    }

    private static Job Layer(Job job, int number, Func<PlankLayerSpec, PlankLayerSpec> change)
    {
        PlankLayerSpec layer = job.Layers.OfType<PlankLayerSpec>().ElementAt(number);
        return job with { Layers = job.Layers.Replace(layer, change(layer)) };
    }

    private static Job Added(Job job, Func<PlankLayerSpec, PlankLayerSpec> change) =>
        job with
        {
            Layers = job.Layers.Add(change(Demo.Layers.OfType<PlankLayerSpec>().First())),
        };

    private static Job SettingUp(Job job, Func<SettingUpSpec, SettingUpSpec> change) =>
        job with
        {
            SettingUp = change(job.SettingUp ?? new()),
        };

    private static FramingSpec Thing(string name, FramingLine line) =>
        new(name, FramingKind.Stringer, line, 40, null, null);
}
