using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Framing;

/// <summary>
/// What lies behind a prismatic bottom: every line is straight, every distance worked by hand in (x, slant) of the plane, and every crossing held to the line
/// met with the planks' own outlines in space, carried to the flat vertex by vertex.
/// </summary>
public sealed class PrismBehindTests
{
    private static readonly Prism Bottom = new(KeelHalfBreadthMm: 30, ClothMm: 1);

    private static readonly ImmutableArray<FramingSpec> Things =
    [
        new("S1", FramingKind.Stringer, new FramingLine.FromKeel(300), 40, null, null),
        new("S2", FramingKind.Stringer, new FramingLine.FromChine(210), 30, 1000, 5200),
        new("F3", FramingKind.Frame, new FramingLine.AtStation("3"), 45, null, null),
        new("floor", FramingKind.Floor, new FramingLine.AtPosition(2345), 60, null, null)
        {
            OutToMm = 480,
        },
        new(
            "pad",
            FramingKind.Solid,
            new FramingLine.Spot(new FramingLine.FromKeel(620), new FramingLine.AtPosition(4321)),
            150,
            null,
            null
        )
        {
            LengthMm = 260,
            Only = Side.Port,
        },
    ];

    [Fact]
    public void EveryLineLiesWhereTheTapeSays()
    {
        BottomPlan plan = Planned();
        double station = plan.Job.Offsets.Stations.Single(s => s.Name == "3").PositionMm,
            // The keel's plumb side cuts the inner face (19 mm under the table's) outboard of the keel line's own slant.
            keel = Bottom.KeelMm(-19);
        (string Name, bool Along, double Centre, double Width)[] should =
        [
            ("S1", true, keel + 300, 40),
            ("S2", true, Bottom.ChineMm - 210, 30),
            ("F3", false, station, 45),
            ("floor", false, 2345, 60),
            ("pad", true, keel + 620, 150),
        ];
        int held = 0;
        foreach (Plank plank in Planks(plan))
        {
            foreach (FramingCrossing c in plan.Framing.On(plank.Id))
            {
                (_, bool along, double centre, double width) = should.Single(s =>
                    s.Name == c.Of.Name
                );
                held += Hold(plank, c.Centre, along, centre, centre);
                held += Hold(plank, c.OneEdge, along, centre - (width / 2), centre + (width / 2));
                held += Hold(plank, c.OtherEdge, along, centre - (width / 2), centre + (width / 2));
            }
        }

        Assert.True(held > 2000, $"{held} points");
    }

    [Fact]
    public void CrossingsAreThoseOfTheOutlinesInSpace()
    {
        BottomPlan plan = Planned();
        double keel = Bottom.KeelMm(-19);
        int met = 0;
        foreach (Plank plank in Planks(plan))
        {
            Vec2[] meets = Meets(plank, p => Slant(p) - (keel + 300));
            FramingCrossing? c = plan.Framing.On(plank.Id).SingleOrDefault(b => b.Of.Name == "S1");
            if (meets.Length == 0)
            {
                Assert.True(c is null || c.Centre.IsEmpty, $"{plank.Id} is not crossed");
                continue;
            }

            Assert.Equal(2, meets.Length);
            if (meets[0].ChordTo(meets[1]) < 0.5)
            {
                continue;
            }

            Assert.NotNull(c);
            foreach (Vec2 end in new[] { c.Centre[0], c.Centre[^1] })
            {
                Assert.InRange(meets.Min(m => m.ChordTo(end)), 0, 0.01);
            }

            Assert.True(c.Centre[^1].Y > c.Centre[0].Y, "from lesser to greater n");
            met++;
        }

        Assert.True(met > 110, $"{met} planks crossed");
    }

    [Fact]
    public void CoversAddUpToTheStrips()
    {
        BottomPlan plan = Planned();
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            double keelThere = Bottom.KeelMm(layer.NeutralOffsetMm);
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                Assert.Equal(40 * Bottom.LengthMm, Area(plan, layer, side, "S1"), 5);
                Assert.Equal(30 * 4200, Area(plan, layer, side, "S2"), 5);
                Assert.Equal(45 * (Bottom.ChineMm - keelThere), Area(plan, layer, side, "F3"), 5);
                Assert.Equal(
                    60 * (Bottom.KeelMm(-19) + 480 - keelThere),
                    Area(plan, layer, side, "floor"),
                    5
                );
                Assert.Equal(side == Side.Port ? 150 * 260 : 0, Area(plan, layer, side, "pad"), 5);
            }
        }
    }

    /// <summary>Seams stand at 45° to the keel, so that a line so far up the slant from the keel's side is √2 times as far along them.</summary>
    [Fact]
    public void DistancesAlongThePlanksEdgesAreThoseOfTriangles()
    {
        BottomPlan plan = Planned();
        int held = 0;
        foreach (Plank plank in Planks(plan))
        {
            PlankLayerPlan layer = plan.PlankLayers.Single(l => l.Number == plank.Layer);
            double should =
                (Bottom.KeelMm(-19) + 300 - Bottom.KeelMm(layer.NeutralOffsetMm)) * Math.Sqrt(2);
            foreach (FramingCrossing c in plan.Framing.On(plank.Id).Where(c => c.Of.Name == "S1"))
            {
                foreach (FramingAtEdge at in FramingAtEdge.Of(plank, c))
                {
                    PlankEdge? edge =
                        at.Edge == "forward edge" ? plank.ForwardEdge
                        : at.Edge == "after edge" ? plank.AfterEdge
                        : null;
                    if (edge is { Seam: var seam } && Slant(seam[0]) < Bottom.KeelMm(0) + 20)
                    {
                        Assert.Equal(should, at.Mm, 0.02);
                        held++;
                    }
                }
            }
        }

        Assert.True(held > 150, $"{held} edges");
    }

    /// <summary>The face of the second skin lies 9 mm under the table's, the stringers' 19 mm: the plumb keel's side stands (19 − 9) tan 20° nearer there.</summary>
    [Fact]
    public void LinesToSnapAreReadFromTheFaceThatIsStoodOn()
    {
        SnapFace face = Planned().Framing.Snaps.Single();
        Assert.Equal(2, face.Layer);
        Assert.Equal(-9, face.FaceMm, 1e-9);
        double nearer = 10 * Math.Tan(Bottom.Deadrise),
            girth = Bottom.ChineMm - Bottom.KeelMm(-9);
        Assert.All(face.Girths, g => Assert.Equal(girth, g.GirthMm, 1e-6));
        SnapMark[] s1 = [.. face.Marks.Where(m => m.Of.Name == "S1")];
        Assert.Equal(face.Girths.Select(g => g.Station), s1.Select(m => m.At.Station));
        Assert.All(
            s1,
            m =>
            {
                Assert.Equal(300 + nearer, m.FromKeelMm, 1e-4);
                Assert.Equal(girth - 300 - nearer, m.FromChineMm, 1e-4);
                Assert.Equal(0, m.At.AbaftMm, 1e-6);
            }
        );
        SnapMark[] s2 = [.. face.Marks.Where(m => m.Of.Name == "S2")];
        Assert.All(s2, m => Assert.Equal(210, m.FromChineMm, 1e-4));
        Assert.Equal(1000, s2[0].XMm, 1e-6);
        Assert.Equal(SnapPlace.Begins, s2[0].Is);
        Assert.Equal(5200, s2[^1].XMm, 1e-6);
        Assert.Equal(SnapPlace.Ends, s2[^1].Is);
        SnapMark pad = face.Marks.Single(m => m.Of.Name == "pad");
        Assert.Equal((4321.0, SnapPlace.Middle), (Math.Round(pad.XMm, 6), pad.Is));
        Assert.Equal(620 + nearer, pad.FromKeelMm, 1e-4);

        SnapAcross frame = face.Across.Single(a => a.Of.Name == "F3");
        Assert.Equal("3", frame.AtKeel!.Value.Station);
        Assert.Equal(0, frame.AtKeel.Value.AbaftMm, 1e-6);
        Assert.Equal(0, frame.AtChine!.Value.AbaftMm, 1e-6);
        SnapAcross floor = face.Across.Single(a => a.Of.Name == "floor");
        var near = FromStation.Of(Planned().Hull.Stations, 2345);
        Assert.Equal(near.Station, floor.AtKeel!.Value.Station);
        Assert.Equal(near.AbaftMm, floor.AtKeel.Value.AbaftMm, 1e-6);
        Assert.Null(floor.AtChine);
        Assert.Equal(480 + nearer, floor.OutToMm!.Value, 1e-4);
    }

    private static double Area(BottomPlan plan, PlankLayerPlan layer, Side side, string name)
    {
        double sum = 0;
        foreach (
            ImmutableArray<Vec2> cover in layer
                .On(side)
                .SelectMany(p => plan.Framing.On(p.Id))
                .Where(c => c.Of.Name == name)
                .Select(c => c.Cover)
        )
        {
            double twice = 0;
            for (int i = 0; i < cover.Length; i++)
            {
                twice += cover[i].Cross(cover[(i + 1) % cover.Length]);
            }

            Assert.True(twice > 0, "counter-clockwise");
            sum += twice / 2;
        }

        return sum;
    }

    private static BottomPlan Planned() =>
        WholeBottomTests.Planned(PrismaticPlan.Build(Bottom).Job with { Framing = Things });

    private static IEnumerable<Plank> Planks(BottomPlan plan) =>
        plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port));

    private static int Hold(Plank plank, ImmutableArray<Vec2> line, bool along, double a, double b)
    {
        foreach (Vec2 flat in line)
        {
            Vec3 p = plank.Map.Point(flat);
            double at = along ? Slant(p) : p.X;
            Assert.True(
                Math.Min(Math.Abs(at - a), Math.Abs(at - b)) < 0.01,
                $"{plank.Id}: {at} and not {a} or {b}"
            );
        }

        return line.Length;
    }

    private static double Slant(Vec3 p) =>
        (Math.Abs(p.Y) * Math.Cos(Bottom.Deadrise)) + (p.Z * Math.Sin(Bottom.Deadrise));

    /// <summary>Where a level of the plane crosses the outline in space, carried to the flat by the part of the side that it cuts off.</summary>
    private static Vec2[] Meets(Plank plank, Func<Vec3, double> level)
    {
        var meets = new List<Vec2>();
        for (int i = 0; i < plank.Outline.Length; i++)
        {
            int k = (i + 1) % plank.Outline.Length;
            double a = level(plank.Outline[i]),
                b = level(plank.Outline[k]);
            if (a < 0 != b < 0)
            {
                meets.Add(plank.FlatNet[i] + (a / (a - b) * (plank.FlatNet[k] - plank.FlatNet[i])));
            }
        }

        return [.. meets];
    }
}
