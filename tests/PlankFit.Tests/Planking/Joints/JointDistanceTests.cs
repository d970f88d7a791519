using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>
/// Every distance that is told of a joint, worked anew on a plane bottom: there all planks of a layer are parallel, the layers lie over each other square to
/// one plane, and distances in it are those of a polygon library.
/// </summary>
public sealed class JointDistanceTests
{
    private const double SightMm = 500;

    private static readonly Prism Prism = new(LengthMm: 4200, MasterMm: 2200);

    private static readonly Lazy<BottomPlan> Plan = new(() => Planned(50));

    private static BottomPlan Planned(double gridMm) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(Prism).Job with
            {
                Joints = new(
                    new(
                        1100,
                        250,
                        JointKind.Scarf,
                        8,
                        new(ButtCut.Square, JointStock.Carrying, null, 15),
                        gridMm,
                        []
                    ),
                    ImmutableDictionary<string, JointStock>.Empty,
                    [
                        new(JointRuleKind.NextPlank, 150, null, "test"),
                        new(JointRuleKind.OneBetween, 50, null, "test"),
                        new(JointRuleKind.SameBacking, 40, 1, "test"),
                        new(JointRuleKind.JointsBelow, 30, null, "test"),
                        new(JointRuleKind.SeamsBelow, 10, null, "test"),
                    ]
                ),
            }
        );

    private static readonly Lazy<BottomPlan> OnStringers = new(() =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(Prism).Job with
            {
                Framing =
                [
                    .. new[] { 450, 650 }.Select(d => new FramingSpec(
                        $"stringer at {d}",
                        FramingKind.Stringer,
                        new FramingLine.FromKeel(d),
                        45,
                        null,
                        null
                    )),
                ],
                Joints = new(
                    new(
                        1100,
                        250,
                        JointKind.Butt,
                        8,
                        new(ButtCut.AlongBacking, JointStock.Carrying, null, 15),
                        50,
                        []
                    ),
                    ImmutableDictionary<string, JointStock>.Empty,
                    [
                        new(JointRuleKind.NextPlank, 100, null, "test"),
                        new(JointRuleKind.OneBetween, 50, null, "test"),
                        new(JointRuleKind.SameBacking, null, 1, "test"),
                        new(JointRuleKind.JointsBelow, 0, null, "test"),
                        new(JointRuleKind.SeamsBelow, 0, null, "test"),
                    ]
                ),
            }
        )
    );

    /// <summary>A joint of a layer, its middle line in the plane (x, distance up the slant), and which plank of the layer has it.</summary>
    private sealed record Seen(
        PlankJoint Joint,
        int Plank,
        Vec2 A,
        Vec2 B,
        Vec2 Middle,
        Vec2 Grain
    );

    [Fact]
    public void DistancesAlongThePlanksAreThoseOfThePlane()
    {
        int told = 0;
        foreach (Seen[] layer in AllLayers())
        {
            foreach (Seen here in layer)
            {
                foreach (
                    (JointRuleKind what, int apart) in new[]
                    {
                        (JointRuleKind.NextPlank, 1),
                        (JointRuleKind.OneBetween, 2),
                    }
                )
                {
                    (double Mm, string Id)[] others =
                    [
                        .. layer
                            .Where(o => Math.Abs(o.Plank - here.Plank) == apart)
                            .Select(o =>
                                (
                                    Math.Abs((o.Middle - here.Middle).Dot(here.Grain)),
                                    o.Joint.Id.ToString()
                                )
                            ),
                    ];
                    JointDistance? said = here.Joint.Distances.SingleOrDefault(d =>
                        d.Rule.What == what
                    );
                    Assert.Equal(others.Length > 0, said is not null);
                    if (said is null)
                    {
                        continue;
                    }

                    double least = others.Min(o => o.Mm);
                    Assert.Null(said.Between);
                    Assert.Equal(least, said.DistanceMm!.Value, 1e-3);
                    Assert.True(least >= said.Rule.DistanceMm - 1e-3, here.Joint.Id.ToString());
                    Assert.Contains(others, o => o.Id == said.To && o.Mm < least + 1e-3);
                    told++;
                }
            }
        }

        Assert.True(told > 60, $"{told}");
    }

    /// <summary>Butts on two stringers with one plank asked between those on one: the next plank goes to the other stringer, and the one after it comes back.</summary>
    [Fact]
    public void PlanksBetweenAreCounted()
    {
        JointedLayer pieced = OnStringers.Value.Joints.Of(1, Side.Starboard)!;
        PlankId[] planks = [.. OnStringers.Value.PlankLayers.First().Starboard.Select(p => p.Id)];
        (int Plank, PlankJoint Joint)[] joints =
        [
            .. pieced.Planks.SelectMany(p =>
                p.Joints.Select(j => (Array.IndexOf(planks, p.PlankId), j))
            ),
        ];
        Assert.True(joints.Length > 8);
        Assert.Equal(2, joints.Select(j => j.Joint.Backing).Distinct().Count());
        foreach ((int plank, PlankJoint joint) in joints)
        {
            (int Between, string Id)[] same =
            [
                .. joints
                    .Where(o => o.Joint != joint && o.Joint.Backing == joint.Backing)
                    .Select(o => (Math.Abs(o.Plank - plank) - 1, o.Joint.Id.ToString())),
            ];
            JointDistance said = joint.Distances.Single(d =>
                d.Rule.What == JointRuleKind.SameBacking
            );
            Assert.Null(said.DistanceMm);
            Assert.Equal(1, said.Between);
            Assert.Equal(1, same.Min(o => o.Between));
            Assert.Contains((1, said.To), same);
        }
    }

    /// <summary>The skins cross at 90°, so that a joint square across the outer runs with the seams of the inner, and both are held apart.</summary>
    [Fact]
    public void WhatLiesBelowIsToldAndKeptClearOf()
    {
        int joints = 0,
            seams = 0;
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            Seen[] under = Layer(1, side);
            (string Id, LineString Line)[] seamsUnder = [.. Seams(side)];
            Assert.All(
                under,
                j =>
                    Assert.DoesNotContain(
                        j.Joint.Distances,
                        d => d.Rule.What >= JointRuleKind.JointsBelow
                    )
            );
            foreach (Seen here in Layer(2, side))
            {
                LineString line = Line(here.A, here.B);
                joints += Told(
                    here.Joint,
                    JointRuleKind.JointsBelow,
                    [.. under.Select(u => (u.Joint.Id.ToString(), line.Distance(Line(u.A, u.B))))]
                );
                seams += Told(
                    here.Joint,
                    JointRuleKind.SeamsBelow,
                    [.. seamsUnder.Select(s => (s.Id, line.Distance(s.Line)))]
                );
            }
        }

        Assert.True(joints > 20 && seams > 20, $"{joints} joints, {seams} seams");
    }

    /// <summary>
    /// A plank of 1.5 m has some 700 mm in which it may be scarfed once: on a grid of 50 mm every place is compared for its waste, on one of 5 mm only 48 of
    /// them, and then no more is claimed.
    /// </summary>
    [Theory]
    [InlineData(50, true)]
    [InlineData(5, false)]
    public void LeastWasteIsClaimedWhereNoWayWasLeftOut(double gridMm, bool claimed)
    {
        JointedLayer pieced = Planned(gridMm).Joints.Of(1, Side.Starboard)!;
        Assert.Equal(claimed, pieced.IsLeastWaste);
        Assert.Equal(pieced.LeastPieces, pieced.Pieces);
        // Without lengths of stock, how far the pieces are from even; planks of one piece cost nothing.
        Assert.Equal(
            pieced.Planks.Sum(p =>
                p.Pieces.Sum(q => Math.Abs(q.LengthMm - p.Pieces.Average(r => r.LengthMm)))
            ),
            pieced.WasteMm,
            1e-6
        );
    }

    private static int Told(PlankJoint joint, JointRuleKind what, (string Id, double Mm)[] below)
    {
        double least = below.Min(b => b.Mm);
        JointDistance? said = joint.Distances.SingleOrDefault(d => d.Rule.What == what);
        Assert.Equal(least < SightMm, said is not null);
        if (said is null)
        {
            return 0;
        }

        Assert.Equal(least, said.DistanceMm!.Value, 1e-3);
        Assert.True(least >= said.Rule.DistanceMm, $"{joint.Id} is {least} mm from {said.To}");
        Assert.Contains(below, b => b.Id == said.To && b.Mm < least + 1e-3);
        return 1;
    }

    private static IEnumerable<Seen[]> AllLayers() =>
        from number in new[] { 1, 2 }
        from side in new[] { Side.Starboard, Side.Port }
        select Layer(number, side);

    private static Seen[] Layer(int number, Side side)
    {
        JointedLayer? pieced = Plan.Value.Joints.Of(number, side);
        Assert.True(
            pieced is not null,
            string.Join("\n", Plan.Value.Findings.Select(f => f.Message))
        );
        Plank[] planks = [.. Plan.Value.PlankLayers.Single(l => l.Number == number).On(side)];
        return
        [
            .. pieced.Planks.SelectMany(p =>
            {
                int at = Array.FindIndex(planks, q => q.Id == p.PlankId);
                Vec2 zero = Flat(planks[at], new(0, 0)),
                    one = Flat(planks[at], new(1, 0));
                return p.Joints.Select(j =>
                {
                    Vec2 a = Flat(planks[at], 0.5 * (j.OuterLine[0] + j.InnerLine[0])),
                        b = Flat(planks[at], 0.5 * (j.OuterLine[1] + j.InnerLine[1]));
                    return new Seen(j, at, a, b, Flat(planks[at], new(j.AtMm, 0)), one - zero);
                });
            }),
        ];
    }

    private static IEnumerable<(string Id, LineString Line)> Seams(Side side)
    {
        Plank[] planks = [.. Plan.Value.PlankLayers.First().On(side)];
        foreach (Plank plank in planks.Where(p => p.AfterEdge.Exists))
        {
            Vec2[] flat = [.. plank.AfterEdge.Flat.Select(p => Flat(plank, p))];
            yield return ($"{plank.Id}/{plank.AfterEdge.Neighbour!.Value.Padded}", Line(flat));
        }
    }

    /// <summary>In the plane: x, and up the slant from the middle line.</summary>
    private static Vec2 Flat(Plank plank, Vec2 on)
    {
        Vec3 p = plank.Map.Point(on);
        return new(
            p.X,
            (Math.Abs(p.Y) * Math.Cos(Prism.Deadrise)) + (p.Z * Math.Sin(Prism.Deadrise))
        );
    }

    private static LineString Line(params Vec2[] points) =>
        new([.. points.Select(p => new Coordinate(p.X, p.Y))]);
}
