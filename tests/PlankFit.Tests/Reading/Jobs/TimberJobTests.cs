using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[timber], [[timber.species]] and the wood of a layer.</summary>
public sealed class TimberJobTests
{
    [Fact]
    public void AllThatMayBeSaid()
    {
        TimberSpec timber = Texts
            .Sound(
                Texts.Job.Replace("angle = 45", "angle = 45\nspecies = \"my larch\"")
                    + """

                    [timber]
                    planks = "sitka-spruce"
                    workshop-moisture = 9.5
                    service-moisture = { temperature = "70 F", humidity = 65 }
                    grain = "quarter"
                    boards = "knotty"
                    face-grain = "across"
                    clamp-spacing = 250

                    [[timber.species]]
                    name = "my larch"
                    like = "douglas-fir"
                    density = "37 lb/ft3"
                    modulus = "1.87 Mpsi"
                    rupture = 90
                    shrink-flat = 8.1
                    source = "weighed in our shop"

                    [[timber.species]]
                    name = "sitka-spruce"
                    density = 410

                    [[timber.species]]
                    name = "okoume ply, 5 layers"
                    kind = "plywood"
                    density = 480
                    movement-flat = 0.0002
                    least-radius-over-thickness = 130
                    """
            )
            .Timber!;
        Assert.Equal("sitka-spruce", timber.Species);
        Assert.Equal(9.5, timber.Workshop!.Percent);

        // 70 °F and 65 %: 12.0 (the table of moistures at rest).
        Assert.Equal(12.0, timber.Service!.Percent, 0.05);
        Assert.Contains("70 F", timber.Service.From!, StringComparison.Ordinal);
        Assert.Equal(
            (Grain.Quarter, BoardGrade.Knotty, FaceGrain.Across, 250.0),
            (timber.Grain, timber.Grade, timber.FaceGrain, timber.ClampSpacingMm)
        );
        Species larch = SpeciesTable.Find(timber.Table, "my larch")!;

        // 37 lb/ft³ = 592.7 kg/m³; 1.87e6 psi = 12893 MPa.
        Assert.Equal(592.7, larch.KgPerCubicMetre(9)!.Value, 0.05);
        Assert.Equal(12893, larch.Modulus!.Value, 1.0);
        Assert.Equal(90, larch.Rupture!.Value);
        Assert.Equal(
            (SourceTag.Job, "weighed in our shop"),
            (larch.Rupture.Tag, larch.Rupture.Source)
        );

        // Its own shrinkage stands before the coefficient of the wood that it is like; the other one is still that wood's.
        Assert.Equal(0.081 / 30, larch.Movement(Grain.Flat)!.Value, 1e-12);
        Assert.Equal(0.00165, larch.Movement(Grain.Quarter)!.Value, 1e-12);
        Species spruce = SpeciesTable.Find(timber.Table, "sitka-spruce")!;
        Assert.Equal(410, spruce.KgPerCubicMetre(9));
        Assert.Equal("Sitka spruce", spruce.Title);
        Assert.Equal(10800, spruce.Modulus!.Value);
        Species ply = SpeciesTable.Find(timber.Table, "okoume ply, 5 layers")!;
        Assert.Equal(WoodKind.Plywood, ply.Kind);
        Assert.Equal(130, ply.LeastRadiusOverThickness!.Value);
    }

    [Fact]
    public void ALayerThatNamesItsWoodIsEnough()
    {
        Job job = Texts.Sound(Texts.Job.Replace("angle = 45", "angle = 45\nspecies = \"teak\""));
        Assert.Equal("Teak", job.Timber!.Of(job.Layers.OfType<PlankLayerSpec>().Single())!.Title);
        Assert.Null(Texts.Sound().Timber);
    }

    [Fact]
    public void ALayerSWoodThatNobodyKnowsIsAFault() =>
        Texts.Finds(
            Texts.Read(Texts.Job.Replace("angle = 45", "angle = 45\nspecies = \"douglas fir\"")),
            Severity.Error,
            "job.toml, line 17, column 11",
            "\"douglas fir\"",
            "did you mean \"douglas-fir\""
        );

    [Theory]
    [InlineData("planks = \"oak\"", 18, 10, "no species of the table", "white-oak")]
    [InlineData("planks = 3", 18, 10, "text in quotes")]
    [InlineData("workshop-moisture = 31", 18, 21, "0 to 30")]
    [InlineData("workshop-moisture = \"9\"", 18, 21, "plain number")]
    [InlineData("service-moisture = { temperature = \"20\", humidity = 50 }", 18, 36, "20 C")]
    [InlineData("service-moisture = { temperature = \"90 C\", humidity = 50 }", 18, 36, "70 C")]
    [InlineData("service-moisture = { temperature = \"20 C\", humidity = 101 }", 18, 55, "0 to 98")]
    [InlineData("service-moisture = { temperature = \"20 C\" }", 18, 20, "no \"humidity\"")]
    [InlineData("grain = \"rift\"", 18, 9, "\"flat\" or \"quarter\"")]
    [InlineData("clamp-spacing = 0", 18, 17, "greater than 0")]
    [InlineData("plank = \"teak\"", 18, 1, "did you mean \"planks\"")]
    [InlineData("[[timber.species]]\ndensity = 500", 18, 1, "no \"name\"")]
    [InlineData("[[timber.species]]\nname = \"x\"\nlike = \"y\"", 20, 8, "no species of the table")]
    [InlineData("[[timber.species]]\nname = \"x\"\ndensity = \"500 kg\"", 20, 11, "kg/m3")]
    [InlineData("[[timber.species]]\nname = \"x\"\ndensity = -5", 20, 11, "kg a cubic metre")]
    [InlineData("[[timber.species]]\nname = \"x\"\nmodulus = \"13 GPA\"", 20, 11, "GPa")]
    [InlineData("[[timber.species]]\nname = \"x\"\nmovement-flat = 0.3", 20, 17, "0 to 0.01")]
    [InlineData(
        "[[timber.species]]\nname = \"x\"\nleast-radius-over-thickness = 100",
        20,
        31,
        "plywood"
    )]
    [InlineData(
        "[[timber.species]]\nname = \"x\"\n[[timber.species]]\nname = \"x\"",
        21,
        8,
        "already"
    )]
    public void WhatIsWrongIsFoundWhereItStands(
        string line,
        int at,
        int column,
        params string[] words
    ) =>
        Texts.Finds(
            Texts.Read(Texts.Job.ReplaceLineEndings("\n") + "\n[timber]\n" + line + "\n"),
            Severity.Error,
            $"job.toml, line {at}, column {column}",
            words
        );

    [Theory]
    [InlineData("density = 5", 20, 11)]
    [InlineData("modulus = 13", 20, 11)]
    [InlineData("rupture = \"85 psi\"", 20, 11)]
    public void AUnitMistakenIsDoubted(string line, int at, int column) =>
        Texts.Finds(
            Texts.Read(
                Texts.Job.ReplaceLineEndings("\n")
                    + "\n[timber]\n[[timber.species]]\nname = \"x\"\n"
                    + line
                    + "\n"
            ),
            Severity.Warning,
            $"job.toml, line {at}, column {column}",
            "is the unit right?"
        );

    /// <summary>A row of the limits says what it asks for; where it does not, its words and its place do.</summary>
    [Fact]
    public void TheLimitsRowsHaveAWay()
    {
        Job job = Texts.Sound(
            Texts.Job
                + """

                [[limits.bend]]
                least-radius-over-thickness = 180
                verdict = "gut"
                [[limits.bend]]
                least-radius-over-thickness = 120
                verdict = "Steam it"
                [[limits.bend]]
                least-radius-over-thickness = 90
                verdict = "im Kasten"
                way = "soak or steam"
                [[limits.bend]]
                least-radius-over-thickness = 0
                verdict = "nie"
                """
        );
        Assert.Equal(
            [BendWay.Cold, BendWay.SoakOrSteam, BendWay.SoakOrSteam, BendWay.LaminateThinner],
            job.Limits.Bend.Select(b => b.Way)
        );
    }
}
