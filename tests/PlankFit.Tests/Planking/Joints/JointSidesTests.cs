using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>
/// Joints where the two sides are not alike, where the layer below is in the way, where one plank is sawn, and near a slanting end: on a plane
/// bottom with planks at 45°, some 1490 mm long along their middle, of which no piece may be longer than 1100.
/// </summary>
public sealed class JointSidesTests
{
    private static readonly JointStock Stock = new(
        1100,
        250,
        JointKind.Butt,
        8,
        new(ButtCut.AlongBacking, JointStock.Carrying, null, 15),
        50,
        []
    );

    private static readonly ImmutableArray<JointRule> Mild =
    [
        new(JointRuleKind.NextPlank, 100, null, "test"),
        new(JointRuleKind.OneBetween, 50, null, "test"),
        new(JointRuleKind.SameBacking, null, 0, "test"),
        new(JointRuleKind.JointsBelow, 0, null, "test"),
        new(JointRuleKind.SeamsBelow, 0, null, "test"),
    ];

    /// <summary>
    /// One stringer to starboard and another to port: as many on either side, and yet no mirror images. Each side's butts lie on its own, and both sides of both
    /// layers are told of.
    /// </summary>
    [Fact]
    public void EachSideIsJointedOnItsOwnTimber()
    {
        BottomPlan plan = Planned(
            Stock,
            Mild,
            Stringer("to starboard", 450) with
            {
                Only = Side.Starboard,
            },
            Stringer("to port", 600) with
            {
                Only = Side.Port,
            }
        );
        foreach ((int layer, string name) in new[] { (1, "inner"), (2, "outer") })
        {
            foreach (
                (Side side, string on) in new[]
                {
                    (Side.Starboard, "to starboard"),
                    (Side.Port, "to port"),
                }
            )
            {
                PlankJoint[] joints =
                [
                    .. plan.Joints.Of(layer, side)!.Planks.SelectMany(p => p.Joints),
                ];
                Assert.True(joints.Length > 8, $"{joints.Length}");
                Assert.All(joints, j => Assert.Equal(on, j.Backing));
                Assert.Single(
                    plan.Findings,
                    f =>
                        f.Where == $"layer {name}" && f.Message.EndsWith($"joined by butts on {on}")
                );
            }
        }
    }

    /// <summary>
    /// The outer layer's butts can lie on the middle stringer alone, where the inner layer's would lie by themselves, being the nearest to even there, and 60 mm
    /// are asked between them. The inner layer gives way to the stringers 200 mm from it.
    /// </summary>
    [Fact]
    public void TheLayerBelowGivesWay()
    {
        ImmutableArray<JointRule> rules = Mild.SetItem(
            3,
            new(JointRuleKind.JointsBelow, 60, null, "test")
        );
        FramingSpec[] behind =
        [
            Stringer("near the keel", 330),
            Stringer("middle", 530),
            Stringer("near the chine", 730),
        ];
        ImmutableDictionary<string, JointStock> outer = ImmutableDictionary<
            string,
            JointStock
        >.Empty.Add("outer", Stock with { Butt = Stock.Butt with { On = ["middle"] } });
        BottomPlan alone = Planned(Stock, Mild, behind),
            both = Planned(Stock, rules, outer, behind);
        Assert.Equal("middle", MostOn(alone, 1));
        Assert.Equal("middle", MostOn(both, 2));
        Assert.NotEqual("middle", MostOn(both, 1));
        JointLaws.Hold(both);

        static string? MostOn(BottomPlan plan, int layer)
        {
            JointedLayer? pieced = plan.Joints.Of(layer, Side.Starboard);
            Assert.True(
                pieced is not null,
                string.Join("\n", plan.Findings.Select(f => f.Message))
            );
            return pieced
                .Planks.SelectMany(p => p.Joints)
                .GroupBy(j => j.Backing)
                .MaxBy(g => g.Count())!
                .Key;
        }
    }

    /// <summary>One plank in pieces that is sawn already is told, by its name and as one.</summary>
    [Fact]
    public void OneSawnPlankInPiecesIsTold()
    {
        BottomPlan drawn = Planned(Stock, Mild, Stringer("stringer", 500));
        PlankId id = drawn
            .Joints.Of(1, Side.Starboard)!
            .Planks.First(p => drawn.Find(p.PlankId)!.Kind == PlankKind.Full)
            .PlankId;
        BottomPlan plan = WholeBottomTests.Planned(
            drawn.Job with
            {
                AsBuilt = AsBuiltSpec.None with { Sawn = [RecordsOfSawn.Of(drawn, id)] },
            }
        );
        Finding told = Assert.Single(plan.Findings, f => f.Message.Contains("sawn already, and"));
        Assert.Equal((Severity.Warning, id.ToString()), (told.Severity, told.Where));
        Assert.StartsWith($"{id}: sawn already", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(drawn.Findings, f => f.Message.Contains("sawn already, and"));
    }

    /// <summary>
    /// Stock of 1520 and 210 mm would make a plank of 1640 from corner to corner with the least waste, were its scarf 72 mm long some 165 mm from one corner: there
    /// an end of the overlap would run off the end cut at 45°. Every scarf lies where both of its ends go from edge to edge.
    /// </summary>
    [Fact]
    public void BothEndsOfAScarfGoFromEdgeToEdge()
    {
        BottomPlan plan = Planned(
            Stock with
            {
                Kind = JointKind.Scarf,
                LongestMm = 1520,
                ShortestMm = 100,
                GridMm = 10,
                StockLengthsMm = [210, 1520],
            },
            Mild.SetItem(0, new(JointRuleKind.NextPlank, 0, null, "test"))
                .SetItem(1, new(JointRuleKind.OneBetween, 0, null, "test"))
        );
        (Plank Plank, PlankJoint Joint)[] joints =
        [
            .. plan
                .Joints.Of(1, Side.Starboard)!
                .Planks.Select(p => (Plank: plan.Find(p.PlankId)!, p.Joints))
                .Where(p =>
                    p.Plank.Ends.Select(e => e.At).SequenceEqual([PanelEdge.Lower, PanelEdge.Upper])
                )
                .SelectMany(p => p.Joints.Select(j => (p.Plank, j))),
        ];
        Assert.True(joints.Length > 10, $"{joints.Length}");
        foreach ((Plank plank, PlankJoint joint) in joints)
        {
            foreach (ImmutableArray<Vec2> line in new[] { joint.OuterLine, joint.InnerLine })
            {
                Assert.Equal(plank.WidestMm, Math.Abs(line[^1].Y - line[0].Y), 0.05);
                Assert.Equal(line[0].X, line[^1].X, 0.05);

                // An end cut at 45° begins as far along as the plank is wide.
                Assert.InRange(
                    line[0].X,
                    plank.FlatNet.Min(p => p.X) + 149,
                    plank.FlatNet.Max(p => p.X) - 149
                );
            }
        }
    }

    private static FramingSpec Stringer(string name, double fromKeelMm) =>
        new(name, FramingKind.Stringer, new FramingLine.FromKeel(fromKeelMm), 45, null, null);

    private static BottomPlan Planned(
        JointStock stock,
        ImmutableArray<JointRule> rules,
        params FramingSpec[] behind
    ) => Planned(stock, rules, ImmutableDictionary<string, JointStock>.Empty, behind);

    private static BottomPlan Planned(
        JointStock stock,
        ImmutableArray<JointRule> rules,
        ImmutableDictionary<string, JointStock> byLayer,
        params FramingSpec[] behind
    ) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(LengthMm: 4200, MasterMm: 2200)).Job with
            {
                Framing = [.. behind],
                Joints = new(stock, byLayer, rules),
            }
        );
}
