using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Text;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>A file named in another's place is told once, as what it is, with what to do; and no file that is what it was named as is taken for another.</summary>
public sealed class MistakenFileTests
{
    private const string Offsets = "offsets.csv";
    private const string Boards =
        "# Rack.\nboard,count,length,width,thickness\nB-01,1,4600,138,8\n";
    private const string Measured = "what,where,side,value\ngirth,3,starboard,293\n";
    private const string Progress = "id,done-at,batch,temperature\nS1-01,day 1 9:00,1,18\n";

    public static TheoryData<string, string, string> NotAJob =>
        new()
        {
            { Texts.Offsets, "a table of offsets", "`plankfit help hull`" },
            { "# of ours\n\n" + Texts.Offsets, "a table of offsets", "offsets = \"it.csv\"" },
            { Texts.Offsets.Replace(',', ';'), "a table of offsets", "README.md" },
            { Texts.Offsets.Replace(',', '\t'), "a table of offsets", "start the page" },
            { Boards, "a list of boards", "stock = \"it.csv\" under [nest]" },
            { Measured, "a list of what was measured", "under [as-built]" },
            { Progress, "a list of what is glued down", "name that job" },
            {
                "{\"schema\":\"plankfit-cut/2\"}",
                "a record that the program writes",
                "name the job"
            },
            { "Station,0,1,2\nKeel,30,20,10\n", "a table of some kind", "`plankfit help hull`" },
        };

    [Theory]
    [MemberData(nameof(NotAJob))]
    public void OneSentenceInPlaceOfAFaultALine(string text, string what, string toDo)
    {
        Finding only = Assert.Single(
            JobReader.Read(text, "it.csv", Texts.Offsets, Offsets).Findings
        );
        Assert.Equal(Severity.Error, only.Severity);
        Assert.StartsWith(
            $"this looks like {what}, not a job: ",
            only.Message,
            StringComparison.Ordinal
        );
        Assert.Contains(toDo, only.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData(" \n\n", "the file is empty")]
    public void AnEmptyJobSaysHowToStart(string text, string told)
    {
        Finding only = Assert.Single(JobReader.Read(text, "job.toml", "", Offsets).Findings);
        Assert.Contains(told, only.Message, StringComparison.Ordinal);
        Assert.Contains("`plankfit help hull`", only.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("job", "a job")]
    [InlineData(Boards, "a list of boards")]
    [InlineData(Measured, "a list of what was measured")]
    public void WhatIsNamedAsTheTableAndIsNone(string text, string what)
    {
        ReadResult read = JobReader.Read(
            Texts.Job,
            "job.toml",
            text == "job" ? Texts.Job : text,
            Offsets
        );
        Finding only = Assert.Single(read.Findings);
        Assert.StartsWith(
            $"this looks like {what}, not a table of offsets: ",
            only.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("line,measure", only.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATableNamedAsBoardsOrAsWhatWasMeasured()
    {
        Assert.StartsWith(
            "this looks like a table of offsets, not a list of boards: ",
            Assert
                .Single(
                    StockText
                        .Read(
                            Texts.Offsets,
                            "stock.csv",
                            LengthUnit.Millimetre,
                            PlankFit.Planking.Stock.NestSpec.Usual,
                            true,
                            new Dictionary<string, string>()
                        )
                        .Findings
                )
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "this looks like a job, not a list of what was measured: ",
            Assert
                .Single(
                    MeasuredText
                        .Read(
                            Texts.Job,
                            "measured.csv",
                            (LengthUnit.Millimetre, LengthUnit.Millimetre),
                            Texts.Sound().Offsets,
                            [],
                            1
                        )
                        .Findings
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>A list from a spreadsheet is saved as CSV first.</summary>
    [Fact]
    public void AWorkbookIsSaidToBeOne() =>
        Assert.Contains(
            "as CSV",
            TextFile.Decode([.. "PK\u0003\u0004"u8, 0xFF, 0], "table.xlsx").Fault!.Message,
            StringComparison.Ordinal
        );

    /// <summary>Every file of every demo is what it is named as; the heads are those that the readers ask for.</summary>
    [Fact]
    public void NoFileIsTakenForAnother()
    {
        (string Name, FileForm Form)[] forms =
        [
            ("job.toml", FileForm.Job),
            ("offsets.csv", FileForm.Offsets),
            ("stock.csv", FileForm.Boards),
            ("yard.csv", FileForm.Boards),
            ("measured.csv", FileForm.Measured),
        ];
        string[] files =
        [
            .. new[] { "hulls", "tests/hulls" }.SelectMany(f =>
                Directory.EnumerateFiles(
                    Path.Combine(Architecture.HouseRules.Root(), f),
                    "*.*",
                    SearchOption.AllDirectories
                )
            ),
        ];
        int seen = 0;
        foreach ((string name, FileForm form) in forms)
        {
            foreach (string file in files.Where(f => Path.GetFileName(f) == name))
            {
                Assert.Equal((file, form), (file, FileLook.Of(File.ReadAllText(file))));
                seen++;
            }
        }

        Assert.True(seen > 14, $"{seen}");
        Assert.Equal(FileForm.Measured, FileLook.Of(string.Join(',', MeasuredText.Columns)));
        Assert.Equal(FileForm.Boards, FileLook.Of(string.Join(';', StockText.Columns)));
    }
}
