using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using PlankFit.Export.Lists;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Tables;

/// <summary>planking.json read back by another reader and held, field by field, against the contract and the closed-form plan.</summary>
public sealed class PlankingJsonTests
{
    private static readonly BottomPlan Plan = PrismaticPlan.Build(
        new(KeelHalfBreadthMm: 30, ClothMm: 1, MaxChordMm: 300)
    ) with
    {
        Findings = [new(Severity.Warning, "S1-03", "the \"after\" edge\tcloses 0.6 mm: plane it")],
    };

    private static readonly JsonElement Root = JsonDocument.Parse(Bytes(Plan)).RootElement;

    [Fact]
    public void HeadOfTheFile()
    {
        Assert.Equal("plankfit-planking/1", Root.GetProperty("schema").GetString());
        Assert.Equal("7f3a9c", Root.GetProperty("revision").GetString());
        Assert.Equal("prism", Root.GetProperty("job").GetString());
        Assert.Equal("mm", Root.GetProperty("lengthUnit").GetString());
        Assert.Equal("deg", Root.GetProperty("angleUnit").GetString());
    }

    [Fact]
    public void EveryObjectHasTheFieldsOfTheContract() =>
        Assert.Equal([], PlankingContract.Faults(Root));

    [Fact]
    public void TheContractTestItselfFindsWhatIsWrong()
    {
        string text = System.Text.Encoding.UTF8.GetString(Bytes(Plan));
        AssertFault(text.Replace("\"leastRadiusMm\"", "\"leastRadius\"", StringComparison.Ordinal));
        AssertFault(
            text.Replace("\"heads\": \"aft\"", "\"heads\": \"back\"", StringComparison.Ordinal)
        );
        AssertFault(
            text.Replace("\"cut\": \"left long\"", "\"cut\": \"long\"", StringComparison.Ordinal)
        );
        AssertFault(text.Replace("\"pieces\": []", "\"pieces\": null", StringComparison.Ordinal));
        AssertFault(text.Replace("\"net\": [[", "\"net\": [[1],[", StringComparison.Ordinal));
        AssertFault(
            text.Replace(
                "\"plankfit-planking/1\"",
                "\"plankfit-planking/2\"",
                StringComparison.Ordinal
            )
        );

        static void AssertFault(string broken) =>
            Assert.NotEmpty(PlankingContract.Faults(JsonDocument.Parse(broken).RootElement));
    }

    [Fact]
    public void LayersFromTheInsideOutWithClothUnnumbered()
    {
        JsonElement layers = Root.GetProperty("layers");
        Assert.Equal(3, layers.GetArrayLength());
        Assert.Equal(1, layers[0].GetProperty("layer").GetInt32());
        // 9 + 1 + 4.5 inside an outside table.
        Assert.Equal(-14.5, layers[0].GetProperty("neutralOffsetMm").GetDouble());
        Assert.Equal("cloth", layers[1].GetProperty("kind").GetString());
        Assert.False(layers[1].TryGetProperty("layer", out _));
        Assert.Equal(1, layers[1].GetProperty("thicknessMm").GetDouble());
        Assert.Equal(2, layers[2].GetProperty("layer").GetInt32());
        Assert.Equal("forward", layers[2].GetProperty("heads").GetString());
        Assert.Equal(
            Plan.PlankLayers.First().AreaMm2,
            layers[0].GetProperty("areaMm2").GetDouble(),
            0.006
        );
    }

    [Fact]
    public void EveryPlankVertexForVertex()
    {
        ImmutableArray<Plank> planks =
        [
            .. Plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)),
        ];
        Assert.Equal(planks.Length, Root.GetProperty("planks").GetArrayLength());
        foreach (
            (Plank plank, JsonElement read) in planks.Zip(
                Root.GetProperty("planks").EnumerateArray()
            )
        )
        {
            Assert.Equal(plank.Id.ToString(), read.GetProperty("id").GetString());
            SamePoints(plank.Outline, read.GetProperty("outline"));
            SamePoints(plank.FlatNet, read.GetProperty("flat").GetProperty("net"));
            SamePoints(plank.FlatCut, read.GetProperty("flat").GetProperty("cut"));
            SamePoints(plank.ForwardEdge.Seam, read.GetProperty("edges").GetProperty("forward"));
            SamePoints(plank.AfterEdge.Seam, read.GetProperty("edges").GetProperty("after"));
            // Net and outline correspond: in a plane, every chord has the same length in both.
            Vec3[] space = [.. read.GetProperty("outline").EnumerateArray().Select(Point3)];
            Vec2[] flat =
            [
                .. read.GetProperty("flat").GetProperty("net").EnumerateArray().Select(Point2),
            ];
            Assert.Equal(space.Length, flat.Length);
            for (int i = 1; i < flat.Length; i++)
            {
                Assert.Equal(space[i].ChordTo(space[0]), flat[i].ChordTo(flat[0]), 3e-4);
            }
        }
    }

    [Fact]
    public void AKeelEndAndAChineEnd()
    {
        JsonElement ends = Plank("S1-17").GetProperty("ends");
        Assert.Equal(2, ends.GetArrayLength());
        Assert.Equal("keel", ends[0].GetProperty("at").GetString());
        Assert.Equal("fit", ends[0].GetProperty("cut").GetString());
        Assert.Equal(45, ends[0].GetProperty("cutDegrees").GetDouble());
        Assert.Equal(20, ends[0].GetProperty("bevelDegrees").GetDouble());
        Assert.Equal(
            [20, 20],
            ends[0].GetProperty("bevelAtCorners").EnumerateArray().Select(e => e.GetDouble())
        );
        // 9 tan 20 / sin 45 along the plank.
        Vec2 outer = Point2(ends[0].GetProperty("outerLine")[0]),
            inner = Point2(ends[0].GetProperty("innerLine")[0]);
        Assert.Equal(4.632585, inner.X - outer.X, 2e-4);
        Assert.False(ends[0].TryGetProperty("overhangMm", out _));
        Assert.Equal("chine", ends[1].GetProperty("at").GetString());
        Assert.Equal("left long", ends[1].GetProperty("cut").GetString());
        Assert.Equal(25, ends[1].GetProperty("overhangMm").GetDouble());
        Assert.Equal(0, ends[1].GetProperty("bevelDegrees").GetDouble());
    }

    [Fact]
    public void AbsentThingsAreNullOrEmpty()
    {
        Assert.Equal(
            JsonValueKind.Null,
            Plank("S1-17").GetProperty("bend").GetProperty("leastRadiusMm").ValueKind
        );
        Assert.Equal(JsonValueKind.Null, Plank("S1-17").GetProperty("dropsIn").ValueKind);
        Assert.Equal(
            0,
            Plank("S1-01").GetProperty("edges").GetProperty("forward").GetArrayLength()
        );
        Assert.Equal(
            JsonValueKind.Null,
            Plank("S1-01").GetProperty("edgeShapes").GetProperty("forward").ValueKind
        );
        Assert.Equal(JsonValueKind.Null, Plank("S1-01").GetProperty("keelAngleDegrees").ValueKind);
    }

    [Theory]
    [InlineData(999_999.4, 999_999.4)]
    [InlineData(1_000_001.0, null)]
    [InlineData(5e12, null)]
    [InlineData(3700.126, 3700.13)]
    public void ARadiusAboveAKilometreIsNull(double radius, double? written)
    {
        Plank plank = Plan.Find("S1-17")!;
        JsonElement read = JsonDocument
            .Parse(Bytes(With(plank.Bent(plank.Bend with { LeastRadiusMm = radius }))))
            .RootElement.GetProperty("planks")[0]
            .GetProperty("bend")
            .GetProperty("leastRadiusMm");
        Assert.Equal(written, read.ValueKind == JsonValueKind.Null ? null : read.GetDouble());
    }

    [Fact]
    public void FindingsKeepTheirWording()
    {
        JsonElement finding = Root.GetProperty("findings")[0];
        Assert.Equal("warning", finding.GetProperty("severity").GetString());
        Assert.Equal("S1-03", finding.GetProperty("where").GetString());
        Assert.Equal(Plan.Findings[0].Message, finding.GetProperty("message").GetString());
    }

    [Fact]
    public void ANumberThatIsNoneIsRefusedAndThePlankNamed()
    {
        Plank plank = Plan.Find("S1-17")!;
        BottomPlan broken = With(
            plank.Shaped(s => s with { FlatCut = s.FlatCut.SetItem(1, new(double.NaN, 0)) })
        );
        InvalidOperationException fault = Assert.Throws<InvalidOperationException>(() =>
            Bytes(broken)
        );
        Assert.Contains("S1-17", fault.Message, StringComparison.Ordinal);
        Assert.Contains("NaN", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoNumberIsMinusNought()
    {
        Assert.DoesNotMatch(@"-0(\.0+)?[,\]\s]", System.Text.Encoding.UTF8.GetString(Bytes(Plan)));
        Assert.Equal(Bytes(Plan), Bytes(Plan));
    }

    internal static byte[] Bytes(BottomPlan plan)
    {
        using MemoryStream stream = new();
        PlankingJson.Write(OnPlanks.Of(plan), stream);
        return stream.ToArray();
    }

    private static BottomPlan With(Plank only) =>
        Plan with
        {
            Layers = [Plan.PlankLayers.First() with { Starboard = [only], Port = [] }],
        };

    private static JsonElement Plank(string id) =>
        Root.GetProperty("planks")
            .EnumerateArray()
            .Single(p => p.GetProperty("id").GetString() == id);

    private static Vec3 Point3(JsonElement p) =>
        new(p[0].GetDouble(), p[1].GetDouble(), p[2].GetDouble());

    private static Vec2 Point2(JsonElement p) => new(p[0].GetDouble(), p[1].GetDouble());

    private static void SamePoints(ImmutableArray<Vec3> points, JsonElement read)
    {
        Assert.Equal(points.Length, read.GetArrayLength());
        for (int i = 0; i < points.Length; i++)
        {
            Assert.True(points[i].ChordTo(Point3(read[i])) < 1e-4);
            AssertFourDecimals(read[i]);
        }
    }

    private static void SamePoints(ImmutableArray<Vec2> points, JsonElement read)
    {
        Assert.Equal(points.Length, read.GetArrayLength());
        for (int i = 0; i < points.Length; i++)
        {
            Assert.True(points[i].ChordTo(Point2(read[i])) < 1e-4);
            AssertFourDecimals(read[i]);
        }
    }

    private static void AssertFourDecimals(JsonElement point)
    {
        foreach (JsonElement number in point.EnumerateArray())
        {
            string text = number.GetRawText();
            Assert.Equal(text.Length - 5, text.IndexOf('.', StringComparison.Ordinal));
            Assert.True(double.TryParse(text, CultureInfo.InvariantCulture, out _));
        }
    }
}
