using PlankFit.Planking.Findings;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[setting-up] as read, and one thing wrong with it at a time.</summary>
public sealed class SettingUpJobTests
{
    private const string Whole = """

        [setting-up]
        frame-thickness = 24
        frame-face = "forward"
        ribbands = 20
        transom-thickness = "30 mm"
        frames = [900, "1.8 m"]
        waterlines = [450, -50]
        backbone-half-width = { line = "hog" }
        chine-log = 45
        cloth-radius = 6
        chine-piece = { width = 40 }
        topside = { thickness = 12, lap = "mitre", mitre-forward-of = 600, flare = [{ station = "0", degrees = 20 }, { station = "3", degrees = 8 }] }
        """;

    private const string Rows = """

        sheer,height,1200,1150,1100,1080
        sheer,half-breadth,420,700,860,1050
        hog,half-breadth,50,60,70,80
        hog,height,640,270,115,35
        """;

    private static ReadResult Read(string settingUp) =>
        Texts.Read(Texts.Job + "\n" + settingUp, Texts.Offsets + Rows);

    [Fact]
    public void AllThatItCanSayIsRead()
    {
        SettingUpSpec spec = Texts.Sound(Texts.Job + "\n" + Whole, Texts.Offsets + Rows).SettingUp!;
        Assert.Equal(24, spec.FrameMm);
        Assert.Equal(FrameFace.Forward, spec.Face);
        Assert.Equal(20, spec.RibbandMm);
        Assert.Equal(30, spec.TransomMm);
        Assert.Equal([new("900", 900), new("1.8 m", 1800)], spec.Frames);
        Assert.Equal([-50, 450], spec.WaterlinesMm);
        Assert.Equal(new BackboneWidth.Line("hog"), spec.Backbone);
        Assert.Equal(45, spec.ChineLogMm);
        Assert.Equal(6, spec.ClothRadiusMm);
        Assert.Equal(new ChinePieceSpec(40, 40), spec.ChinePiece);
        Assert.Equal(12, spec.Topside!.ThicknessMm);
        Assert.Equal(ChineLap.Mitre, spec.Topside.Lap);
        Assert.Equal(600, spec.Topside.MitreForwardOfMm);
        TopsideSlope.Flare flare = Assert.IsType<TopsideSlope.Flare>(spec.Topside.Slope);
        Assert.Equal([new("0", 20), new("3", 8)], flare.Stations);
    }

    [Fact]
    public void AnEmptyTableAsksForItAllWithTheUsualValues()
    {
        SettingUpSpec spec = Texts.Sound(Texts.Job + "\n[setting-up]").SettingUp!;
        Assert.Equal(8, spec.ClothRadiusMm);
        Assert.Equal(20, spec.FrameMm);
        Assert.Null(spec.Topside);
        Assert.Null(Texts.Sound().SettingUp);
    }

    [Fact]
    public void OneFlareAllAlongAndASheerLine()
    {
        TopsideSlope even = Texts
            .Sound(
                Texts.Job
                    + "\n[setting-up]\ntopside = { thickness = 12, lap = \"mitre\", flare = -3 }"
            )
            .SettingUp!.Topside!.Slope;
        Assert.Equal([new(null, -3)], Assert.IsType<TopsideSlope.Flare>(even).Stations);
        Job drawn = Texts.Sound(
            Texts.Job
                + "\n[setting-up]\ntopside = { thickness = 12, lap = \"mitre\", sheer = \"sheer\" }",
            Texts.Offsets + Rows
        );
        Assert.Equal(new TopsideSlope.ToLine("sheer"), drawn.SettingUp!.Topside!.Slope);
    }

    /// <summary>Where the table grows forward, positions are turned with it; a frame keeps the name that the job gives it.</summary>
    [Fact]
    public void PositionsThatGrowForwardAreTurned()
    {
        Job job = Texts.Sound(
            Texts.Job.Replace("keel  =", "positions = \"forward\"\nkeel  =")
                + "\n[setting-up]\nframes = [900]\ntopside = { thickness = 9, lap = \"mitre\", mitre-forward-of = 1800, flare = 5 }",
            Texts
                .Offsets.Replace("620,250,95,15", "15,95,250,620")
                .Replace("25,32,40,55", "55,40,32,25")
                .Replace("900,735,620,470", "470,620,735,900")
                .Replace("120,420,650,960", "960,650,420,120")
        );
        Assert.Equal([new("900", 1500)], job.SettingUp!.Frames);
        Assert.Equal(600, job.SettingUp.Topside!.MitreForwardOfMm);
    }

    [Theory]
    [InlineData("ribands = 20", "\"ribands\"", "did you mean \"ribbands\"")]
    [InlineData("ribbands = -1", "ribbands = -1", "less than 0")]
    [InlineData("frame-thickness = 0", "frame-thickness = 0", "greater than 0")]
    [InlineData("transom-thickness = \"thick\"", "\"thick\"")]
    [InlineData("frame-face = \"aft\"", "\"aft\"", "\"after\"")]
    [InlineData("frames = 900", "frames = 900", "list of lengths")]
    [InlineData("frames = [900, \"9 yd\"]", "\"9 yd\"", "mm, cm, m, in, ft")]
    [InlineData("frames = [true]", "not a length")]
    [InlineData("waterlines = \"450\"", "list of lengths")]
    [InlineData("backbone-half-width = -5", "greater than 0")]
    [InlineData("backbone-half-width = { line = \"hogg\" }", "\"hogg\"", "did you mean \"hog\"")]
    [InlineData("backbone-half-width = { lin = \"hog\" }", "\"lin\"", "did you mean \"line\"")]
    [InlineData("chine-log = 45", "chine-log = 45", "no topside")]
    [InlineData("cloth-radius = 0", "greater than 0")]
    [InlineData("chine-piece = { width = 0 }", "greater than 0")]
    [InlineData("chine-piece = { up = 30 }", "\"width\"")]
    [InlineData("topside = 12", "must be a table")]
    [InlineData("topside = { lap = \"mitre\", flare = 3 }", "\"thickness\"")]
    [InlineData("topside = { thickness = 12, flare = 3 }", "\"lap\"", "topside laps bottom")]
    [InlineData(
        "topside = { thickness = 12, lap = \"miter\", flare = 3 }",
        "\"miter\"",
        "did you mean \"mitre\""
    )]
    [InlineData("topside = { thickness = 12, lap = \"mitre\" }", "sheer", "flare")]
    [InlineData(
        "topside = { thickness = 12, lap = \"mitre\", flare = 3, sheer = \"sheer\" }",
        "one of sheer"
    )]
    [InlineData(
        "topside = { thickness = 12, lap = \"mitre\", sheer = \"shear\" }",
        "\"shear\"",
        "did you mean \"sheer\""
    )]
    [InlineData("topside = { thickness = 12, lap = \"mitre\", flare = 85 }", "85", "less than 80")]
    [InlineData("topside = { thickness = 12, lap = \"mitre\", flare = [] }", "names no station")]
    [InlineData(
        "topside = { thickness = 12, lap = \"mitre\", flare = [{ station = \"9\", degrees = 3 }] }",
        "\"9\"",
        "no such station"
    )]
    [InlineData(
        "topside = { thickness = 12, lap = \"mitre\", flare = [{ station = \"1\", degrees = 3 }, { station = \"1\", degrees = 4 }] }",
        "given twice"
    )]
    [InlineData(
        "topside = { thickness = 12, lap = \"mitre\", flare = [{ station = \"1\" }] }",
        "\"degrees\""
    )]
    public void EveryFaultIsFound(string line, params string[] words)
    {
        ReadResult result = Read("[setting-up]\n" + line);
        Assert.Null(result.Job);
        Assert.True(
            result.Findings.Any(f =>
                f.Severity == Severity.Error
                && f.Where.StartsWith("job.toml", StringComparison.Ordinal)
                && words.All(w => f.Message.Contains(w, StringComparison.Ordinal))
            ),
            string.Join('\n', result.Findings.Select(f => $"{f.Where} | {f.Message}"))
        );
    }

    [Fact]
    public void AnUnlikelyThicknessIsDoubted()
    {
        ReadResult result = Read("[setting-up]\nframe-thickness = \"2 ft\"");
        Assert.NotNull(result.Job);
        Assert.Contains(
            result.Findings,
            f => f.Severity == Severity.Warning && f.Message.Contains("frame-thickness")
        );
    }
}
