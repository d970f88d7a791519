using PlankFit.Export.Glue;
using PlankFit.Export.Tables;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Names;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>What lies on an area is read as the data sheet has it, by mass or by how far a volume goes, and comes to the same.</summary>
public sealed class GlueRateTests
{
    private const string Crew = "[crew]",
        UsualDensity = "density = [1.15, 0.97]";

    /// <summary>Of the two to one of the job: (2 · 1.15 + 0.97) / 3.</summary>
    private const double Dense = 1.09;

    /// <summary>453.59237 g, 0.9144 m, 3.785411784 and 4.54609 litres, each exact by definition; reckoned here anew.</summary>
    [Theory]
    [InlineData("[100, 150, 200]", 100, 150, 200)]
    [InlineData("[\"100 g/m2\", \"150 g/m²\", 200]", 100, 150, 200)]
    [InlineData(
        "[\"3 oz/yd2\", \"4.5 oz/sq yd\", \"6 oz/yd²\"]",
        101.7172425,
        152.5758637,
        203.434485
    )]
    [InlineData("[\"0.4 oz/ft2\", \"0.5 oz/sq ft\", \"0.6 oz/ft²\"]", 122.061, 152.576, 183.091)]
    [InlineData(
        "[\"20 lb/1000 ft2\", \"30 lb/1000 sq ft\", \"40 lb/1000 ft²\"]",
        97.649,
        146.473,
        195.297
    )]
    [InlineData("[\"10 m2/l\", \"8 m²/l\", \"5 m2/litre\"]", 109, 136.25, 218)]
    [InlineData(
        "[\"350 ft2/US gal\", \"300 sq ft/US gal\", \"250 ft²/US gal\"]",
        126.894,
        148.043,
        177.652
    )]
    [InlineData(
        "[\"87.5 ft2/US qt\", \"75 ft2/US qt\", \"62.5 sq ft/US qt\"]",
        126.894,
        148.043,
        177.652
    )]
    [InlineData(
        "[\"350 ft2/imp gal\", \"80 ft2/imp qt\", \"250 ft2/imp gal\"]",
        152.393,
        166.68,
        213.35
    )]
    public void EveryWayOfWritingComesToItsMass(
        string written,
        double least,
        double usual,
        double most
    )
    {
        Estimate read = Read($"[priming]\nrate = {written}").Glue!.PrimingGsm!.Value;
        Assert.Equal(least, read.Least, 1e-3);
        Assert.Equal(usual, read.Usual, 1e-3);
        Assert.Equal(most, read.Most, 1e-3);
    }

    [Theory]
    [InlineData("[\"300 ft2/gal\", 1, 2]", "say which")]
    [InlineData("[\"300 ft2/qt\", 1, 2]", "say which")]
    [InlineData("[\"4 oz\", 200, 300]", "a text with its unit")]
    [InlineData("[100, 200]", "three amounts on an area")]
    [InlineData("[200, 150, 100]", "the least first")]
    [InlineData(
        "[\"150 ft2/US gal\", \"250 ft2/US gal\", \"350 ft2/US gal\"]",
        "the farthest first"
    )]
    [InlineData("[\"0 m2/l\", 1, 2]", "at most 5000")]
    [InlineData("[-1, 1, 2]", "at least 0")]
    [InlineData("[1, 2, \"1e9 oz/yd2\"]", "at most 5000")]
    public void WhatCannotBeReadIsRefusedAtItsLine(string written, string said)
    {
        string job = Job($"[weave]\nrate = {written}");
        ReadResult read = EveryName.Read(job);
        Assert.Null(read.Job);
        Finding fault = Assert.Single(
            read.Findings,
            f => f.Message.Contains(said, StringComparison.Ordinal)
        );
        Assert.Contains($"line {LineOf(job, "rate =")}", fault.Where, StringComparison.Ordinal);
    }

    /// <summary>How far a volume goes is no mass where nothing says how dense it is.</summary>
    [Fact]
    public void ASpreadWithoutResinIsRefused()
    {
        string job = Job("[priming]\nrate = [\"9 m2/l\", \"6 m2/l\", \"4 m2/l\"]")
            .Replace("[resin]", "[glue]", StringComparison.Ordinal)
            .Replace("[[resin.", "[[glue.", StringComparison.Ordinal);
        ReadResult read = EveryName.Read(job);
        Assert.Null(read.Job);
        Assert.Equal(
            3,
            read.Findings.Count(f => f.Message.Contains("its density", StringComparison.Ordinal))
        );
    }

    /// <summary>Glue between layers by mass, by volume or as a film: 0.3 mm is 0.3 litres on a square metre, filler among it.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("[[filler]]\nname = \"silica\"\ngrams-per-kg = [40, 60, 90]\ndensity = 2.2\n")]
    public void GlueInAJointIsAFilmHoweverItIsWritten(string filler)
    {
        double dense = filler.Length == 0 ? Dense : 1 / ((1 / Dense) + (0.06 / 2.2));
        string mass = string.Join(
            ", ",
            new[] { 0.2, 0.3, 0.5 }.Select(mm =>
                FormattableString.Invariant($"\"{1000 * dense * mm / 33.905747495:R} oz/yd2\"")
            )
        );
        foreach (
            string written in new[]
            {
                "film-thickness = [0.2, 0.3, 0.5]",
                $"rate = [{mass}]",
                "rate = [\"5 m2/l\", \"3.3333333333333335 m2/l\", \"2 m2/l\"]",
            }
        )
        {
            Estimate film = Read(filler, UsualDensity + "\n" + written).Glue!.FilmMm;
            Assert.Equal(0.2, film.Least, 1e-9);
            Assert.Equal(0.3, film.Usual, 1e-9);
            Assert.Equal(0.5, film.Most, 1e-9);
        }
    }

    /// <summary>Where the job has both, wood is primed with resin and layers are glued with glue: each by its own density, 1.09 and (1.5 + 0.9) / 2.</summary>
    [Fact]
    public void EachIsReckonedByItsOwnDensity()
    {
        string resin = Job("[priming]\nrate = [\"10 m2/l\", \"8 m2/l\", \"5 m2/l\"]");
        int from = resin.IndexOf("[resin]", StringComparison.Ordinal),
            to = resin.IndexOf("[[fillet]]", StringComparison.Ordinal);
        string glue = resin[from..to]
            .Replace("resin", "glue", StringComparison.Ordinal)
            .Replace("[2, 1]", "[1, 1]", StringComparison.Ordinal)
            .Replace(
                UsualDensity,
                "density = [1.5, 0.9]\nrate = [\"240 g/m2\", 360, 600]",
                StringComparison.Ordinal
            );
        GlueSpec spec = Bound(resin.Insert(to, glue)).Glue!;
        Assert.Equal(new(109, 136.25, 218), Rounded(spec.PrimingGsm!.Value));
        Assert.Equal(new(0.2, 0.3, 0.5), Rounded(spec.FilmMm));

        static Estimate Rounded(Estimate e) =>
            new(Math.Round(e.Least, 9), Math.Round(e.Usual, 9), Math.Round(e.Most, 9));
    }

    /// <summary>A pound is 453.59237 g; a US gallon 3.785411784 litres, an imperial one 4.54609.</summary>
    [Theory]
    [InlineData("[1.15, \"0.97 kg/l\"]", 1.15, 0.97)]
    [InlineData("[\"1.15 g/ml\", \"0.97 g/cm3\"]", 1.15, 0.97)]
    [InlineData("[\"9.6 lb/US gal\", \"8.1 lb/US gal\"]", 1.150334, 0.970594)]
    [InlineData("[\"11.5 lb/imp gal\", \"9.7 lb/imp gal\"]", 1.147428, 0.967831)]
    public void DensitiesAreReadAsDataSheetsHaveThem(string written, double one, double other)
    {
        MixRatio read = Read("", "density = " + written).Glue!.Resin!.Ratio;
        Assert.Equal(one, read.ResinKgPerLitre, 1e-6);
        Assert.Equal(other, read.HardenerKgPerLitre, 1e-6);
    }

    [Fact]
    public void AFilmAndARateTogetherAreRefused()
    {
        ReadResult read = EveryName.Read(
            Job("", UsualDensity + "\nfilm-thickness = [0.2, 0.3, 0.5]\nrate = [200, 300, 500]")
        );
        Assert.Null(read.Job);
        Assert.Contains(
            read.Findings,
            f => f.Message.Contains("leave one of them out", StringComparison.Ordinal)
        );
    }

    /// <summary>Everything as an American data sheet has it, and the same in grams, metres and litres: every amount of the plan is the same to its last digit on paper.</summary>
    [Fact]
    public void MetricAndAmericanAgreeToTheDigit()
    {
        // 8, 10 and 12 oz/yd2; 400, 300 and 200 ft2 a US gallon; 40, 60 and 100 lb on 1000 ft2; 9.6 and 8.1 lb a US gallon.
        GlueSpec american =
                Read(
                    "[priming]\nrate = [\"8 oz/yd2\", \"10 oz/yd2\", \"12 oz/yd2\"]\n[weave]\nrate = [\"400 ft2/US gal\", \"300 ft2/US gal\", \"200 ft2/US gal\"]",
                    "density = [\"9.6 lb/US gal\", \"8.1 lb/US gal\"]\nrate = [\"40 lb/1000 ft2\", \"60 lb/1000 ft2\", \"100 lb/1000 ft2\"]"
                ).Glue!,
            metric =
                Read(
                    "[priming]\nrate = [271.245979964, 339.057474955, 406.868969946]\n[weave]\nrate = [\"9.816970642 m2/l\", \"7.362727981 m2/l\", \"4.908485321 m2/l\"]",
                    "density = [1.150333055, 0.970593515]\nrate = [195.297105572, 292.945658357, 488.242763929]"
                ).Glue!;
        string[] inGrams = Amounts(metric);
        Assert.NotEmpty(inGrams);
        Assert.Equal(inGrams, Amounts(american));

        static string[] Amounts(GlueSpec read)
        {
            GluePlan plan = GluedLaunch
                .Of(
                    GluedLaunch.Plan.Job with
                    {
                        Glue = GluedLaunch.Plan.Job.Glue! with
                        {
                            Resin = read.Resin,
                            Glue = null,
                            PrimingGsm = read.PrimingGsm,
                            WeaveGsm = read.WeaveGsm,
                            FilmMm = read.FilmMm,
                        },
                    }
                )
                .Glue!;
            Table table = GlueTables.Amounts(plan);
            return
            [
                .. table.Rows.Select(r =>
                    string.Join(
                        ';',
                        r.Zip(
                            table.Columns,
                            (cell, column) =>
                                cell.Number is { } number
                                    ? NumberText.Padded(number, column.Decimals)
                                    : cell.Text
                        )
                    )
                ),
            ];
        }
    }

    /// <summary>453.59237 g and 28.316846592 litres, exact by definition: fillers, pots, prices and the pace of work as an American writes them are the same job.</summary>
    [Fact]
    public void FillersPotsPricesAndWorkTakeTheirUnits()
    {
        const string Silica = "[[filler]]\nname = \"chalk\"\n";
        FillerSpec american = Read(
                Silica
                    + "grams-per-kg = [\"0.64 oz/lb\", \"0.96 oz/lb\", \"9 %\"]\ndensity = \"137.34151326751814 lb/ft3\"\nprice-per-kg = \"11.7934 /lb\"\n"
            )
                .Glue!.Fillers.Single(f => f.Name == "chalk"),
            metric = Read(
                Silica + "grams-per-kg = [40, \"60 g/kg\", 90]\ndensity = 2.2\nprice-per-kg = 26\n"
            )
                .Glue!.Fillers.Single(f => f.Name == "chalk");
        Assert.Equal(metric.GramsPerKg.Least, american.GramsPerKg.Least, 1e-9);
        Assert.Equal(metric.GramsPerKg.Usual, american.GramsPerKg.Usual, 1e-9);
        Assert.Equal(metric.GramsPerKg.Most, american.GramsPerKg.Most, 1e-9);
        Assert.Equal(metric.KgPerLitre!.Value, american.KgPerLitre!.Value, 1e-6);
        Assert.Equal(metric.PricePerKg!.Value, american.PricePerKg!.Value, 1e-4);
        CrewSpec crew = EveryName
            .Read(
                Job("")
                    .Replace(
                        Crew,
                        Crew
                            + "\nwet = \"0.6 min/ft2\"\nlay-fillet = \"0.6 min/ft\"\nmost-grams = \"1.5 lb\"\nleast-grams = \"2 oz\"",
                        StringComparison.Ordinal
                    )
            )
            .Job!.Glue!.Crew!;
        Assert.Equal(0.6 / 0.09290304, crew.WetMinutesPerM2, 1e-9);
        Assert.Equal(0.6 / 0.3048, crew.FilletMinutesPerM, 1e-9);
        Assert.Equal(1.5 * 453.59237, crew.MostGrams!.Value, 1e-9);
        Assert.Equal(453.59237 / 8, crew.LeastGrams, 1e-9);
    }

    /// <summary>A unit of something else is refused with those that are taken.</summary>
    [Theory]
    [InlineData("density = \"2.2 oz\"", "lb/ft3")]
    [InlineData("density = \"400 lb/ft3\"", "from 0.05 to 5")]
    [InlineData("price-per-kg = \"26 dollars\"", "/lb")]
    public void AnotherUnitIsRefused(string line, string said)
    {
        string job = Job(
            "[[filler]]\nname = \"silica\"\ngrams-per-kg = [40, 60, 90]\n" + line + "\n"
        );
        ReadResult read = EveryName.Read(job);
        Assert.Null(read.Job);
        Assert.Contains(read.Findings, f => f.Message.Contains(said, StringComparison.Ordinal));
    }

    private static Job Read(string more, string density = UsualDensity) =>
        Bound(Job(more, density));

    private static Job Bound(string job)
    {
        ReadResult read = EveryName.Read(job);
        Assert.True(
            read.Job is not null,
            string.Join('\n', read.Findings.Select(f => f.Where + ": " + f.Message))
        );
        return read.Job;
    }

    private static string Job(string more, string density = UsualDensity) =>
        EveryName
            .Job.ReplaceLineEndings("\n")
            .Replace(UsualDensity, density, StringComparison.Ordinal)
            .Replace(Crew, more + "\n" + Crew, StringComparison.Ordinal);

    private static int LineOf(string job, string text) =>
        1 + Array.FindIndex(job.Split('\n'), l => l.Contains(text, StringComparison.Ordinal));
}
