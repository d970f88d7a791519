using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[[cloth]] and [[sheathing]] as a job writes them.</summary>
public sealed class SheathingReadingTests
{
    private const string Layers = """

        [[layer]]
        kind = "cloth"
        name = "core cloth"
        thickness = 1
        [[layer]]
        name = "outer"
        thickness = 9
        width = 150
        heads = "forward"
        angle = 45
        [[layer]]
        kind = "cloth"
        name = "outside"
        thickness = 0.6
        """;

    private const string Cloth = """

        [[cloth]]
        name = "stitched 600"
        kind = "stitched"
        mass = 600
        roll = { width = 1270, length = 50000 }
        """;

    private const string Others = """

        [[cloth]]
        name = "woven 200"
        kind = "woven"
        mass = 200
        roll = { width = 1000, length = 25000 }
        [[cloth]]
        name = "with mat"
        kind = "stitched"
        mass = 800
        mat = 225
        roll = { width = 1270, length = 50000 }
        """;

    private const string Both = """

        [[sheathing]]
        layer = "core cloth"
        cloth = "stitched 600"
        [[sheathing]]
        layer = "outside"
        cloth = "stitched 600"
        """;

    [Fact]
    public void WhatIsLeftOutIsTheTradesUsual()
    {
        Job job = Texts.Sound(Texts.Job + Layers + Cloth + Both);
        ClothSpec cloth = Assert.Single(job.Cloths);
        Assert.Equal(
            (600, 0, 40, Weave.Diagonal),
            (cloth.MassGsm, cloth.MatGsm, cloth.LocksAtDegrees, cloth.Weave)
        );
        Assert.Equal(new PartRange(0.4, 0.5, 0.55), cloth.GlassContent);
        Assert.True(cloth.MayTurnOver);
        SheathingSpec core = job.Sheathing[0],
            outside = job.Sheathing[1];
        Assert.Equal(new ClothAtKeel.PastCentreLine(50), core.Keel);
        Assert.Equal(new ClothAtKeel.PastCentreLine(75), outside.Keel);
        Assert.Equal((0, 75), (core.RoundChineMm, outside.RoundChineMm));
        Assert.Equal(new FirstLine.Best(), core.FirstAlong);
        Assert.Equal((50, 150, 25), (core.JoinLapMm, core.StaggerMm, core.ExcessMm));
        Assert.Equal(Side.Starboard, core.SideFirst);
    }

    /// <summary>The keel must carry what laps under it, and does so by the layer's lap.</summary>
    [Fact]
    public void ALapIsTheLayersOwnOrComesOfTheCloth()
    {
        Job job = Texts.Sound(Texts.Job + Layers + Cloth + Both);
        Assert.Equal(
            new ClothLap(100, null, null),
            job.Layers.OfType<ClothLayerSpec>().First().Lap
        );

        string own = Layers.Replace(
            "thickness = 1\n",
            "thickness = 1\nlap = { width = 76, from = 100, to = 1900 }\n"
        );
        job = Texts.Sound(Texts.Job + own + Cloth + Both);
        Assert.Equal(new ClothAtKeel.PastCentreLine(38, 100, 1900), job.Sheathing[0].Keel);
        Assert.Equal(new ClothLap(76, 100, 1900), job.Layers.OfType<ClothLayerSpec>().First().Lap);

        // Where positions grow forward both are turned with the table.
        job = Texts.Sound(
            Texts.Job.Replace("[hull]", "[hull]\npositions = \"forward\"") + own + Cloth + Both,
            Texts.Offsets.Replace("0,600,1200,2400", "2400,1800,1200,0")
        );
        Assert.Equal(new ClothAtKeel.PastCentreLine(38, 500, 2300), job.Sheathing[0].Keel);
        Assert.Equal(new ClothLap(76, 500, 2300), job.Layers.OfType<ClothLayerSpec>().First().Lap);
    }

    [Fact]
    public void AJobWithoutClothIsAsItWas() =>
        Assert.All(
            [Texts.Job, Texts.Job + Layers],
            text =>
            {
                Job job = Texts.Sound(text);
                Assert.Empty(job.Cloths);
                Assert.Empty(job.Sheathing);
                Assert.All(job.Layers.OfType<ClothLayerSpec>(), l => Assert.Null(l.Lap));
            }
        );

    [Fact]
    public void EveryFormOfAKeyIsTaken()
    {
        Job job = Texts.Sound(
            Texts.Job
                + Layers
                + """

                [[cloth]]
                name = "17 with mat"
                kind = "stitched"
                mass = "23.75 oz/yd2"
                mat = "0.75 oz/ft2"
                roll = [{ width = "50 in", length = "100 ft", count = 2, price = 300 }, { width = 1270, length = 7000 }]
                [[cloth]]
                name = "mat"
                kind = "mat"
                mass = 300
                roll = { width = 1000, length = 30000 }
                [[sheathing]]
                layer = "core cloth"
                cloth = "17 with mat"
                keel = { stop = 20 }
                chine = { round = 60 }
                transom = { round = 40 }
                first-along = { part = 0.4, turned = -2 }
                side-first = "port"
                courses = "fewest metres"
                mat-side = "outward"
                [[sheathing]]
                layer = "outside"
                cloth = "mat"
                first-along = { station = "2", part = 0.25 }
                """
        );
        ClothSpec stitched = job.Cloths[0],
            mat = job.Cloths[1];
        // 17 oz/yd2 of threads and 3/4 oz/ft2 of mat.
        Assert.Equal(805.3, stitched.MassGsm, 0.05);
        Assert.Equal(228.9, stitched.MatGsm, 0.05);
        Assert.Equal(1270, stitched.Rolls[0].WidthMm, 1e-9);
        Assert.Equal((2, 300.0), (stitched.Rolls[0].Count, stitched.Rolls[0].Price));
        Assert.Null(stitched.Rolls[1].Count);
        Assert.False(stitched.MayTurnOver);
        Assert.Equal((Weave.Stiff, 5, 300), (mat.Weave, mat.LocksAtDegrees, mat.MatGsm));
        Assert.True(mat.MayTurnOver);
        SheathingSpec core = job.Sheathing[0];
        Assert.Equal(new ClothAtKeel.ShortOfEdge(20), core.Keel);
        Assert.Equal((60, 40, 0), (core.RoundChineMm, core.RoundTransomMm, core.RoundStemMm));
        Assert.Equal(new FirstLine.Straight(0.4, -2), core.FirstAlong);
        Assert.Equal((Side.Port, CourseRule.FewestMetres), (core.SideFirst, core.Courses));
        Assert.Equal(Facing.Outward, core.MatSide);
        Assert.Equal(new FirstLine.Point("2", 0.25), job.Sheathing[1].FirstAlong);
        Assert.Null(job.Layers.OfType<ClothLayerSpec>().First().Lap);
    }

    [Theory]
    [InlineData("mass = 600", "mass = 0", "mass", "grams a square metre")]
    [InlineData("mass = 600", "mass = 600\nmat = 700", "mat", "less than mass")]
    [InlineData("mass = 600", "", "[[cloth]]", "no \"mass\"")]
    [InlineData(
        "mass = 600",
        "mass = 600\nglass-content = [0.5, 0.4, 0.6]",
        "glass-content",
        "three parts of 1"
    )]
    [InlineData("mass = 600", "mass = 600\nlocks-at = 70", "locks-at", "degrees from 1 to 60")]
    [InlineData("roll = { width = 1270, length = 50000 }", "", "[[cloth]]", "no \"roll\"")]
    [InlineData("width = 1270, ", "", "roll", "no \"width\"")]
    public void WhatAClothCannotBeIsToldByItsLine(string what, string by, string at, string told)
    {
        string job = Texts.Job + Layers + Cloth.Replace(what, by) + Both;
        Told(job, Texts.Read(job).Findings, at, told);
    }

    [Theory]
    [InlineData("keel = { stop = 20, past-centre-line = 20 }", "one of them")]
    [InlineData("chine = \"round\"", "\"stop\"")]
    [InlineData("first-along = { part = 1.5 }", "part of the girth")]
    [InlineData("first-along = { station = \"1\", turned = 2 }", "belongs to a line")]
    [InlineData("join-lap = -1", "must be from 0 to 1000 mm")]
    [InlineData("side-first = \"left\"", "starboard")]
    [InlineData("stitch-side = \"down\"", "\"to the wood\"")]
    public void WhatSheathingCannotBeIsToldByItsLine(string key, string told)
    {
        string job =
            Texts.Job
            + Layers
            + Cloth
            + $"\n[[sheathing]]\nlayer = \"core cloth\"\ncloth = \"stitched 600\"\n{key}\n";
        Told(job, Texts.Read(job).Findings, key, told);
    }

    [Theory]
    [InlineData("layer = \"core cloth\"", "layer = \"outer\"", "layer", "a layer of planks")]
    [InlineData(
        "layer = \"core cloth\"",
        "layer = \"cor cloth\"",
        "layer",
        "'core cloth', 'outside'"
    )]
    [InlineData("layer = \"outside\"", "layer = \"core cloth\"", "layer", "another [[sheathing]]")]
    [InlineData("cloth = \"stitched 600\"", "cloth = \"woven\"", "cloth", "'stitched 600'")]
    [InlineData(
        "cloth = \"stitched 600\"",
        "cloth = \"stitched 600\"\njoin-lap = 900\nexcess = 200",
        "cloth",
        "1270 mm wide"
    )]
    [InlineData(
        "cloth = \"stitched 600\"",
        "cloth = \"stitched 600\"\nmat-side = \"outward\"",
        "mat-side",
        "no mat on one face"
    )]
    [InlineData(
        "cloth = \"stitched 600\"",
        "cloth = \"woven 200\"\nstitch-side = \"outward\"",
        "stitch-side",
        "'woven 200' is not stitched"
    )]
    [InlineData(
        "cloth = \"stitched 600\"",
        "cloth = \"with mat\"\nmat-side = \"outward\"\nstitch-side = \"outward\"",
        "stitch-side",
        "mat-side says which way it lies"
    )]
    public void WhatDoesNotGoTogetherIsToldByItsLine(
        string what,
        string by,
        string key,
        string told
    )
    {
        string sheathing = Both;
        int at = sheathing.IndexOf(what, StringComparison.Ordinal);
        sheathing = sheathing[..at] + by + sheathing[(at + what.Length)..];
        string job = Texts.Job + Layers + Cloth + Others + sheathing;
        ReadResult read = Texts.Read(job);
        Assert.NotNull(read.Job);
        Told(job, read.Placed(JobChecks.Of(read.Job)), $"{key} =", told);
        Assert.Single(JobChecks.Of(read.Job));
    }

    [Fact]
    public void AStationThatIsNotThereIsToldByItsLine()
    {
        string job = Texts.Job + Layers + Cloth + Both + "\nfirst-along = { station = \"9\" }";
        Told(job, Texts.Read(job).Findings, "first-along", "9");
    }

    /// <summary>An error with those words, in a line of the job that begins so.</summary>
    private static void Told(string job, IEnumerable<Finding> found, string begins, string words)
    {
        string[] lines = job.Split('\n');
        Assert.Contains(
            found,
            f =>
                f.Severity == Severity.Error
                && f.Message.Contains(words, StringComparison.Ordinal)
                && Enumerable
                    .Range(0, lines.Length)
                    .Any(i =>
                        lines[i].StartsWith(begins, StringComparison.Ordinal)
                        && f.Where.StartsWith($"job.toml, line {i + 1},", StringComparison.Ordinal)
                    )
        );
    }
}
