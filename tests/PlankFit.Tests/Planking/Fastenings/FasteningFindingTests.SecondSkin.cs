using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>What the second skin's fastenings miss.</summary>
public sealed partial class FasteningFindingTests
{
    /// <summary>The outer skin's fastenings keep from every joint of the inner, measured in the plane. Unasked they would not.</summary>
    [Fact]
    public void TheSecondSkinKeepsFromTheJointsBelow()
    {
        Assert.True(Nearest(12) > 12 - 0.05);
        Assert.True(Nearest(0) < 6);

        static double Nearest(double belowMm)
        {
            BottomPlan plan = Planned(
                new()
                {
                    SpacingMm = 40,
                    NearestMm = 30,
                    BelowMm = belowMm,
                    MissMm = 0,
                },
                Stringer,
                new(
                    new(
                        1100,
                        250,
                        JointKind.Scarf,
                        8,
                        new(ButtCut.Square, JointStock.Carrying, null, 15),
                        50,
                        []
                    ),
                    ImmutableDictionary<string, JointStock>.Empty,
                    [
                        new(JointRuleKind.NextPlank, 150, null, "test"),
                        new(JointRuleKind.SameBacking, 40, 0, "test"),
                        new(JointRuleKind.JointsBelow, 0, null, "test"),
                        new(JointRuleKind.SeamsBelow, 0, null, "test"),
                    ]
                )
            );
            (Vec3 A, Vec3 B)[] joints =
            [
                .. plan
                    .Joints.Of(1, Side.Starboard)!
                    .Planks.SelectMany(p =>
                        p.Joints.SelectMany(j =>
                            new[] { j.OuterLine, j.InnerLine }.Select(l =>
                                (
                                    plan.Find(p.PlankId)!.Map.Point(l[0]),
                                    plan.Find(p.PlankId)!.Map.Point(l[1])
                                )
                            )
                        )
                    ),
            ];
            Assert.True(joints.Length > 20);
            return plan
                .PlankLayers.Last()
                .Starboard.SelectMany(p =>
                    plan.Fastenings!.On(p.Id)!.Points.Select(f => p.Map.Point(f.At))
                )
                .Min(at => joints.Min(j => InPlane(at, j.A, j.B)));
        }

        // The skins are parallel, so that what is square to them drops out.
        static double InPlane(Vec3 at, Vec3 a, Vec3 b)
        {
            var prism = new Prism();
            Vec2 On(Vec3 p) =>
                new(p.X, (p.Y * Math.Cos(prism.Deadrise)) + (p.Z * Math.Sin(prism.Deadrise)));
            Vec2 along = On(b) - On(a),
                off = On(at) - On(a);
            double part = Math.Clamp(off.Dot(along) / along.Dot(along), 0, 1);
            return (off - (part * along)).Norm;
        }
    }
}
