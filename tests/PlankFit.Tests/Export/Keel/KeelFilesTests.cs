using System.Text.Json;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Export.Keel;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Keel;

/// <summary>The keel's files, read back: keel.json by the contract, patterns by their own measure, sheets as a reader sees them.</summary>
public sealed class KeelFilesTests
{
    private const double Slope = 12;

    /// <summary>The cap is laid over the last cloth, and where there is none over the keel itself: no cloth is spoken of.</summary>
    [Fact]
    public void ACapWithoutClothSpeaksOfNone()
    {
        BottomPlan plan = Plan(LengthUnit.Millimetre);
        Assert.Contains("the cap over the last cloth", Words(plan.Job.Layers));
        string[] bare = Words([
            .. plan.Job.Layers.OfType<PlankFit.Planking.Layers.PlankLayerSpec>(),
        ]);
        Assert.Contains("the cap over the last keel layer", bare);
        Assert.DoesNotContain(bare, w => w.Contains("last cloth", StringComparison.Ordinal));

        string[] Words(
            System.Collections.Immutable.ImmutableArray<PlankFit.Planking.Layers.LayerSpec> layers
        ) =>
            [
                .. KeelPages
                    .Of(plan with { Job = plan.Job with { Layers = layers } }, plan.Keel!)
                    .SelectMany(d => d.Shapes.OfType<Lettering>())
                    .Select(l => l.Text),
            ];
    }

    /// <summary>Every figure of the contract is there, for every layer, station and side, and proudness is what the formula makes of the others.</summary>
    [Fact]
    public void JsonKeepsTheContract()
    {
        BottomPlan plan = Plan(LengthUnit.Millimetre);
        using var stream = new MemoryStream();
        KeelJson.Write(plan.Job, plan.Keel!, stream);
        using var json = JsonDocument.Parse(stream.ToArray());
        JsonElement root = json.RootElement;
        Assert.Equal("plankfit-keel/1", root.GetProperty("schema").GetString());
        Assert.Equal("mm", root.GetProperty("lengthUnit").GetString());
        Assert.Equal("deg", root.GetProperty("angleUnit").GetString());
        Assert.Equal(JsonValueKind.Array, root.GetProperty("findings").ValueKind);
        JsonElement[] layers = [.. root.GetProperty("layers").EnumerateArray()];
        Assert.Equal(
            [("first layer", "inner"), ("second layer", "outer")],
            layers.Select(l =>
                (l.GetProperty("name").GetString()!, l.GetProperty("meets").GetString()!)
            )
        );
        foreach (JsonElement layer in layers)
        {
            JsonElement[] rows = [.. layer.GetProperty("stations").EnumerateArray()];
            Assert.Equal(
                plan.Job.Offsets.Stations.SelectMany(s =>
                        new[] { $"{s.Name} port", $"{s.Name} starboard" }
                    )
                    .Order(),
                rows.Select(r =>
                        $"{r.GetProperty("station").GetString()} {r.GetProperty("side").GetString()}"
                    )
                    .Order()
            );
            foreach (JsonElement row in rows)
            {
                double Number(string name) => row.GetProperty(name).GetDouble();
                Assert.Equal(
                    (Number("halfWidthMm") - Number("wantedHalfWidthMm"))
                        * Math.Tan(Number("deadriseDegrees") * Math.PI / 180),
                    Number("proudMm"),
                    0.0005
                );
                Assert.Equal(20, Number("deadriseDegrees"), 0.001);
                Assert.True(Number("plankEndBevelDegrees") > 0);
                Assert.Equal(
                    layer.GetProperty("name").GetString() == "second layer" ? 7 : 0,
                    Number("bevelDegrees"),
                    1e-9
                );
                Assert.Equal(
                    plan.Job.Offsets.Stations.Single(s =>
                        s.Name == row.GetProperty("station").GetString()
                    ).PositionMm,
                    Number("positionMm"),
                    1e-9
                );
            }
        }
    }

    /// <summary>
    /// On a plane bottom that rises going aft the layer's outer face is as long as the bottom over the cosine of its slope, not as long as the bottom; the edges
    /// stand at the half-widths, and the stations where a tape on that face finds them.
    /// </summary>
    [Theory]
    [InlineData(DxfVersion.R2000, DxfUnit.Millimetre, 1)]
    [InlineData(DxfVersion.R12, DxfUnit.Inch, 25.4)]
    public void PatternsAreTrueLengthAndWidth(DxfVersion version, DxfUnit units, double mmPer)
    {
        BottomPlan plan = Plan(LengthUnit.Millimetre);
        KeelLayerPlan layer = plan.Keel!.Layers[0];
        using var stream = new MemoryStream();
        DxfWriter.Write(stream, KeelEdgePattern.Of(plan, layer), new(version, units));
        var read = new DxfReading(stream.ToArray());
        read.HoldToTheRules();
        var lines = read.Lines()
            .Select(l =>
                (l.Closed, Points: l.Points.Select(p => (X: p.X * mmPer, Y: p.Y * mmPer)).ToList())
            )
            .ToList();
        List<(double X, double Y)> outline = Assert.Single(lines, l => l.Closed).Points;
        double length = 6000 / Math.Cos(Slope * Math.PI / 180);
        Assert.Equal(0, outline.Min(p => p.X), 0.01);
        Assert.Equal(length, outline.Max(p => p.X), 0.01);

        // As the job draws it: 62 forward, 45 aft, straight.
        Assert.All(outline, p => Assert.Equal(62 - (17 * p.X / length), Math.Abs(p.Y), 0.01));
        foreach (Station station in plan.Job.Offsets.Stations)
        {
            double along = station.PositionMm / Math.Cos(Slope * Math.PI / 180),
                half = 62 - (17 * along / length);
            Assert.Contains(
                lines,
                l =>
                    l.Points.Count == 2
                    && l.Points.All(p => Math.Abs(p.X - along) < 0.01)
                    && Math.Abs(l.Points.Max(p => p.Y) - half) < 0.01
                    && Math.Abs(l.Points.Min(p => p.Y) + half) < 0.01
            );
        }
    }

    /// <summary>On a rockered keel of 12 m radius the pattern is as long as the arc of its outer face: 3.0321630617049 m on the circle itself (check value), R ± T for R.</summary>
    [Fact]
    public void APatternIsAsLongAsTheArcOfItsFace()
    {
        const double radius = 12000;
        double[] x = [.. Enumerable.Range(0, 13).Select(i => i * 250.0)];
        double Rocker(double at) => radius - Math.Sqrt((radius * radius) - (at * at));
        Job plane = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside);
        Job job = plane with
        {
            Offsets = new(
                [.. x.Select((at, i) => new Station($"{i}", at))],
                [
                    new(
                        "keel",
                        [],
                        [.. x.Select(at => (double?)Rocker(at))],
                        [.. x.Select(_ => (double?)40)]
                    ),
                    new(
                        "chine",
                        [],
                        [.. x.Select(at => (double?)(Rocker(at) + 300))],
                        [.. x.Select(_ => (double?)800)]
                    ),
                ]
            ),
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
            },
        };
        KeelStation[] run = [.. WholeBottomTests.Planned(job).Keel!.Layers[0].On(Side.Starboard)];

        // The outer face lies below, outside the circle about a middle above: R + 9, between the same x.
        double outer = radius + 9,
            arc = outer * Math.Asin(3000 / outer);
        Assert.Equal(3032.1630617049, radius * Math.Asin(3000 / radius), 1e-6);
        Assert.Equal(arc, run[^1].AlongMm, 0.01);
    }

    public static TheoryData<LengthUnit, PaperSize, PatternPages> Papers =>
        new()
        {
            { LengthUnit.Millimetre, PaperSize.A4, PatternPages.Long },
            { LengthUnit.FeetInchesEighths, PaperSize.Letter, PatternPages.Tiled },
            { LengthUnit.Inch, PaperSize.A3, PatternPages.Long },
        };

    [Theory]
    [MemberData(nameof(Papers))]
    public void SheetsAreLegibleAndPatternsWhole(
        LengthUnit unit,
        PaperSize paper,
        PatternPages pages
    )
    {
        BottomPlan plan = Plan(unit);
        plan = plan with
        {
            Job = plan.Job with
            {
                Output = plan.Job.Output with { Paper = paper, Patterns = pages },
            },
        };
        string[] faults = [.. KeelPages.Of(plan, plan.Keel!).SelectMany(d => SheetCheck.Faults(d))];
        Assert.True(faults.Length == 0, string.Join("\n", faults.Take(10)));
        foreach (KeelLayerPlan layer in plan.Keel!.Layers)
        {
            Drawing pattern = KeelEdgePattern.OnPaper(plan, layer);
            Assert.Empty(SheetCheck.Faults(pattern));
            Assert.All(
                pattern.Shapes.OfType<Polyline>().SelectMany(p => p.Points),
                p =>
                    Assert.True(
                        p.X > 5
                            && p.Y > 5
                            && p.X < pattern.WidthMm - 5
                            && p.Y < pattern.HeightMm - 5
                    )
            );
            Assert.NotEmpty(
                Tiler.Pages(
                    pattern,
                    new(OutputAsked.Paper(OutputSpec.Default with { Paper = paper }))
                )
            );
        }
    }

    /// <summary>A side with measurements of its own is listed apart; alike, both stand in one row.</summary>
    [Fact]
    public void SidesStandTogetherOnlyWhereTheyAreAlike()
    {
        KeelLayerPlan alike = Plan(LengthUnit.Millimetre).Keel!.Layers[0];
        Assert.All(KeelWords.BySide(alike), r => Assert.Equal("both", r.Side));
        Assert.Equal(alike.On(Side.Starboard).Count(), KeelWords.BySide(alike).Count());
        KeelStation[] rows = [.. alike.Stations];
        rows[2] = rows[2] with { HalfWidthMm = rows[2].HalfWidthMm + 0.1 };
        KeelLayerPlan apart = alike with { Stations = [.. rows] };
        Assert.Equal(alike.Stations.Length, KeelWords.BySide(apart).Count());
    }

    private static BottomPlan Plan(LengthUnit unit) =>
        WholeBottomTests.Planned(
            PlaneBottom.Job(20, Slope, 9, 1, OffsetsAreTo.Outside) with
            {
                Units = unit,
                Keel = KeelSpec.None with
                {
                    StockWidthMm = 130,
                    Layers =
                    [
                        PlaneBottom.KeelLayer("first layer", "inner", 9) with
                        {
                            HalfWidth = new KeelHalfWidth.Tapered(62, 45),
                        },
                        PlaneBottom.KeelLayer("second layer", "outer", 9) with
                        {
                            Side = new KeelLayerSide.Leaning(7),
                            FromMm = 1000,
                        },
                    ],
                },
            }
        );
}
