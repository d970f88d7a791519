using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Bottoms that lie flat as they are: the cloth's flat plan is theirs to the hundredth, and nothing is sheared.</summary>
public sealed class DevelopableClothTests
{
    /// <summary>
    /// A plane bottom of 6000 with a keel 60 wide: the cloth on it is a rectangle of the girth on its face, with what goes over the keel's half, past the centre line,
    /// round chine, transom and stem, and of the excess.
    /// </summary>
    [Theory]
    [InlineData(25, 0)]
    [InlineData(12, 3)]
    public void APlaneBottomIsARectangle(double deadrise, double turned)
    {
        Job job = PrismaticPlan
            .Build(new Prism(DeadriseDegrees: deadrise, KeelHalfBreadthMm: 30))
            .Job;
        SheathedLayer layer = Plan(
            SheathedJobs.Outside(
                job,
                s =>
                    s with
                    {
                        Keel = new ClothAtKeel.PastCentreLine(50),
                        RoundChineMm = 75,
                        RoundTransomMm = 60,
                        RoundStemMm = 40,
                        FirstAlong = new FirstLine.Straight(0.4, turned),
                    }
            )
        ).Layers[0];
        SheathedSide side = layer.Sides[0];
        Assert.True(side.MostShear < 1e-6);
        foreach (FlatEdge edge in side.Edges.Edges)
        {
            Assert.Equal(
                edge.OnHull[0].ChordTo(edge.OnHull[^1]),
                edge.Flat[0].ChordTo(edge.Flat[^1]),
                1e-3
            );
        }

        double girth = side.FaceAreaMm2 / 6000,
            half = side.Marks[0].KeelHalfMm;
        Assert.Equal((970 / Math.Cos(deadrise * Math.PI / 180)), girth, 1.0);
        Assert.Equal(6100 * (girth + half + 125), FlatPolygon.Area(side.Trim), 5.0);
        Assert.Equal(6150 * (girth + half + 175), FlatPolygon.Area(side.Cut), 5.0);
        // The first line was laid through 0.4 of the girth halfway along, turned away from the keel.
        StationMarks[] on = [.. side.Marks.Where(m => m.Lines.Length > 0)];
        (StationMarks a, StationMarks b) = (on[0], on[^1]);
        Assert.Equal(
            Math.Tan(turned * Math.PI / 180),
            (b.Lines[0].FromKeelMm - a.Lines[0].FromKeelMm) / (b.XMm - a.XMm),
            1e-4
        );
        Assert.Equal(
            0.4 * girth,
            a.Lines[0].FromKeelMm + ((3000 - a.XMm) * Math.Tan(turned * Math.PI / 180)),
            0.1
        );

        // The cross is halfway along; on the piece, as seen from outside, so far from the bow's edge with what goes round the stem and the excess.
        Assert.Equal(0.4 * girth, side.Cross.FromKeelMm, 0.1);
        Assert.Equal(girth, side.Cross.FromKeelMm + side.Cross.FromChineMm, 0.1);
        if (turned == 0)
        {
            ClothPiece starboard = layer.Pieces.First(p => p.Side == Side.Starboard),
                port = layer.Pieces.First(p => p.Side == Side.Port);
            Assert.Equal(3065, starboard.LengthMm - starboard.Cross.X, 0.5);
            Assert.Equal(3065, port.Cross.X, 0.5);
            Assert.Equal((0.4 * girth) + half + 75, starboard.Cross.Y, 0.5);
            Assert.Equal(new Vec2(1, 0), starboard.Bow);
            Assert.Equal(new Vec2(-1, 0), port.Bow);
        }
    }

    /// <summary>
    /// The bottom is a piece of a cone, keel and chine at 1 and 1.1 of the way from its apex: flat distances are those of polar coordinates about the apex, the angle
    /// that which the rulings sweep. The cloth lies on the innermost face, which is the table's.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AConicalBottomLiesFlatAsItsSector(bool woven)
    {
        Vec3 apex = new(2500, -8000, -2500);
        const int n = 13;
        static Vec3 Keel(double t) => new(5000 * t, 25 + (60 * t), 140 - (260 * t) + (200 * t * t));
        OffsetLine Line(string name, Func<double, Vec3> at)
        {
            Vec3[] p = [.. Enumerable.Range(0, n).Select(i => at(i / (n - 1.0)))];
            return new(
                name,
                [.. p.Select(q => (double?)q.X)],
                [.. p.Select(q => (double?)q.Z)],
                [.. p.Select(q => (double?)q.Y)]
            );
        }

        Job job = new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. Enumerable.Range(0, n).Select(i => new Station($"{i}", Keel(i / 12.0).X))],
                    [Line("keel", Keel), Line("chine", t => Keel(t) + (0.1 * (Keel(t) - apex)))]
                ),
                new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
                [
                    new ClothLayerSpec("inside", 0.5),
                    new PlankLayerSpec(
                        "skin",
                        6,
                        new(150, 0.5),
                        new(Heads.Aft, 60, null, Hold.Width, 7.5, null)
                    ),
                ],
                EndRules.Default,
                BendLimits.Default
            )
        )
        {
            Cloths = [SheathedJobs.Stitched, SheathedJobs.Woven],
            Sheathing =
            [
                SheathedJobs.Usual("inside") with
                {
                    Cloth = woven ? SheathedJobs.Woven.Name : SheathedJobs.Stitched.Name,
                },
            ],
        };
        SheathedSide side = Plan(job).Layers[0].Sides[0];
        Assert.True(side.MostShear < 0.01, $"{side.MostShear}");
        Vec2 Polar(Vec3 p, double t)
        {
            double swept = 0;
            const int steps = 2000;
            Vec3 before = (Keel(0) - apex).Unit();
            for (int i = 1; i <= steps; i++)
            {
                Vec3 ruling = (Keel(t * i / steps) - apex).Unit();
                swept += Math.Asin(before.Cross(ruling).Norm);
                before = ruling;
            }

            double far = p.ChordTo(apex);
            return new(far * Math.Cos(swept), far * Math.Sin(swept));
        }

        (Vec2 Flat, Vec2 Exact)[] places =
        [
            .. Places(PanelEdge.Lower, x => x / 5000),
            .. Places(PanelEdge.Upper, x => (((x - 2500) / 1.1) + 2500) / 5000),
        ];
        foreach ((Vec2 flat, Vec2 exact) in places)
        {
            Assert.All(
                places,
                o => Assert.Equal(o.Exact.ChordTo(exact), o.Flat.ChordTo(flat), 0.1)
            );
        }

        IEnumerable<(Vec2, Vec2)> Places(PanelEdge edge, Func<double, double> t)
        {
            FlatEdge on = side.Edges.Of(edge)!;
            for (int i = 0; i < on.Flat.Length; i += 9)
            {
                yield return (on.Flat[i], Polar(on.OnHull[i], t(on.OnHull[i].X)));
            }
        }
    }

    /// <summary>A lap given by [[sheathing]] is carried in the keel's half-widths and faces just as one that is given with the layer, and changes them.</summary>
    [Fact]
    public void TheKeelCarriesALapHoweverItIsGiven()
    {
        string folder = DemoTables.Folder("survey-launch-from-the-rack"),
            text = File.ReadAllText(Path.Combine(folder, "job.toml")),
            offsets = File.ReadAllText(
                Path.Combine(DemoTables.Folder("survey-launch"), "offsets.csv")
            );
        text = text[..text.IndexOf("[nest]", StringComparison.Ordinal)];
        const string cloth = """

            [[cloth]]
            name = "stitched"
            kind = "stitched"
            mass = 600
            roll = { width = 1270, length = 50000 }
            [[sheathing]]
            layer = "core cloth"
            cloth = "stitched"
            """;
        double[] Widths(string job)
        {
            ReadResult read = JobReader.Read(job, "job.toml", offsets, "offsets.csv");
            Assert.True(
                read.Job is not null,
                string.Join('\n', read.Findings.Select(f => f.Message))
            );
            KeelPlan keel = BottomPlanner
                .Plan(new Job(read.Job.Planking), null, CancellationToken.None)
                .Plan!.Keel!;
            return [.. keel.Layers.SelectMany(l => l.Stations).Select(s => s.WantedHalfWidthMm)];
        }

        double[] plain = Widths(text),
            byLayer = Widths(
                text.Replace("thickness = 1.0", "thickness = 1.0\nlap = { width = 76 }")
            ),
            bySheathing = Widths(text + cloth + "\nkeel = { past-centre-line = 38 }"),
            stopped = Widths(text + cloth + "\nkeel = { stop = 10 }");
        Assert.Equal(byLayer, bySheathing);
        Assert.Equal(plain, stopped);
        // A millimetre more on the keel: planks that rise from it come down to its outer face nearer the middle, by 1 / tan of the deadrise.
        Assert.True(plain.Zip(bySheathing, (a, b) => a - b).Max() > 1);
    }

    private static SheathingPlan Plan(Job job)
    {
        PlanResult planned = BottomPlanner.Plan(job, null, CancellationToken.None);
        Assert.True(
            planned.Plan is not null,
            string.Join('\n', planned.Findings.Select(f => f.Where + ": " + f.Message))
        );
        return planned.Plan.Sheathing!;
    }
}
