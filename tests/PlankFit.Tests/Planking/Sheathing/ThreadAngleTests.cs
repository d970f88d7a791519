using System.Collections.Immutable;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Sheathing;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>At which angles threads come to chine and transom, against the threads as they lie in space.</summary>
public sealed class ThreadAngleTests
{
    /// <summary>Each mesh's own threads, by the directions from its neighbours' middles, against the edge's on the hull.</summary>
    [Theory]
    [InlineData(PanelEdge.Upper, true)]
    [InlineData(PanelEdge.Upper, false)]
    [InlineData(PanelEdge.Transom, true)]
    [InlineData(PanelEdge.Transom, false)]
    public void TheyAreThoseOfTheThreadsInSpace(PanelEdge edge, bool ofFirst)
    {
        SheathedSide side = SheathedJobs.Pressed.Sheathing!.Layers.Single().Sides.Single();
        FlatEdge line = side.Edges.Of(edge)!;
        ThreadAngles Of(FlatEdge of)
        {
            (ThreadAngles first, ThreadAngles second) = ThreadAngles
                .Of(side with { Edges = new([of]) }, edge)!
                .Value;
            return ofFirst ? first : second;
        }

        Vec2 step = side.Net.MeshMm * (ofFirst ? side.Net.Weave.First : side.Net.Weave.Second);
        List<double> all = [];
        int checkedPlaces = 0;
        for (int i = 0; i + 1 < line.Flat.Length; i++)
        {
            Vec2 at = 0.5 * (line.Flat[i] + line.Flat[i + 1]);
            if (side.Net.ShearAt(at) is null)
            {
                continue;
            }

            ThreadAngles told = Of(new(edge, line.Flat[i..(i + 2)], line.OnHull[i..(i + 2)]));
            Assert.Equal(told.Least, told.Most);
            all.Add(told.Least);
            ClothMesh here = Nearest(side.Net, at);
            ClothMesh[] beside =
            [
                .. new[] { -1 * step, step }
                    .Select(s => (Mesh: Nearest(side.Net, here.Middle + s), At: here.Middle + s))
                    // At the cloth's end there is none.
                    .Select(n => n.Mesh.Middle.ChordTo(n.At) < 1e-6 ? n.Mesh : here),
            ];
            if (here.Middle.ChordTo(at) > side.Net.MeshMm || beside[0] == beside[1])
            {
                continue;
            }

            // What a mesh is off the edge the threads have turned, and the edge bends within a step.
            Assert.Equal(
                Between(beside[1].P - beside[0].P, line.OnHull[i + 1] - line.OnHull[i]),
                told.Least,
                1.0
            );
            checkedPlaces++;
        }

        Assert.True(checkedPlaces > 10, $"{checkedPlaces}");
        Assert.Equal(new ThreadAngles(all.Min(), all.Max()), Of(line));
    }

    /// <summary>
    /// On a sphere, so far from the line that is laid first that the threads stand at 84 degrees to each other or at 96: what runs along the one diagonal of a mesh halves what
    /// they stand at in space, what runs along the other halves the rest, and what runs along a thread has all of it.
    /// </summary>
    [Fact]
    public void WhatRunsAlongADiagonalHalvesTheAngleOfTheThreads()
    {
        const double r = 3000,
            mesh = 25;
        var sphere = new SphereSurface(r);
        var ground = new ClothGround(
            sphere,
            at => Math.Max(Math.Abs(at.U * r) - 1900, Math.Abs(at.V * r) - 1700)
        );
        var line = LaidLine.Straight(ground, new(0, 0), Vec3.UnitY, 200);
        int left = sphere.At(0, 0).Left(Vec3.UnitY).Z > 0 ? 1 : -1;
        ClothNet net = ClothLaying.Along(ground, line, left, mesh);
        ClothMesh here = Nearest(net, new(0, 1000));
        Vec3 Thread(Vec2 way) =>
            Nearest(net, here.Middle + (mesh * way)).P - Nearest(net, here.Middle - (mesh * way)).P;
        double open =
            Math.Acos(Thread(net.Weave.First).Unit().Dot(Thread(net.Weave.Second).Unit()))
            * 180
            / Math.PI;
        Assert.InRange(Math.Abs(open - 90), 5, 7);
        SheathedSide side = SheathedJobs.Pressed.Sheathing!.Layers.Single().Sides.Single();
        (double First, double Second) Of(Vec2 way)
        {
            ImmutableArray<Vec2> run = [here.Middle - (5 * way), here.Middle + (5 * way)];
            (ThreadAngles first, ThreadAngles second) = ThreadAngles
                .Of(
                    side with
                    {
                        Net = net,
                        Edges = new([new(PanelEdge.Upper, run, [])]),
                    },
                    PanelEdge.Upper
                )!
                .Value;
            return (first.Least, second.Most);
        }

        (Vec2 one, Vec2 other) = (net.Weave.First, net.Weave.Second);
        Near((open / 2, open / 2), Of(one + other));
        Near((90 - (open / 2), 90 - (open / 2)), Of(one - other));
        double acute = Math.Min(open, 180 - open);
        Near((0, acute), Of(one));
        Near((acute, 0), Of(-1 * other));

        static void Near((double, double) should, (double, double) there)
        {
            Assert.Equal(should.Item1, there.Item1, 0.1);
            Assert.Equal(should.Item2, there.Item2, 0.1);
        }
    }

    /// <summary>
    /// On a plane bottom nothing is sheared: of a cloth at 45 degrees whose roll is turned by three, aft end towards the chine, the first set comes to the chine at 42 degrees
    /// and the second at 48, and to the transom, square to the chine, the other way about.
    /// </summary>
    [Fact]
    public void OnAPlaneBottomTheyAreThoseOfTheRoll()
    {
        SheathedSide side = WholeBottomTests
            .Planned(
                SheathedJobs.Outside(
                    PrismaticPlan.Build(new Prism(KeelHalfBreadthMm: 30)).Job,
                    s => s with { FirstAlong = new FirstLine.Straight(0.4, 3) }
                )
            )
            .Sheathing!.Layers[0]
            .Sides[0];
        foreach (
            (PanelEdge edge, double a, double b) in new[]
            {
                (PanelEdge.Upper, 42.0, 48.0),
                (PanelEdge.Transom, 48.0, 42.0),
            }
        )
        {
            (ThreadAngles first, ThreadAngles second) = ThreadAngles.Of(side, edge)!.Value;
            Assert.Equal(a, first.Least, 0.01);
            Assert.Equal(a, first.Most, 0.01);
            Assert.Equal(b, second.Least, 0.01);
            Assert.Equal(b, second.Most, 0.01);
        }
    }

    /// <summary>Of two lines, degrees.</summary>
    private static double Between(Vec3 one, Vec3 other) =>
        Math.Acos(Math.Abs(one.Unit().Dot(other.Unit()))) * 180 / Math.PI;

    private static ClothMesh Nearest(ClothNet net, Vec2 at) =>
        net.Meshes.MinBy(m => m.Middle.ChordTo(at));
}
