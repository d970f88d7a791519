using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>What is said of a keel that is off its mitre, runs out or is wider than its stock: where, of which side, with which figures.</summary>
public sealed class KeelToldTests
{
    /// <summary>Both sides drawn alike are one finding; aft of where it runs out only the rows that lie there are judged: six of eight.</summary>
    [Theory]
    [InlineData(2, null, "wide", "proud", "8 of 8")]
    [InlineData(-2, null, "narrow", "shy", "8 of 8")]
    [InlineData(2, 1500.0, "wide", "proud", "6 of 6")]
    public void OffItsMitreAsDrawnIsToldOnce(
        double off,
        double? from,
        string width,
        string face,
        string stations
    )
    {
        Finding told = Assert.Single(
            OfKeel(Job(Mitre + off, Mitre + off, from)),
            f => f.Severity == Severity.Warning
        );
        Assert.Equal("keel, first layer, both sides", told.Where);
        Assert.StartsWith($"as drawn it leaves its mitre at {stations} stations", told.Message);
        Assert.Contains($"2 mm too {width}", told.Message, StringComparison.Ordinal);

        // 2 tan 20 = 0.73 mm, by hand.
        Assert.Contains($"0.7 mm {face}", told.Message, StringComparison.Ordinal);
    }

    /// <summary>Off the outer face instead of the side: what stands proud, and nothing where it is shy.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(-2)]
    public void WhatStandsProudMayComeOffTheFace(double off) =>
        Assert.All(
            WholeBottomTests.Planned(Job(Mitre + off, Mitre + off, null)).Keel!.Layers[0].Stations,
            r =>
                Assert.Equal(
                    off > 0 ? off * Math.Tan(20 * Math.PI / 180) : 0,
                    r.TakeOffFaceMm,
                    1e-6
                )
        );

    /// <summary>Out by other amounts on the two sides is two findings, each with its own side and figure.</summary>
    [Fact]
    public void SidesThatDifferAreToldApart()
    {
        Finding[] told =
        [
            .. OfKeel(
                    Job(Mitre, Mitre, null) with
                    {
                        AsBuilt = AsBuiltSpec.None with
                        {
                            KeelHalfWidths =
                            [
                                new("first layer", "0", Side.Starboard, Mitre + 2),
                                new("first layer", "0", Side.Port, Mitre - 3),
                                new("first layer", "7", Side.Starboard, Mitre + 4),
                                new("first layer", "7", Side.Port, Mitre + 4),
                            ],
                        },
                    }
                )
                .Where(f => f.Severity == Severity.Warning),
        ];
        Assert.Equal(
            [
                "keel, first layer, station 0, starboard",
                "keel, first layer, station 7, both sides",
                "keel, first layer, station 0, port",
            ],
            told.Select(f => f.Where)
        );
        Assert.Contains("2 mm too wide", told[0].Message, StringComparison.Ordinal);
        Assert.Contains("4 mm too wide", told[1].Message, StringComparison.Ordinal);
        Assert.Contains("3 mm too narrow", told[2].Message, StringComparison.Ordinal);
    }

    /// <summary>Proud by more than is borne is told though the half-width is within its own bound, and neither within both.</summary>
    [Theory]
    [InlineData(0.7, 0.2, true)]
    [InlineData(0.7, 0.3, false)]
    [InlineData(0.9, 0.5, true)]
    [InlineData(0, 0.5, false)]
    public void EitherBoundIsEnough(double off, double proudTolerance, bool told)
    {
        Job job = Job(Mitre + off, Mitre + off, null);
        Finding[] found =
        [
            .. OfKeel(job with { Keel = job.Keel with { ProudToleranceMm = proudTolerance } }),
        ];
        Assert.Equal(told ? 1 : 0, found.Length);
    }

    /// <summary>A place is told from the station before it, from a quarter of a millimetre on.</summary>
    [Theory]
    [InlineData(1500, "it begins 600 mm aft of station 1:")]
    [InlineData(1700, "it begins station 2:")]
    [InlineData(1699.8, "it begins station 2:")]
    [InlineData(1699.7, "it begins 799.5 mm aft of station 1:")]
    [InlineData(1700.3, "it begins 0.5 mm aft of station 2:")]
    [InlineData(1700.25, "it begins 0.5 mm aft of station 2:")]
    [InlineData(1699.75, "it begins 0.5 mm forward of station 2:")]
    [InlineData(-120, "it begins 120 mm forward of station 0:")]
    public void PlacesAreToldFromTheStationBefore(double from, string says) =>
        Assert.Contains(
            OfKeel(Job(Mitre, Mitre, from)),
            f => f.Message.StartsWith(says, StringComparison.Ordinal)
        );

    /// <summary>The planks named are those left long at the keel: the first and last that end there forward of the fade.</summary>
    [Fact]
    public void ThePlanksOfARunOutAreNamedAndLeftLong()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job(Mitre, Mitre, 1500));
        Plank[] inner =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.Where(p =>
                    p.Ends.Any(e => e is { At: PanelEdge.Lower, Cut: EndCut.LeftLong })
                ),
        ];
        Assert.Contains(
            plan.Keel!.Findings,
            f => f.Message.Contains($"{inner[0].Id} to {inner[^1].Id}, and their twins")
        );
        Assert.Equal(30, KeelSpec.None.LeftLongMm);
        Assert.All(
            inner
                .SelectMany(p => p.Ends)
                .Where(e => e is { At: PanelEdge.Lower, Cut: EndCut.LeftLong }),
            e => Assert.Equal(30, e.OverhangMm)
        );
    }

    /// <summary>Straight from 40 to 46 mm a side: 92 mm of timber at the last station, and no sooner told than the stock is narrower.</summary>
    [Theory]
    [InlineData(91.5, "7")]
    [InlineData(92, null)]
    [InlineData(91.9999995, null)]
    public void StockThatIsTooNarrowIsToldWhereItIs(double stock, string? station)
    {
        Job job = Job(40, 46, null);
        string? told = OfKeel(job with { Keel = job.Keel with { StockWidthMm = stock } })
            .SingleOrDefault(f => f.Message.StartsWith("it wants timber 92 mm wide"))
            ?.Where;
        Assert.Equal(station is null ? null : $"keel, first layer, station {station}", told);
    }

    /// <summary>Six stations measured on a fair line but for one: the run of the others says which, and to which side. The second and the last but one can be judged.</summary>
    [Theory]
    [InlineData(1, 5, "outside")]
    [InlineData(6, -5, "inside")]
    [InlineData(3, 5, "outside")]
    public void AReadingOffTheRunOfTheOthersIsNamed(int at, double off, string sense)
    {
        Job job = Job(Mitre, Mitre, null);
        Finding told = Assert.Single(
            OfKeel(
                job with
                {
                    AsBuilt = AsBuiltSpec.None with
                    {
                        KeelHalfWidths =
                        [
                            .. job.Offsets.Stations.Select(
                                (s, i) =>
                                    new MeasuredKeelHalfWidth(
                                        "first layer",
                                        s.Name,
                                        Side.Port,
                                        Mitre + (i == at ? off : 0)
                                    )
                            ),
                        ],
                    },
                }
            ),
            f => f.Message.Contains("does not run fair", StringComparison.Ordinal)
        );
        Assert.Equal($"keel, first layer, station {at}, port", told.Where);
        Assert.Contains($"5 mm {sense} the run", told.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// How much wider the mitre gets past the lap's end is worked on the sloping face: t / cos p / tan b with the slope where the ramp is half up,
    /// tan p + 15/8 t / 300 √(1 + tan² p) the other way. The cloth is taken so that the figure lies a ten-thousandth on either side of 2.75, where paper rounds.
    /// </summary>
    [Theory]
    [InlineData(1.0001, "3 mm")]
    [InlineData(0.9999, "2.5 mm")]
    public void TheStepPastALapIsWorkedOnTheSlopingFace(double part, string says)
    {
        const double slope = 15,
            to = 3400;
        double tp = Math.Tan(slope * Math.PI / 180),
            tb = Math.Tan(20 * Math.PI / 180);
        double Wider(double t)
        {
            double there = tp + (15.0 / 8 * t / 300 * Math.Sqrt(1 + (tp * tp)));
            return t * Math.Sqrt(1 + (there * there)) / tb;
        }

        double cloth = 2.75 * tb;
        for (int i = 0; i < 40; i++)
        {
            cloth *= 2.75 * part / Wider(cloth);
        }

        Job job = PlaneBottom.Job(20, slope, 9, cloth, OffsetsAreTo.Inside);
        Finding told = Assert.Single(
            OfKeel(
                job with
                {
                    Layers =
                    [
                        .. job.Layers.Select(l =>
                            l switch
                            {
                                ClothLayerSpec c => c with { Lap = new(100, null, to) },
                                PlankLayerSpec p => p with { WidthMm = 400 },
                                _ => l,
                            }
                        ),
                    ],
                    Keel = KeelSpec.None with
                    {
                        Layers = [PlaneBottom.KeelLayer("second layer", "outer", 9)],
                    },
                }
            ),
            f => f.Message.StartsWith("the lap of cloth ends station 4:", StringComparison.Ordinal)
        );
        Assert.Contains($"its mitre is {says} the wider a side", told.Message);
    }

    /// <summary>The mitre of the first layer on a level keel, 40 + 9 tan 10, by hand.</summary>
    private static double Mitre => PlaneBottom.KeelHalf + (9 * Math.Tan(10 * Math.PI / 180));

    private static Finding[] OfKeel(Job job) => [.. WholeBottomTests.Planned(job).Keel!.Findings];

    private static Job Job(double forward, double aft, double? from)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside);
        return job with
        {
            Layers = [(PlankLayerSpec)job.Layers[0] with { WidthMm = 300 }],
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9) with
                    {
                        HalfWidth = new KeelHalfWidth.Tapered(forward, aft),
                        FromMm = from,
                    },
                ],
            },
        };
    }
}
