using PlankFit.Export.Cards;
using PlankFit.Export.Joints;
using PlankFit.Export.Patterns;
using PlankFit.Export.Shown;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Joints;

/// <summary>The sheets of joints, and the sheets of planks that now speak of pieces: letterings apart, inside the frame, large enough.</summary>
public sealed class JointSheetTests
{
    public static TheoryData<string> Kinds => ["butts", "scarfs"];

    private static BottomPlan Plan(string kind) =>
        kind == "butts" ? JointedPlans.Butts : JointedPlans.Scarfs;

    [Theory]
    [MemberData(nameof(Kinds))]
    public void TablesOfJointsAreLegible(string kind)
    {
        BottomPlan plan = Plan(kind);
        Drawing[] pages = [.. JointPages.Of(plan)];
        None(pages.SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true))));
        string[] all = [.. pages.SelectMany(p => p.Shapes.OfType<Lettering>()).Select(l => l.Text)];
        foreach (PlankJoint joint in plan.Joints.ByPlank.Values.SelectMany(p => p.Joints))
        {
            Assert.Contains(all, a => a.Split(' ').Contains(joint.Id.ToString()));
        }
    }

    /// <summary>Those at stem and transom too, off which a layer inside the table's surface begins and ends.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void AMapOfJointsNamesEveryStation(string kind)
    {
        BottomPlan plan = Plan(kind);
        Assert.All(
            plan.PlankLayers,
            l =>
            {
                string[] words =
                [
                    .. JointMap.Of(plan, l).Shapes.OfType<Lettering>().Select(w => w.Text),
                ];
                Assert.All(plan.Job.Offsets.Stations, s => Assert.Contains(s.Name, words));
            }
        );
    }

    /// <summary>Port's joints are starboard's mirrored where nothing tells the sides apart: a row says both, and a plank in pieces has one card for both, each piece as well.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void JointsOfMirroredSidesAreListedAndDrawnOnce(string kind)
    {
        BottomPlan plan = Plan(kind);
        string[] all =
        [
            .. JointPages
                .Of(plan)
                .SelectMany(p => p.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
        foreach (JointedLayer layer in plan.Joints.Layers.Where(l => l.Side == Side.Starboard))
        {
            Assert.All(
                layer.Planks.SelectMany(p => p.Joints),
                j => Assert.Contains($"{j.Id} {j.Id.Twin}", all)
            );
        }

        PlanShown shown = OnPlanks.Of(plan);
        Assert.All(plan.PlankLayers, l => Assert.Empty(DrawnPlanks.Of(shown, l, Side.Port)));
    }

    /// <summary>Moved by a millimetre on one side alone a joint is listed for each side by itself.</summary>
    [Fact]
    public void JointsThatDifferAreListedForEachSide()
    {
        BottomPlan plan = Plan("scarfs");
        JointedLayer port = plan.Joints.Of(1, Side.Port)!;
        JointedPlank plank = port.Planks[0];
        JointedLayer moved = port with
        {
            Planks = port.Planks.SetItem(
                0,
                plank with
                {
                    Joints = plank.Joints.SetItem(
                        0,
                        plank.Joints[0] with
                        {
                            AtMm = plank.Joints[0].AtMm + 1,
                        }
                    ),
                }
            ),
        };
        BottomPlan odd = plan with
        {
            Joints = plan.Joints with { Layers = plan.Joints.Layers.Replace(port, moved) },
        };
        string[] all =
        [
            .. JointPages.Of(odd).SelectMany(p => p.Shapes.OfType<Lettering>()).Select(l => l.Text),
        ];
        Assert.Contains(plank.Joints[0].Id.ToString(), all);
        Assert.Contains(plank.Joints[0].Id.Twin.ToString(), all);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void MapsOfJointsAreLegibleAndShowEveryJoint(string kind)
    {
        BottomPlan plan = Plan(kind);
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Drawing map = JointMap.Of(plan, layer);
            None(SheetCheck.Faults(map));
            int joints = plan
                .Joints.Layers.Where(l => l.Layer == layer.Number)
                .Sum(l => l.Planks.Sum(p => p.Joints.Length));
            Assert.Equal(
                joints,
                map.Shapes.OfType<Polyline>()
                    .Count(p => p.Layer == Layers.Joints && !p.Pen.IsDashed)
            );
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void CardsListsAndPatternsStayLegible(string kind)
    {
        BottomPlan plan = Plan(kind);
        None(
            PlankCardPages
                .Of(OnPlanks.Of(plan))
                .Concat(PlankListPages.Of(OnPlanks.Of(plan)))
                .SelectMany(d => SheetCheck.Faults(d).Concat(SheetCheck.Struck(d, _ => true)))
        );
        None(
            plan.PlankLayers.SelectMany(l =>
                    FullSizePattern.Of(OnPlanks.Of(plan), l, Side.Starboard)
                )
                .SelectMany(d => SheetCheck.Faults(d))
        );
    }

    /// <summary>No joint's line runs through a tick's or a piece's name on the patterns for the machine.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void NoJointRunsThroughWordsOfAPattern(string kind)
    {
        BottomPlan plan = Plan(kind);
        foreach (PlankId id in plan.Joints.ByPlank.Keys)
        {
            Drawing pattern = CuttingPattern.Of(OnPlanks.Of(plan), plan.Find(id)!);
            Drawing joints = pattern with
            {
                Shapes = [.. pattern.Shapes.Where(s => s is Lettering || s.Layer == Layers.Joints)],
            };
            None(SheetCheck.Struck(joints, _ => true));
        }
    }

    private static void None(IEnumerable<string> faults)
    {
        string[] all = [.. faults];
        Assert.True(all.Length == 0, $"{all.Length} faults:\n" + string.Join("\n", all.Take(20)));
    }
}
