using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[keel], [[keel-layer]] and the lap of a cloth: what is read, and each fault with its place.</summary>
public sealed class KeelBinderTests
{
    private const string Layer = """

        [[keel-layer]]
        name = "first"
        meets = "inner"
        thickness = 9
        half-width = "mitre"
        side = "plumb"
        """;

    private static string Keel(string more = "") =>
        (Texts.Job + "\n" + Layer + more).ReplaceLineEndings("\n");

    [Fact]
    public void EverythingIsRead()
    {
        Job job = Texts.Sound(
            Keel(
                    "\n[keel]\nhalf-width-tolerance = \"1/32 in\"\nproud-tolerance = 0.3\nstock-width = 120\nleast-half-width = 30\nmost-deadrise = 42\nleft-long = 40\n"
                )
                .Replace(
                    "half-width = \"mitre\"",
                    "half-width = { forward = 60, aft = \"45 mm\" }",
                    StringComparison.Ordinal
                )
                .Replace(
                    "side = \"plumb\"",
                    "side = { degrees = -12.5 }\nfrom = 700",
                    StringComparison.Ordinal
                )
        );
        Assert.Equal(0.79375, job.Keel.HalfWidthToleranceMm, 1e-9);
        Assert.Equal(0.3, job.Keel.ProudToleranceMm);
        Assert.Equal(
            (120, 30, 42, 40),
            (
                job.Keel.StockWidthMm,
                job.Keel.LeastHalfWidthMm,
                job.Keel.MostDeadriseDegrees,
                job.Keel.LeftLongMm
            )
        );
        KeelLayerSpec layer = Assert.Single(job.Keel.Layers);
        Assert.Equal(
            ("first", "inner", 9, 700),
            (layer.Name, layer.Meets, layer.ThicknessMm, layer.FromMm)
        );
        Assert.Equal(new KeelHalfWidth.Tapered(60, 45), layer.HalfWidth);
        Assert.Equal(new KeelLayerSide.Leaning(-12.5), layer.Side);
    }

    /// <summary>1/32 in, 0.8 mm: common practice, no source. 0.5 mm proud: our own, no source.</summary>
    [Fact]
    public void DefaultsAreTheTradesAndOurOwn()
    {
        Job job = Texts.Sound(Keel());
        Assert.Equal((0.8, 0.5), (job.Keel.HalfWidthToleranceMm, job.Keel.ProudToleranceMm));
        Assert.IsType<KeelHalfWidth.Mitre>(job.Keel.Layers[0].HalfWidth);
        Assert.IsType<KeelLayerSide.Plumb>(job.Keel.Layers[0].Side);
    }

    /// <summary>A line of the table with half-breadths alone serves, and nobody complains of its heights.</summary>
    [Fact]
    public void AHalfBreadthRowServesAsAnEdge()
    {
        ReadResult read = Texts.Read(
            Keel().Replace("\"mitre\"", "{ line = \"keel face\" }", StringComparison.Ordinal),
            Texts.Offsets + "\nkeel face,half-breadth,30,38,,60\n"
        );
        Assert.Equal(new KeelHalfWidth.Line("keel face"), read.Job!.Keel.Layers[0].HalfWidth);
        Assert.DoesNotContain(
            read.Findings,
            f => f.Message.Contains("keel face", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("meets = \"inner\"", "meets = \"iner\"", 20, 9, "\"iner\"", "there is \"inner\"")]
    [InlineData("meets = \"inner\"\n", "", 18, 1, "meets")]
    [InlineData("thickness = 9\nhalf", "thickness = 0\nhalf", 21, 13, "greater than 0")]
    [InlineData("thickness = 9\nhalf", "half", 18, 1, "thickness")]
    [InlineData("\"mitre\"", "\"miter\"", 22, 14, "\"mitre\"")]
    [InlineData("\"mitre\"", "{ forward = 60 }", 22, 14, "aft")]
    [InlineData("\"mitre\"", "{ forward = -60, aft = 45 }", 22, 26, "greater than 0")]
    [InlineData(
        "\"mitre\"",
        "{ line = \"keel egde\" }",
        22,
        23,
        "no such line",
        "did you mean \"keel edge\""
    )]
    [InlineData("\"mitre\"", "{ line = \"short\" }", 22, 23, "2 half-breadths", "3 or more")]
    [InlineData("\"plumb\"", "\"square\"", 23, 8, "square to plank")]
    [InlineData("\"plumb\"", "{ degrees = 75 }", 23, 20, "less than 60")]
    [InlineData("side =", "sied =", 23, 1, "\"sied\"", "did you mean \"side\"")]
    public void FaultsOfAKeelLayerHaveTheirPlace(
        string sound,
        string spoiled,
        int line,
        int column,
        params string[] words
    )
    {
        string text = Keel();
        Assert.Contains(sound, text, StringComparison.Ordinal);
        Texts.Finds(
            Texts.Read(
                text.Replace(sound, spoiled, StringComparison.Ordinal),
                Texts.Offsets + "\nshort,half-breadth,30,,,60\n"
            ),
            Severity.Error,
            $"job.toml, line {line}, column {column}",
            words
        );
    }

    [Fact]
    public void TwoLayersDoNotMeetTheSamePlanks() =>
        Texts.Finds(
            Texts.Read(
                Keel("\n[[keel-layer]]\nname = \"second\"\nmeets = \"inner\"\nthickness = 9\n")
            ),
            Severity.Error,
            "job.toml, line 26, column 9",
            "\"first\"",
            "already"
        );

    [Fact]
    public void AnEdgeTakenFromTheTableIsNowhereNought() =>
        Texts.Finds(
            Texts.Read(
                Keel().Replace("\"mitre\"", "{ line = \"keel face\" }", StringComparison.Ordinal),
                Texts.Offsets + "\nkeel face,half-breadth,30,0,44,60\n"
            ),
            Severity.Error,
            "offsets.csv, line 8, column 4 (station 1)",
            "greater than 0"
        );

    [Theory]
    [InlineData("lap = { width = 100, from = 900, to = 2000 }", 100, 900.0, 2000.0)]
    [InlineData("lap = { width = \"80 mm\" }", 80, null, null)]
    public void ALapIsRead(string lap, double width, double? from, double? to)
    {
        Job job = Texts.Sound(Cloth(lap));
        Assert.Equal(
            new ClothLap(width, from, to),
            job.Layers.OfType<ClothLayerSpec>().Single().Lap
        );
    }

    [Theory]
    [InlineData("lap = { width = 0 }", "greater than 0")]
    [InlineData("lap = { from = 900 }", "width")]
    [InlineData("lap = { width = 90, from = 900, to = 800 }", "greater than \"from\"")]
    public void ALapsFaultsAreTold(string lap, string says) =>
        Assert.Contains(
            Texts.Read(Cloth(lap)).Findings,
            f => f.Severity == Severity.Error && f.Message.Contains(says, StringComparison.Ordinal)
        );

    /// <summary>Positions that grow forward: a layer that begins 700 from the transom, and a lap, are turned with the table.</summary>
    [Fact]
    public void PositionsAreTurnedWithTheTable()
    {
        Job job = Texts.Sound(
            (
                Cloth("lap = { width = 100, from = 500, to = 2000 }")
                    .Replace("[hull]", "[hull]\npositions = \"forward\"", StringComparison.Ordinal)
                + Layer.Replace("side = \"plumb\"", "from = 2100", StringComparison.Ordinal)
            ).ReplaceLineEndings("\n")
        );
        Assert.Equal(300, job.Keel.Layers[0].FromMm);
        Assert.Equal(
            new ClothLap(100, 400, 1900),
            job.Layers.OfType<ClothLayerSpec>().Single().Lap
        );
    }

    private static string Cloth(string lap) =>
        Texts.Job + $"\n\n[[layer]]\nkind = \"cloth\"\nname = \"cloth\"\nthickness = 1\n{lap}\n";
}
