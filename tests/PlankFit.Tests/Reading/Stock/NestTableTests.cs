using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Stock;

/// <summary>[nest] of the job, with the files that it names.</summary>
public sealed class NestTableTests
{
    private const string Rack =
        "board,length,width,thickness,grade,price\nB1,3600,160,9,clear,20\n";
    private const string Yard = "board,length,width,thickness,price\nY1,4200,160,9,25\n";

    [Fact]
    public void EveryKeyIsRead()
    {
        NestSpec spec = Read(
            """
            [nest]
            stock = ["stock.csv"]
            buy = "yard.csv"
            kerf = 2.5
            edge = 3
            end = 10
            plane = 1
            thicker = "2 mm"
            over-width = 0.3
            least-offcut = 400
            least-offcut-width = 60
            least-overhang = 12
            turn-end-for-end = false
            turn-face-for-face = true
            pairs-together = true
            grades = ["clear", "sound"]
            masters = "clear"
            least = { outer = "clear" }
            objective = "cost"
            seed = 7
            time = 25
            rounds = 40
            """,
            [Rack, Yard.Replace("price", "grade,price").Replace("9,25", "9,sound,25")]
        ).Job!.Nest!;
        Assert.Equal(
            (2.5, 3.0, 10.0, 1.0, 2.0, 0.3),
            (spec.KerfMm, spec.EdgeMm, spec.EndMm, spec.PlaneMm, spec.ThickerMm, spec.ProudMm)
        );
        Assert.Equal((400.0, 60.0), (spec.LeastOffcutMm, spec.LeastOffcutWidthMm));
        Assert.Equal(12, spec.LeastOverhangMm);
        Assert.Equal(
            (false, true, true),
            (spec.TurnEndForEnd, spec.TurnFaceForFace, spec.PairsTogether)
        );
        Assert.Equal(["clear", "sound"], spec.Grades);
        Assert.Equal(("clear", "clear"), (spec.MasterGrade, spec.LeastGrades["outer"]));
        Assert.Equal(
            (NestObjective.Cost, 7, 25.0, 40),
            (spec.Objective, spec.Seed, spec.Seconds, spec.Rounds)
        );
        Assert.Equal([("B1", true), ("Y1", false)], spec.Boards.Select(b => (b.Id, b.OnHand)));
    }

    /// <summary>What is asked about a figure is asked in what the job shows.</summary>
    [Theory]
    [InlineData("mm", 12, "more than 10 mm is a wide cut")]
    [InlineData("in", 0.5, "more than 13/32\" is a wide cut")]
    public void AWideKerfIsAskedAboutAsTheJobShowsLengths(string units, double kerf, string says) =>
        Assert.Contains(
            JobReader
                .Read(
                    Texts.Job.Replace("\"mm\"", $"\"{units}\"", StringComparison.Ordinal)
                        + FormattableString.Invariant(
                            $"\n[nest]\nstock = \"stock.csv\"\nkerf = {kerf}\n"
                        ),
                    "job.toml",
                    Texts.Offsets,
                    "offsets.csv"
                )
                .Findings,
            f => f.Message.Contains(says, StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("kerf = 2", "\"stock\"")]
    [InlineData("stock = \"stock.csv\"\nkref = 2", "did you mean \"kerf\"")]
    [InlineData("stock = \"stock.csv\"\nkerf = -1", "less than 0")]
    [InlineData("stock = \"stock.csv\"\npairs-together = \"yes\"", "true or false")]
    [InlineData("stock = \"stock.csv\"\nmasters = \"clear\"", "name the grades first")]
    [InlineData("stock = \"stock.csv\"\ngrades = [\"a\"]\nmasters = \"b\"", "none of the grades")]
    [InlineData("stock = \"stock.csv\"\nobjective = \"money\"", "\"area\" or \"cost\"")]
    [InlineData("stock = \"stock.csv\"\nrounds = 1.5", "whole number")]
    [InlineData("stock = \"stock.csv\"\ntime = -1", "seconds")]
    [InlineData("stock = \"stock.csv\"\nleast = { uoter = \"clear\" }", "did you mean \"outer\"")]
    public void FaultsSayWhatToWrite(string nest, string what)
    {
        ReadResult read = Read("[nest]\n" + nest, [Rack.Replace("clear", "")]);
        Assert.Contains(
            read.Findings,
            f => f.Severity == Severity.Error && f.Message.Contains(what, StringComparison.Ordinal)
        );
        Assert.Null(read.Job);
    }

    /// <summary>A board changed is a job changed: the sheets' revision says so.</summary>
    [Fact]
    public void TheStockIsPartOfTheRevision()
    {
        const string Nest = "[nest]\nstock = \"stock.csv\"";
        string one = Read(Nest, [Rack]).Job!.Revision,
            other = Read(Nest, [Rack.Replace("3600", "3601")]).Job!.Revision;
        Assert.NotEqual(one, other);
    }

    [Fact]
    public void ABoardThatServesNoLayerIsNoted()
    {
        ReadResult read = Read("[nest]\nstock = \"stock.csv\"", [Rack + "B2,3600,160,25,clear,\n"]);
        Finding note = Assert.Single(
            read.Findings,
            f => f.Where.StartsWith("stock.csv", StringComparison.Ordinal)
        );
        Assert.Equal(Severity.Note, note.Severity);
        Assert.Contains("B2: 25 mm thick serves no layer", note.Message);
    }

    [Fact]
    public void AFileThatIsNotThereIsNamed()
    {
        using var folder = new PlankFit.Tests.Support.TempFolder();
        File.WriteAllText(folder.File("job.toml"), Job("[nest]\nstock = \"rack.csv\""));
        File.WriteAllText(folder.File("offsets.csv"), Texts.Offsets);
        ReadResult read = JobReader.Read(folder.File("job.toml"));
        Finding fault = Assert.Single(read.Findings, f => f.Where == "rack.csv");
        Assert.Contains("named in [nest]", fault.Message);
        Assert.Null(read.Job);
    }

    private static ReadResult Read(string nest, ImmutableArray<string> stock) =>
        JobReader.Read(Job(nest), "job.toml", Texts.Offsets, "offsets.csv", stockTexts: stock);

    private static string Job(string nest) =>
        Texts.Job.Replace("\"inner\"", "\"outer\"") + "\n" + nest;
}
