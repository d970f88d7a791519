using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using PlankFit.Draughting.Bodies;
using PlankFit.Export.Solids;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Solids;

/// <summary>What is shown beside the planks lies where it is, on a plane bottom in closed form; and its bytes read back by the words of their format.</summary>
public sealed class ShownPartsTests
{
    private const double WideMm = 50,
        DeepMm = 45;

    private static readonly Prism Prism = new();

    private static readonly BottomPlan Plane = Planned();

    private static readonly ShownParts Parts = ShownParts.Of(Plane);

    /// <summary>
    /// The table is to the outside of two skins of 9 mm: fastenings of the outer one stand in the table's plane, of the inner one 9 mm within it; a stringer begins 18 mm
    /// within it and is as deep as [fastenings] says.
    /// </summary>
    [Fact]
    public void FasteningsStandOnTheirPlanksAndAStringerBehindThem()
    {
        double Within(Vec3 p) => -new Vec3(p.X, Math.Abs(p.Y), p.Z).Dot(Prism.Outward);
        PlankId[] order =
        [
            .. Plane.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)).Select(p => p.Id),
        ];
        Assert.Equal(order.Sum(id => Plane.Fastenings!.On(id)!.Points.Length), Parts.Points.Length);
        foreach (ShownPoint point in Parts.Points)
        {
            PlankId id = order[point.Plank];
            Assert.Equal(id.Layer == 2 ? 0 : 9, Within(point.At), 1e-6);
            Assert.Equal(id.Side == Side.Port ? -1 : 1, Math.Sign(point.At.Y));
        }

        Assert.NotEmpty(Parts.Bodies);
        foreach (Body body in Parts.Bodies)
        {
            Assert.Equal(("S1", "stringer"), (body.Name, body.Kind));
            Assert.Equal(18, body.Points.Min(Within), 1e-6);
            Assert.Equal(18 + DeepMm, body.Points.Max(Within), 1e-6);
            Assert.True(body.VolumeMm3() > 0);
        }

        // From the first station's plane to the last one's, both sides.
        Assert.Equal(
            2 * Prism.LengthMm * WideMm * DeepMm,
            Parts.Bodies.Sum(b => b.VolumeMm3()),
            2 * WideMm * WideMm * DeepMm
        );
    }

    /// <summary>A job that has none of it is told what to add, kind by kind, and nothing is told of what it has.</summary>
    [Fact]
    public void WhatIsNotThereIsToldWithWhatToAdd()
    {
        Assert.Equal([ShownParts.Keel], Parts.Lacking.Select(l => l.Kind));
        var bare = ShownParts.Of(
            WholeBottomTests.Planned(
                PrismaticPlan.Build(new Prism(LengthMm: 2000, MasterMm: 1100)).Job
            )
        );
        Assert.Equal(
            [ShownParts.Keel, ShownParts.Behind, ShownParts.Fastenings],
            bare.Lacking.Select(l => l.Kind)
        );
        Assert.All(bare.Lacking, l => Assert.Contains("add", l.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void PackedBytesReadBack()
    {
        byte[] bytes = PackedParts.Of(Parts);
        int Int(int at) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at));
        Assert.Equal("PFP1", Encoding.ASCII.GetString(bytes, 0, 4));
        (int words, int vertices, int triangles, int points) = (Int(4), Int(8), Int(12), Int(16));
        double[] box =
        [
            .. Enumerable
                .Range(0, 6)
                .Select(i => (double)BitConverter.ToSingle(bytes, 20 + (4 * i))),
        ];
        using var told = JsonDocument.Parse(Encoding.UTF8.GetString(bytes, 44, words));
        Assert.Equal(Parts.Bodies.Length, told.RootElement.GetProperty("bodies").GetArrayLength());
        int from = 44 + words;
        Assert.Equal(0, from % 4);
        Assert.Equal(from + (12 * (vertices + points)) + (4 * triangles), bytes.Length);
        double Along(int at, int axis) =>
            box[axis]
            + ((box[axis + 3] - box[axis]) * BitConverter.ToUInt16(bytes, at + (2 * axis)) / 65535);
        Vec3 At(int at) => new(Along(at, 0), Along(at, 1), Along(at, 2));
        Vec3[] all = [.. Parts.Bodies.SelectMany(b => b.Points)];
        Assert.Equal(all.Length, vertices);
        for (int i = 0; i < vertices; i++)
        {
            Assert.InRange(At(from + (12 * i)).ChordTo(all[i]), 0, 0.1);
        }

        int places = from + (12 * vertices);
        Assert.All(
            Enumerable.Range(0, triangles),
            i => Assert.InRange(Int(places + (4 * i)), 0, vertices - 1)
        );
        for (int i = 0; i < points; i++)
        {
            int at = places + (4 * triangles) + (12 * i);
            Assert.InRange(At(at).ChordTo(Parts.Points[i].At), 0, 0.1);
            Assert.Equal(Parts.Points[i].Plank, BitConverter.ToUInt16(bytes, at + 6));
            Assert.Equal((int)Parts.Points[i].Use, bytes[at + 8]);
        }
    }

    private static BottomPlan Planned() =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(Prism).Job with
            {
                Framing =
                [
                    new(
                        "S1",
                        FramingKind.Stringer,
                        new FramingLine.FromKeel(300),
                        WideMm,
                        null,
                        null
                    ),
                ],
                Fastenings = new(
                    new() { SpacingMm = 75, EdgeMm = 18 },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    DeepMm,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
            }
        );
}
