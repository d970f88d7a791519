using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>Whole bottoms with their long planks in pieces.</summary>
public sealed class JointPlanTests
{
    private static readonly JointStock Stock = new(
        1200,
        300,
        JointKind.Scarf,
        8,
        new(ButtCut.Square, JointStock.Carrying, null, 15),
        50,
        []
    );

    private static readonly ImmutableArray<JointRule> Mild =
    [
        new(JointRuleKind.NextPlank, 200, null, "test"),
        new(JointRuleKind.OneBetween, 100, null, "test"),
        new(JointRuleKind.SameBacking, null, 1, "test"),
        new(JointRuleKind.JointsBelow, 60, null, "test"),
        new(JointRuleKind.SeamsBelow, 10, null, "test"),
    ];

    /// <summary>Both skins butted on every other plank of the same stringers cannot but have some butts over each other: each is as long as the gap between two.</summary>
    private static readonly ImmutableArray<JointRule> NoneBelow =
    [
        .. Mild.Where(r => r.What != JointRuleKind.JointsBelow),
        new(JointRuleKind.JointsBelow, 0, null, "test"),
    ];

    private static readonly ImmutableArray<FramingSpec> Stringers =
    [
        .. new[] { 250, 500, 750 }.Select(d => new FramingSpec(
            $"stringer at {d}",
            FramingKind.Stringer,
            new FramingLine.FromKeel(d),
            45,
            null,
            null
        )),
    ];

    private static BottomPlan Planned(
        Job job,
        JointStock stock,
        ImmutableArray<JointRule>? rules = null,
        ImmutableArray<FramingSpec>? behind = null
    ) =>
        WholeBottomTests.Planned(
            job with
            {
                Joints = new(stock, ImmutableDictionary<string, JointStock>.Empty, rules ?? Mild),
                Framing = behind ?? [],
            }
        );

    private static Job Demo(string hull) => DemoPlans.Of(hull).Job;

    public static TheoryData<string> Stocks => ["scarfs", "along stringers", "on the layer below"];

    private static JointStock Of(string stock) =>
        stock switch
        {
            "scarfs" => Stock,
            "along stringers" => Stock with
            {
                Kind = JointKind.Butt,
                Butt = Stock.Butt with { Cut = ButtCut.AlongBacking },
                LongestMm = 1500,
            },
            _ => Stock with
            {
                Kind = JointKind.Butt,
                Butt = Stock.Butt with
                {
                    On = [JointStock.LayerBelow, JointStock.Block],
                    BlockMm = 100,
                },
            },
        };

    [Theory]
    [MemberData(nameof(Stocks))]
    public void TheLawsHoldOnTheLaunch(string stock)
    {
        BottomPlan plan = Planned(
            Demo("survey-launch"),
            Of(stock),
            stock == "along stringers" ? NoneBelow : Mild,
            stock == "along stringers" ? Stringers : null
        );
        Assert.All(
            plan.PlankLayers,
            l => Assert.NotEmpty(plan.Joints.Of(l.Number, Side.Starboard)?.Planks ?? [])
        );
        JointLaws.Hold(plan);
    }

    [Fact]
    public void PortHasStarboardsJointsMirrored()
    {
        BottomPlan plan = Planned(
            Demo("survey-launch"),
            Of("along stringers"),
            NoneBelow,
            Stringers
        );
        JointedLayer starboard = plan.Joints.Of(2, Side.Starboard)!,
            port = plan.Joints.Of(2, Side.Port)!;
        Assert.Equal(starboard.Planks.Length, port.Planks.Length);
        foreach ((JointedPlank s, JointedPlank p) in starboard.Planks.Zip(port.Planks))
        {
            Assert.Equal(s.PlankId with { Side = Side.Port }, p.PlankId);
            foreach ((PlankPiece a, PlankPiece b) in s.Pieces.Zip(p.Pieces))
            {
                Assert.Equal(a.LengthMm, b.LengthMm, 1e-9);
                Assert.Equal(JointLaws.Area(a.Net), JointLaws.Area(b.Net), 1e-3);
            }

            Assert.All(
                s.Joints.Zip(p.Joints),
                j => Assert.Equal(180 - j.First.CutDegrees, j.Second.CutDegrees, 1e-9)
            );
            Assert.All(p.Joints.SelectMany(j => j.Distances), d => Assert.StartsWith("P", d.To));
        }
    }

    /// <summary>A butt along a stringer lies on it: held against the stringer's own distance from the keel on the hull, not against the flat strip.</summary>
    [Fact]
    public void ButtsAlongStringersLieOnTheirMiddles()
    {
        BottomPlan plan = Planned(
            Demo("survey-launch"),
            Of("along stringers"),
            NoneBelow,
            Stringers
        );
        int looked = 0;
        foreach (JointedPlank pieced in plan.Joints.Of(1, Side.Starboard)!.Planks)
        {
            Plank plank = plan.Find(pieced.PlankId)!;
            foreach (PlankJoint joint in pieced.Joints)
            {
                FramingCrossing on = plan
                    .Framing.On(plank.Id)
                    .Single(b => b.Of.Name == joint.Backing);
                foreach (double part in new[] { 0.0, 0.3, 0.5, 0.7, 1.0 })
                {
                    Vec2 p =
                        joint.OuterLine[0] + (part * (joint.OuterLine[1] - joint.OuterLine[0]));
                    double off = on
                        .Centre.Zip(on.Centre.Skip(1))
                        .Min(c => ToSegment(p, c.First, c.Second));
                    Assert.InRange(off, 0, (on.Of.WidthMm / 2) - 15);
                    looked++;
                }
            }
        }

        Assert.True(looked > 50);
    }

    /// <summary>
    /// On a prism all is flat: with planks at 45° a stringer of 45 mm is never under the whole of a square butt 150 mm wide, and one 45 wide is, sawn along it.
    /// A square butt needs 150·sin 45° + 2·15 = 136.07 mm of stringer, by hand.
    /// </summary>
    [Theory]
    [InlineData(45, false)]
    [InlineData(135, false)]
    [InlineData(138, true)]
    public void ASquareButtNeedsABroadStringer(double widthMm, bool possible)
    {
        Job job = PrismaticPlan.Build().Job;
        FramingSpec stringer = Stringers[1] with { WidthMm = widthMm };
        BottomPlan plan = Planned(
            job,
            Stock with
            {
                Kind = JointKind.Butt,
                LongestMm = 1300,
            },
            [
                new(JointRuleKind.NextPlank, 0, null, "test"),
                new(JointRuleKind.OneBetween, 0, null, "test"),
                new(JointRuleKind.SameBacking, null, 0, "test"),
            ],
            [stringer]
        );
        Assert.Equal(possible, plan.Joints.ByPlank.ContainsKey(Named.Plank("S1-20")));
        Assert.Equal(
            !possible,
            plan.Findings.Any(f => f.Message.Contains("broad enough", StringComparison.Ordinal))
        );
    }

    /// <summary>Heading aft, the inboard piece lies forward and is the longer outside; heading forward, the outboard one. The taper is 8 thicknesses long.</summary>
    [Fact]
    public void TheOuterFeatherPointsAft()
    {
        BottomPlan plan = Planned(Demo("survey-launch"), Stock);
        foreach (JointedLayer layer in plan.Joints.Layers)
        {
            foreach (JointedPlank pieced in layer.Planks)
            {
                Plank plank = plan.Find(pieced.PlankId)!;
                foreach (PlankJoint joint in pieced.Joints)
                {
                    double outerX = plank.Map.Point(Middle(joint.OuterLine)).X,
                        innerX = plank.Map.Point(Middle(joint.InnerLine)).X;
                    Assert.True(outerX > innerX, joint.Id.ToString());
                    Assert.Equal(
                        8 * 9,
                        Math.Abs(joint.OuterLine[0].X - joint.InnerLine[0].X),
                        1e-6
                    );
                }
            }
        }
    }

    /// <summary>Where no rule alone is the cause the whole set is found at once: with what it says can be kept of each the layer is pieced, and of none can more be kept.</summary>
    [Fact]
    public void RulesThatLeaveNoWayTogetherAreSaidWithWhatCanBeKeptOfEach()
    {
        BottomPlan plan = With(1200, 1175);
        Assert.Null(plan.Joints.Of(1, Side.Starboard));
        string said = plan
            .Findings.Select(f => f.Message)
            .First(m => m.Contains("these together give way least", StringComparison.Ordinal));
        double between = Kept("one plank between, 1175 mm"),
            next = Kept("next plank, 1200 mm");
        Assert.NotNull(With(next, between).Joints.Of(1, Side.Starboard));
        Assert.Null(With(next + 25, between).Joints.Of(1, Side.Starboard));

        double Kept(string rule)
        {
            string to = said[
                (said.IndexOf($"\"{rule}\" to ", StringComparison.Ordinal) + rule.Length + 6)..
            ];
            return to.StartsWith("nothing", StringComparison.Ordinal)
                ? 0
                : double.Parse(
                    to[..to.IndexOf(" mm", StringComparison.Ordinal)],
                    System.Globalization.CultureInfo.InvariantCulture
                );
        }

        BottomPlan With(double nextMm, double betweenMm) =>
            Planned(
                Demo("survey-launch"),
                Stock with
                {
                    LongestMm = 1000,
                },
                [
                    .. Mild.Where(r =>
                        r.What is not (JointRuleKind.NextPlank or JointRuleKind.OneBetween)
                    ),
                    new(JointRuleKind.NextPlank, nextMm, null, "test"),
                    new(JointRuleKind.OneBetween, betweenMm, null, "test"),
                ]
            );
    }

    [Fact]
    public void RulesThatLeaveNoWayAreSaidWithTheFirstToRelax()
    {
        BottomPlan plan = Planned(
            Demo("survey-launch"),
            Stock with
            {
                LongestMm = 1000,
            },
            [
                .. Mild.Where(r => r.What != JointRuleKind.NextPlank),
                new(JointRuleKind.NextPlank, 1200, null, "test"),
            ]
        );
        Assert.Null(plan.Joints.Of(1, Side.Starboard));
        Finding said = plan.Findings.First(f =>
            f.Message.Contains("first rule to relax", StringComparison.Ordinal)
        );
        Assert.Contains("next plank, 1200 mm", said.Message, StringComparison.Ordinal);
        Assert.StartsWith("S1-", said.Where, StringComparison.Ordinal);
        // What it says can be kept, can; and a step more cannot.
        string kept = said.Message[
            (said.Message.IndexOf("; with ", StringComparison.Ordinal) + 7)..
        ];
        double most = double.Parse(
            kept[..kept.IndexOf(" mm", StringComparison.Ordinal)],
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.NotNull(With(most).Joints.Of(1, Side.Starboard));
        Assert.Null(With(most + 25).Joints.Of(1, Side.Starboard));

        BottomPlan With(double mm) =>
            Planned(
                Demo("survey-launch"),
                Stock with
                {
                    LongestMm = 1000,
                },
                [
                    .. Mild.Where(r => r.What != JointRuleKind.NextPlank),
                    new(JointRuleKind.NextPlank, mm, null, "test"),
                ]
            );
    }

    [Fact]
    public void AJobWithoutStockHasNoPieces() =>
        Assert.Same(JointPlan.None, WholeBottomTests.Planned(PrismaticPlan.Build().Job).Joints);

    /// <summary>Stock of 1000 and 1600: of two pieces of a plank, one may be cut from the short length. Waste is judged anew from the lengths.</summary>
    [Fact]
    public void WasteIsWhatIsLeftOfTheStockLengths()
    {
        JointStock stock = Stock with { LongestMm = 1600, StockLengthsMm = [1000, 1600] };
        Assert.Equal(100 + 50, PlankSchemes.Waste([900, 950], stock), 1e-9);
        Assert.Equal(500 + 0, PlankSchemes.Waste([1100, 1600], stock), 1e-9);
        Assert.Equal(
            200,
            PlankSchemes.Waste([900, 1100], stock with { StockLengthsMm = [] }),
            1e-9
        );
    }

    private static Vec2 Middle(ImmutableArray<Vec2> line) => 0.5 * (line[0] + line[1]);

    private static double ToSegment(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 d = b - a;
        double t = Math.Clamp((p - a).Dot(d) / d.Dot(d), 0, 1);
        return p.ChordTo(a + (t * d));
    }
}
