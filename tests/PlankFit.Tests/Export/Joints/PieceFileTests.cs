using System.Text.Json;
using PlankFit.Draughting.Dxf;
using PlankFit.Export.Joints;
using PlankFit.Export.Lists;
using PlankFit.Export.Patterns;
using PlankFit.Export.Tables;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export.Tables;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Joints;

/// <summary>Pieces as they stand in the files: read back and held against the plank.</summary>
public sealed class PieceFileTests
{
    public static TheoryData<string> Kinds => ["butts", "scarfs"];

    private static BottomPlan Plan(string kind) =>
        kind == "butts" ? JointedPlans.Butts : JointedPlans.Scarfs;

    /// <summary>From the file alone: net areas of a plank's pieces, less the scarfs' overlaps, make up its net area.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void PiecesOfPlankingJsonMakeUpTheirPlanks(string kind)
    {
        using var stream = new MemoryStream();
        PlankingJson.Write(OnPlanks.Of(Plan(kind)), stream);
        using var file = JsonDocument.Parse(stream.ToArray());
        Assert.Empty(PlankingContract.Faults(file.RootElement));
        int pieced = 0;
        foreach (JsonElement plank in file.RootElement.GetProperty("planks").EnumerateArray())
        {
            JsonElement[] pieces = [.. plank.GetProperty("pieces").EnumerateArray()];
            if (pieces.Length == 0)
            {
                continue;
            }

            pieced++;
            double net = Area(plank.GetProperty("flat").GetProperty("net")),
                all = pieces.Sum(p => Area(p.GetProperty("net"))),
                overlaps = pieces
                    .SelectMany(p => p.GetProperty("joints").EnumerateArray())
                    .Where(j => j.GetProperty("end").GetString() == "inboard")
                    .Sum(Overlap);
            Assert.Equal(net, all - overlaps, 1e-5 * net);
            Assert.Equal(kind == "scarfs", overlaps > 0);
            for (int i = 1; i < pieces.Length; i++)
            {
                Assert.Equal(Joint(pieces[i - 1], "outboard"), Joint(pieces[i], "inboard"));
            }
        }

        Assert.Equal(Plan(kind).Joints.ByPlank.Count, pieced);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void EzdxfFindsNothingToMendInAPiece(string kind)
    {
        const string Audit = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("MISSING")
                sys.exit(0)
            for name in sys.argv[1:]:
                document = ezdxf.readfile(name)
                audit = document.audit()
                closed = [e for e in document.modelspace() if e.dxf.layer == "CUT"]
                joints = [e for e in document.modelspace() if e.dxf.layer == "JOINTS"]
                print(len(audit.errors), len(audit.fixes), len(closed), len(joints))
            """;
        BottomPlan plan = Plan(kind);
        using var folder = new TempFolder();
        JointedPlank pieced = plan.Joints.Layers[0].Planks.MaxBy(p => p.Pieces.Length)!;
        List<string> files = [],
            should = [];
        foreach (PlankPiece piece in pieced.Pieces)
        {
            Drawing pattern = PiecePattern.Of(OnPlanks.Of(plan), plan.Find(pieced.PlankId)!, piece);
            foreach (DxfVersion version in new[] { DxfVersion.R2000, DxfVersion.R12 })
            {
                string file = folder.File($"{piece.Id}-{version}.dxf");
                using (FileStream to = File.Create(file))
                {
                    DxfWriter.Write(to, pattern, new(version, DxfUnit.Millimetre));
                }

                files.Add(file);
                int scarfs = new[] { piece.Inboard, piece.Outboard }.Count(j =>
                    j?.Kind == JointKind.Scarf
                );
                should.Add($"0 0 1 {2 * scarfs}");
            }
        }

        string read = OutsideTool
            .Run("/usr/bin/python3", "python3 python3-ezdxf", ["-c", Audit, .. files])
            .Trim();
        Assert.SkipWhen(read == "MISSING", "ezdxf is not installed: apt-get install python3-ezdxf");
        Assert.Equal(should, read.Split('\n').Select(l => l.Trim()));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void APiecesFileHasItsShapeToSaw(string kind)
    {
        BottomPlan plan = Plan(kind);
        foreach (JointedPlank pieced in plan.Joints.Layers[0].Planks)
        {
            Plank plank = plan.Find(pieced.PlankId)!;
            foreach (PlankPiece piece in pieced.Pieces)
            {
                Drawing pattern = PiecePattern.Of(OnPlanks.Of(plan), plank, piece);
                Polyline cut = pattern.Shapes.OfType<Polyline>().Single(p => p.Layer == Layers.Cut);
                Assert.True(cut.Closed);
                Assert.InRange(PlanarShapes.FurthestOutside(cut.Points, piece.Cut).Mm, 0, 1e-9);
                Assert.Contains(
                    pattern.Shapes.OfType<Lettering>(),
                    l => l.Text == piece.Id.ToString()
                );
            }
        }
    }

    /// <summary>Every joint in one row, every piece in one, and their lengths as the plan has them.</summary>
    [Fact]
    public void TablesHaveEveryJointAndPiece()
    {
        BottomPlan plan = JointedPlans.Butts;
        Assert.Equal(
            plan.Joints.ByPlank.Values.Sum(p => p.Joints.Length),
            JointTables.Joints(plan).Rows.Length
        );
        Table pieces = JointTables.Pieces(plan);
        int id = Column("piece"),
            length = Column("length to cut mm");
        var byId = pieces.Rows.ToDictionary(r => r[id].Text!, r => r[length].Number!.Value);
        foreach (PlankPiece piece in plan.Joints.ByPlank.Values.SelectMany(p => p.Pieces))
        {
            Assert.Equal(piece.LengthMm, byId[piece.Id.ToString()], 1e-9);
        }

        int Column(string name) =>
            pieces.Columns.Select((c, i) => (c, i)).Single(c => c.c.Name == name).i;
    }

    private static string Joint(JsonElement piece, string end) =>
        piece
            .GetProperty("joints")
            .EnumerateArray()
            .Single(j => j.GetProperty("end").GetString() == end)
            .GetProperty("id")
            .GetString()!;

    private static double Overlap(JsonElement joint)
    {
        (double S, double N)[] a = Points(joint.GetProperty("outerLine")),
            b = Points(joint.GetProperty("innerLine"));
        return joint.GetProperty("lengthMm").GetDouble()
            * (Math.Abs(a[0].N - a[1].N) + Math.Abs(b[0].N - b[1].N))
            / 2;
    }

    private static double Area(JsonElement polygon)
    {
        (double S, double N)[] p = Points(polygon);
        return 0.5
            * Enumerable
                .Range(0, p.Length)
                .Sum(i => (p[i].S * p[(i + 1) % p.Length].N) - (p[i].N * p[(i + 1) % p.Length].S));
    }

    private static (double S, double N)[] Points(JsonElement list) =>
        [.. list.EnumerateArray().Select(p => (p[0].GetDouble(), p[1].GetDouble()))];
}
