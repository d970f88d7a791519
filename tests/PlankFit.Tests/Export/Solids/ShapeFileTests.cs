using System.Numerics;
using System.Text.Json.Nodes;
using PlankFit.Export.Solids;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Architecture;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;
using SharpGLTF.Schema2;

namespace PlankFit.Tests.Export.Solids;

/// <summary>The shape for other programs, read back by the library's reader and by the format's own validator.</summary>
public sealed class ShapeFileTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch");

    private static readonly Lazy<byte[]> OfLaunch = new(() => Written(Launch));

    /// <summary>What a coordinate of up to 8 m may be off by in 32 bits, in three directions, mm.</summary>
    private static readonly double RoundedMm = 1000 * Math.Sqrt(3) * Math.Pow(2, -22);

    public static TheoryData<string> Hulls =>
        LongRuns.FirstOf("survey-launch", "tender", "pilot-skiff");

    /// <summary>
    /// On a plane bottom a plank between keel and chine is a prism whose ends lean: its volume is its area by its thickness, whatever its bevels, to what the format's places
    /// leave of it: their rounding by the whole of its surface.
    /// </summary>
    [Theory]
    [InlineData(20, 45)]
    [InlineData(12, 60)]
    public void OnAPlaneBottomEveryWholePlankHoldsItsAreaByItsThickness(
        double deadrise,
        double angle
    )
    {
        BottomPlan plan = WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(DeadriseDegrees: deadrise, AngleDegrees: angle)).Job
        );
        Dictionary<string, Node> nodes = Nodes(Written(plan)).ToDictionary(n => n.Name);
        int held = 0;
        foreach (Plank plank in plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)))
        {
            if (plank.Ends.Length == 2 && plank.Kind is PlankKind.Full or PlankKind.Master)
            {
                double thick = plan.LayerOf(plank.Id).Spec.ThicknessMm,
                    surface =
                        (2 * plank.AreaMm2) + (2 * thick * (plank.NetLengthMm + plank.WidestMm));
                Assert.Equal(
                    plank.AreaMm2 * thick,
                    Volume(nodes[plank.Id.ToString()]),
                    RoundedMm * surface
                );
                held++;
            }
        }

        Assert.True(held > 60, $"{held}");
    }

    /// <summary>A node for every plank under its name with its layer and its side, and one for every keel layer; each where the plank is, in metres, y up and z forward.</summary>
    [Fact]
    public void EveryPlankIsANodeUnderItsName()
    {
        Node[] nodes = Nodes(OfLaunch.Value);
        Plank[] planks = [.. Launch.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        Assert.Equal(
            planks
                .Select(p => p.Id.ToString())
                .Concat(Launch.Keel!.Layers.Select(k => $"keel: {k.Spec.Name}"))
                .Order(StringComparer.Ordinal),
            nodes.Select(n => n.Name).Order(StringComparer.Ordinal)
        );
        foreach (Plank plank in planks)
        {
            Node node = nodes.Single(n => n.Name == plank.Id.ToString());
            JsonObject told = node.Extras!.AsObject();
            Assert.Equal(plank.Id.Layer, (int)told["layer"]!);
            Assert.Equal(plank.Side == Side.Port ? "port" : "starboard", (string?)told["side"]);
            Vec3 corner = plank.Outline[0];
            Vector3 here = new((float)-corner.Y, (float)corner.Z, (float)-corner.X);
            Assert.True(
                Triangles(node).SelectMany(t => t).Min(p => (1000 * p - here).Length()) < 20,
                node.Name
            );
        }

        Assert.Equal(Launch.Job.Revision, (string?)Read(OfLaunch.Value).Asset.Extras!["revision"]);
    }

    /// <summary>
    /// On the demos a body holds its plank's wood: its area by its thickness, but for edges thinned within the tolerance, for corners where two bevels meet, and for what
    /// the hull's curvature makes of its area, K w²/12 at the most (the strain of a flat strip).
    /// </summary>
    [Fact]
    public void OnTheLaunchEveryBodyHoldsItsWood()
    {
        foreach (Node node in Nodes(OfLaunch.Value).Where(n => Launch.Find(n.Name) is not null))
        {
            Plank plank = Launch.Find(node.Name)!;
            double thick = Launch.LayerOf(plank.Id).Spec.ThicknessMm,
                edge = 2 * (plank.NetLengthMm + plank.WidestMm),
                allowed =
                    (ShapeFile.ToleranceMm * edge * thick)
                    + Math.Pow(thick, 3)
                    + (plank.StrainMm / plank.NetLengthMm * plank.AreaMm2 * thick);
            Assert.InRange(Math.Abs(Volume(node) - (plank.AreaMm2 * thick)), 0, allowed);
        }
    }

    /// <summary>Every edge of every body is gone along as often one way as the other, and twice in all: nothing is open, nothing turned inside out.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void EveryBodyIsClosed(string hull)
    {
        byte[] bytes = hull == "survey-launch" ? OfLaunch.Value : Written(DemoPlans.Of(hull));
        foreach (Node node in Nodes(bytes))
        {
            Dictionary<(Vector3, Vector3), int> gone = [];
            foreach (Vector3[] t in Triangles(node))
            {
                for (int i = 0; i < 3; i++)
                {
                    (Vector3, Vector3) edge = (t[i], t[(i + 1) % 3]);
                    gone[edge] = gone.GetValueOrDefault(edge) + 1;
                }
            }

            Assert.All(
                gone,
                e =>
                    Assert.True(
                        gone.GetValueOrDefault((e.Key.Item2, e.Key.Item1)) == e.Value,
                        $"{node.Name}: an edge at {1000 * e.Key.Item1} is open"
                    )
            );
            Assert.True(Volume(node) > 0, node.Name);
        }
    }

    /// <summary>A keel layer of the launch holds what its rows say: the sum of its trapezoids, whose sides it has at every row.</summary>
    [Fact]
    public void AKeelLayerHoldsItsTrapezoids()
    {
        Node[] nodes = Nodes(OfLaunch.Value);
        foreach (KeelLayerPlan layer in Launch.Keel!.Layers)
        {
            KeelStation[] rows =
            [
                .. layer.Between.Where(s =>
                    s.Side == Side.Starboard
                    && s.PositionMm >= (layer.RunsOutAtMm ?? double.MinValue)
                ),
            ];
            double Section(KeelStation s)
            {
                double deep =
                        layer.Spec.ThicknessMm / Math.Cos(s.Angles.SlopeDegrees * Math.PI / 180),
                    narrower = deep * Math.Tan(s.Angles.BevelDegrees * Math.PI / 180);
                return deep * (s.HalfWidthMm + Math.Max(0, s.HalfWidthMm - narrower));
            }

            double volume = rows.Zip(rows.Skip(1))
                .Sum(p =>
                    (p.Second.PositionMm - p.First.PositionMm)
                    * (Section(p.First) + Section(p.Second))
                    / 2
                );
            Assert.Equal(
                volume,
                Volume(nodes.Single(n => n.Name == $"keel: {layer.Spec.Name}")),
                1e-3 * volume
            );
        }
    }

    [Fact]
    public void TheSamePlanGivesTheSameBytes() => Assert.Equal(OfLaunch.Value, Written(Launch));

    /// <summary>The validator of the format's own makers has nothing to say: no error, no warning, no hint.</summary>
    [Fact]
    public void TheFormatsValidatorHasNothingToSay()
    {
        string validator = Path.Combine(
            HouseRules.Root(),
            "src/PlankFit.Page/obj/solid/node_modules/gltf-validator"
        );
        Assert.SkipUnless(
            Directory.Exists(validator),
            "the validator is not here: build where there is Node (apt-get install nodejs npm)"
        );
        using var folder = new TempFolder();
        File.WriteAllBytes(folder.File(ShapeFile.Name), OfLaunch.Value);
        const string script = """
            require(process.argv[1]).validateBytes(new Uint8Array(require('fs').readFileSync(process.argv[2])))
              .then(r => console.log(JSON.stringify([r.issues.numErrors, r.issues.numWarnings, r.issues.numInfos, r.issues.numHints, r.issues.messages.slice(0, 3)])))
            """;
        Assert.Equal(
            "[0,0,0,0,[]]",
            OutsideTool
                .Run("node", "nodejs", "-e", script, validator, folder.File(ShapeFile.Name))
                .Trim()
        );
    }

    private static byte[] Written(BottomPlan plan)
    {
        using var stream = new MemoryStream();
        ShapeFile.Write(plan, stream);
        return stream.ToArray();
    }

    private static ModelRoot Read(byte[] bytes) => ModelRoot.ParseGLB(bytes);

    private static Node[] Nodes(byte[] bytes) => [.. Read(bytes).DefaultScene.VisualChildren];

    private static IEnumerable<Vector3[]> Triangles(Node node)
    {
        MeshPrimitive faces = Assert.Single(node.Mesh.Primitives);
        IReadOnlyList<Vector3> points = faces.GetVertexAccessor("POSITION").AsVector3Array();
        return faces
            .GetTriangleIndices()
            .Select(t => new[] { points[t.A], points[t.B], points[t.C] });
    }

    /// <summary>By the divergence theorem, mm³.</summary>
    private static double Volume(Node node)
    {
        double six = 0;
        foreach (Vector3[] t in Triangles(node))
        {
            (Vec3 a, Vec3 b, Vec3 c) = (Of(t[0]), Of(t[1]), Of(t[2]));
            six += a.Dot(b.Cross(c));
        }

        return six / 6;
    }

    private static Vec3 Of(Vector3 p) => 1000 * new Vec3(p.X, p.Y, p.Z);
}
