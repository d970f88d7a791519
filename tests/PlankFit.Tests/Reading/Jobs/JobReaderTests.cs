using System.Security.Cryptography;
using System.Text;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Jobs;

public sealed class JobReaderTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("plankfit-reading").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void DefaultsAreThoseOfTheManual()
    {
        Job job = Texts.Sound();
        Assert.Equal("Test punt", job.Name);
        Assert.Equal(LengthUnit.Millimetre, job.Units);
        Assert.Equal(KeelSide.Plumb, job.Hull.KeelSide);
        Assert.Equal(OffsetsAreTo.Outside, job.Hull.OffsetsAreTo);
        Assert.Equal(
            PlankLayer.Of("inner", 9, 150, Heads.Aft, 45, null, Hold.Width, 7.5, 0.5, null),
            Assert.Single(job.Layers)
        );
        Assert.Equal(EndRules.Default, job.Ends);
        Assert.Equal(BendLimits.Default, job.Limits);
        Assert.Equal(OutputSpec.Default, job.Output);
    }

    [Fact]
    public void EverythingThatTheManualNamesIsRead()
    {
        Job job = Texts.Sound(
            """
            [job]
            name = 'All of it'
            units = "ft-in-8"
            [hull]
            offsets = "offsets.csv"
            positions = "aft"
            offsets-are-to = "inside"
            keel = "keel"
            chine = "chine"
            between = ["bilge"]
            keel-side = "square to plank"
            [[layer]]
            name = "inner"
            kind = "planks"
            thickness = "3/8 in"
            width = "0-6-0"
            heads = "forward"
            angle = 47.5
            master = "5-4-6+"
            hold = "angle"
            angle-drift = 5
            gap = "1/32 in"
            stagger = 0.5
            [[layer]]
            kind = "cloth"
            thickness = "1 mm"
            [ends]
            keel = { cut = "left long", by = "1 in" }
            transom.cut = "fit"
            stem = { cut = "fit", allowance = "15 mm" }
            [[ends.zone]]
            from = 0
            to = "3-0-0"
            chine = { cut = "fit" }
            [[ends.zone]]
            from = "3-0-0"
            to = "4-0-0"
            keel = { cut = "left long" }
            [limits]
            edge-strain-percent = 0.2
            twist-shear-percent = 0.3
            [[limits.bend]]
            least-radius-over-thickness = 150
            verdict = "cold"
            source = "our own trials"
            [[limits.bend]]
            least-radius-over-thickness = 0
            verdict = "steam"
            [output]
            dxf-units = "in"
            paper = "Letter"
            """,
            """
            line,measure,0,1,2,3
            ,position,0-0-0,2-0-0,4-0-0,8-0-0
            keel,height,-0-3-4,0-0-0,0-0-4,0-1-0
            keel,half-breadth,0-1-0,0-1-0,0-1-0,0-1-0+
            bilge,height,1-0-0,0-8-0,0-6-0,0-5-0
            bilge,half-breadth,0-8-0,1-0-0,1-6-0,2-0-0
            chine,position,0-0-0,2-0-0,4-0-0,8-2-0
            chine,height,2-0-0,1-6-0,1-0-0,0-10-0
            chine,half-breadth,1-0-0,2-0-0,3-0-0,3-6-0
            """
        );
        Assert.Equal(LengthUnit.FeetInchesEighths, job.WrittenIn);
        Assert.Equal(LengthUnit.Foot, job.Units);
        Assert.Equal(
            ("keel", "chine", OffsetsAreTo.Inside, KeelSide.SquareToPlank),
            (job.Hull.Panel.Lower, job.Hull.Panel.Upper, job.Hull.OffsetsAreTo, job.Hull.KeelSide)
        );
        Assert.Equal(["bilge"], job.Hull.Panel.Between);
        Assert.Equal(
            [
                PlankLayer.Of(
                    "inner",
                    9.525,
                    152.4,
                    Heads.Forward,
                    47.5,
                    1646.2375,
                    Hold.Angle,
                    5,
                    0.79375,
                    0.5
                ),
                new ClothLayerSpec("layer 2", 1),
            ],
            job.Layers
        );
        Assert.Equal(EndRule.LeftLong(25.4), job.Ends.Lower);
        Assert.Equal(EndRule.LeftLong(25), job.Ends.Upper);
        Assert.Equal(EndRule.Fit, job.Ends.Transom);
        Assert.Equal(new EndRule(EndCut.Fit, 0, 15), job.Ends.Stem);
        Assert.Equal(
            [
                new EndZone(0, 914.4, null, EndRule.Fit, null, null),
                new EndZone(914.4, 1219.2, EndRule.LeftLong(25), null, null, null),
            ],
            job.Ends.Zones
        );
        Assert.Equal((0.2, 0.3), (job.Limits.EdgeStrainPercent, job.Limits.TwistShearPercent));
        Assert.Equal(
            [
                new BendLimit(150, "cold", "our own trials"),
                new BendLimit(0, "steam", "this job") { Way = BendWay.SoakOrSteam },
            ],
            job.Limits.Bend
        );
        Assert.Equal(new OutputSpec(DxfUnits.Inches, PaperSize.Letter), job.Output);
        Assert.Equal(-88.9, job.Offsets.Find("keel")!.HeightsMm[0]);
        Assert.Equal(2489.2, job.Offsets.Find("chine")!.PositionsMm[3]);
    }

    [Fact]
    public void TheRevisionIsTheHashOfBothFiles()
    {
        string path = Write(Texts.Job, Texts.Offsets);
        Job job = JobReader.Read(path).Job!;
        byte[] both = Encoding.UTF8.GetBytes(Texts.Job + Texts.Offsets);
        Assert.Equal(
            Convert.ToHexString(SHA256.HashData(both))[..6].ToLowerInvariant(),
            job.Revision
        );
        File.AppendAllText(Path.Combine(folder, "offsets.csv"), "\n# moved nothing\n");
        Assert.NotEqual(job.Revision, JobReader.Read(path).Job!.Revision);
    }

    [Fact]
    public void AByteOrderMarkAndCarriageReturnsChangeNothingButTheRevision()
    {
        Job plain = JobReader.Read(Write(Texts.Job, Texts.Offsets)).Job!;
        string Crlf(string text) => "\uFEFF" + text.ReplaceLineEndings("\r\n");
        ReadResult result = JobReader.Read(Write(Crlf(Texts.Job), Crlf(Texts.Offsets)));
        Assert.Empty(result.Findings);
        Assert.Equal(plain.Layers, result.Job!.Layers);
        Assert.Equal(plain.Offsets.Stations, result.Job.Offsets.Stations);
        Assert.Equal(
            plain.Offsets.Lines.SelectMany(l => l.HeightsMm),
            result.Job.Offsets.Lines.SelectMany(l => l.HeightsMm)
        );
    }

    [Fact]
    public void AJobThatIsNotThere() =>
        Texts.Finds(
            JobReader.Read(Path.Combine(folder, "jobb.toml")),
            Severity.Error,
            "jobb.toml",
            "no such file",
            folder
        );

    [Fact]
    public void AFolderInPlaceOfAJob() =>
        Texts.Finds(
            JobReader.Read(folder),
            Severity.Error,
            Path.GetFileName(folder),
            "is a folder"
        );

    /// <summary>Who names the folder of a job is told the file to name.</summary>
    [Fact]
    public void AFolderWithAJobInItNamesTheJob()
    {
        string path = Write(Texts.Job, Texts.Offsets);
        Texts.Finds(
            JobReader.Read(folder),
            Severity.Error,
            Path.GetFileName(folder),
            $"name the file in it, {path}"
        );
    }

    /// <summary>Where the folder has no job but folders of it have, those are named; where nothing has one, that.</summary>
    [Fact]
    public void AFolderOfHullsNamesTheirJobs()
    {
        string hull = Directory.CreateDirectory(Path.Combine(folder, "punt")).FullName;
        Texts.Finds(
            JobReader.Read(folder),
            Severity.Error,
            Path.GetFileName(folder),
            "neither it nor a folder in it has a job.toml"
        );
        File.WriteAllText(Path.Combine(hull, "job.toml"), Texts.Job);
        Texts.Finds(
            JobReader.Read(folder),
            Severity.Error,
            Path.GetFileName(folder),
            $"name the file in it, one of {Path.Combine(hull, "job.toml")}"
        );
    }

    [Fact]
    public void ATableThatIsNotThereIsNamedWithTheLineThatNamesIt()
    {
        string path = Write(Texts.Job.Replace("\"offsets.csv\"", "\"ofsets.csv\""), Texts.Offsets);
        Texts.Finds(
            JobReader.Read(path),
            Severity.Error,
            "ofsets.csv",
            "no such file",
            "job.toml, line 6, column 11"
        );
    }

    [Fact]
    public void AFolderInPlaceOfATable()
    {
        string path = Write(Texts.Job.Replace("\"offsets.csv\"", "\".\""), Texts.Offsets);
        Texts.Finds(JobReader.Read(path), Severity.Error, ".", "is a folder");
    }

    [Fact]
    public void BytesThatAreNotUtf8AreNamedWithTheirLine()
    {
        string path = Write(Texts.Job, Texts.Offsets);
        byte[] latin = Encoding.Latin1.GetBytes(
            Texts.Offsets.Replace("chine,height", "kîel,height")
        );
        File.WriteAllBytes(Path.Combine(folder, "offsets.csv"), latin);
        Texts.Finds(JobReader.Read(path), Severity.Error, "offsets.csv, line 6", "UTF-8");
        File.WriteAllBytes(path, Encoding.Unicode.GetPreamble());
        Texts.Finds(JobReader.Read(path), Severity.Error, "job.toml", "UTF-16");
    }

    [Fact]
    public void AFileThatIsFarTooBigIsNotReadWhole()
    {
        string path = Write(Texts.Job, new string(' ', TextFile.MostBytes + 1));
        Texts.Finds(JobReader.Read(path), Severity.Error, "offsets.csv", "4 MB");
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0")]
    public void APathThatIsNoneIsAFinding(string path) =>
        Assert.Equal(Severity.Error, Assert.Single(JobReader.Read(path).Findings).Severity);

    private string Write(string job, string offsets)
    {
        File.WriteAllText(Path.Combine(folder, "offsets.csv"), offsets);
        string path = Path.Combine(folder, "job.toml");
        File.WriteAllText(path, job);
        return path;
    }
}
