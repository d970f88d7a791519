using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>One thing wrong at a time: it is found, at its line and column, and shown as written.</summary>
public class JobFaultTests
{
    [Theory]
    [InlineData(
        "units = \"mm\"",
        "units = \"mmm\"",
        3,
        9,
        "\"mmm\"",
        "did you mean \"mm\"",
        "ft-in-8"
    )]
    [InlineData("units = \"mm\"", "units = 3", 3, 9, "3", "text in quotes")]
    [InlineData("units = \"mm\"", "", 1, 1, "\"units\"")]
    [InlineData("name  = \"Test punt\"", "nam = \"x\"", 2, 1, "\"nam\"", "did you mean \"name\"")]
    [InlineData("name  = \"Test punt\"", "name = \"\"", 2, 8, "empty")]
    [InlineData("\"outside\"", "\"outsid\"", 7, 18, "\"outsid\"", "did you mean \"outside\"")]
    [InlineData("offsets-are-to = \"outside\"", "", 5, 1, "offsets-are-to", "outside")]
    [InlineData(
        "keel  = \"keel edge\"",
        "keel = \"keel edgee\"",
        8,
        8,
        "\"keel edgee\"",
        "did you mean \"keel edge\""
    )]
    [InlineData("keel  = \"keel edge\"", "keel = \"chine\"", 9, 9, "named twice")]
    [InlineData("thickness = 9", "thickness = -9", 13, 13, "thickness = -9", "greater than 0")]
    [InlineData("thickness = 9", "thickness = 0", 13, 13, "greater than 0")]
    [InlineData("thickness = 9", "thickness = nan", 13, 13, "nan", "finite")]
    [InlineData("thickness = 9", "thickness = 1e999", 13, 13, "1e999")]
    [InlineData("thickness = 9", "thickness = \"9,5 mm\"", 13, 13, "\"9,5 mm\"", "comma")]
    [InlineData("thickness = 9", "thickness = \"9 yd\"", 13, 13, "\"9 yd\"", "mm, cm, m, in, ft")]
    [InlineData("thickness = 9", "thickness = true", 13, 13, "true", "not a length")]
    [InlineData("thickness = 9", "thickness = 1979-05-27", 13, 13, "1979-05-27", "not a length")]
    [InlineData("thickness = 9", "thickness = [9]", 13, 13, "a list", "not a length")]
    [InlineData(
        "thickness = 9",
        "thicknes = 9",
        13,
        1,
        "\"thicknes\"",
        "did you mean \"thickness\""
    )]
    [InlineData("thickness = 9", "thickness = 9 mm", 13, 15, "thickness = 9 mm", "quotes")]
    [InlineData("thickness = 9", "thickness =", 13, 12, "no value")]
    [InlineData("thickness = 9", "thickness = 09", 13, 13, "zero")]
    [InlineData("thickness = 9", "thickness = 9\nthickness = 10", 14, 1, "given twice", "line 13")]
    [InlineData("width = 150", "width = \"wide\"", 14, 9, "\"wide\"")]
    [InlineData("heads = \"aft\"", "heads = \"after\"", 15, 9, "\"after\"", "\"forward\"")]
    [InlineData("angle = 45", "angle = 0", 16, 9, "angle = 0", "less than 180")]
    [InlineData("angle = 45", "angle = 180", 16, 9, "less than 180")]
    [InlineData("angle = 45", "angle = \"45\"", 16, 9, "\"45\"", "plain number")]
    [InlineData(
        "angle = 45",
        "angle = 45\nangle-drift = 90",
        17,
        15,
        "angle-drift = 90",
        "less than 90"
    )]
    [InlineData("angle = 45", "angle = 45\ngap = -1", 17, 7, "negative")]
    [InlineData("angle = 45", "angle = 45\nstagger = 1", 17, 11, "less than 1")]
    [InlineData("angle = 45", "angle = 45\nhold = \"with\"", 17, 8, "\"width\"")]
    [InlineData("angle = 45", "angle = 45\nmaster = \"5-4-8\"", 17, 10, "8 eighths")]
    [InlineData(
        "angle = 45",
        "angle = 45\n[[layer]]\nname = \"inner\"\nkind = \"cloth\"\nthickness = 1",
        18,
        8,
        "this name"
    )]
    [InlineData(
        "angle = 45",
        "angle = 45\n[[layer]]\nkind = \"cloth\"\nthickness = 1\nwidth = 9",
        20,
        9,
        "belongs to planks"
    )]
    [InlineData(
        "angle = 45",
        "angle = 45\n[[layer]]\nkind = \"clot\"\nthickness = 1",
        18,
        8,
        "\"cloth\""
    )]
    [InlineData("[[layer]]", "[layer]", 11, 1, "[[layer]]", "double brackets")]
    [InlineData("[[layer]]", "[[layers]]", 11, 1, "\"layers\"", "did you mean \"layer\"")]
    [InlineData("[[layer]]", "[hull]\n[[layer]]", 11, 1, "[hull] is given twice", "line 5")]
    [InlineData("[[layer]]", "[[rudder]]\n[[layer]]", 11, 1, "\"rudder\"", "not known")]
    [InlineData("[[layer]]", "[job.name]\n[[layer]]", 11, 1, "line 2")]
    public void InTheJob(string sound, string spoiled, int line, int column, params string[] words)
    {
        string text = Texts.Job.ReplaceLineEndings("\n");
        Assert.Contains(sound, text);
        Texts.Finds(
            Texts.Read(text.Replace(sound, spoiled)),
            Severity.Error,
            $"job.toml, line {line}, column {column}",
            words
        );
    }

    [Theory]
    [InlineData("[ends]\nkeel = \"fit\"", 18, 8, "cut = \"fit\"")]
    [InlineData("[ends]\nkeel = { cut = \"fitt\" }", 18, 16, "\"fitt\"", "\"left long\"")]
    [InlineData("[ends]\nkeel = { by = 3 }", 18, 8, "no \"cut\"")]
    [InlineData("[ends]\nkeel = { cut = \"fit\", by = 3 }", 18, 28, "allowance")]
    [InlineData("[ends]\nchine = { cut = \"left long\", by = 0 }", 18, 35, "greater than 0")]
    [InlineData("[ends]\nchine = { cut = \"left long\", allowance = 3 }", 18, 42, "\"by\"")]
    [InlineData("[ends]\nchine = { cut = \"fit\", allowance = -3 }", 18, 36, "negative")]
    [InlineData("[ends]\ntransom = { cut = \"fit\", alowance = 3 }", 18, 26, "\"allowance\"")]
    [InlineData("[[ends.zone]]\nfrom = 0\nkeel = { cut = \"fit\" }", 17, 1, "no \"to\"")]
    [InlineData("[[ends.zone]]\nfrom = 9\nto = 9\nkeel = { cut = \"fit\" }", 19, 6, "greater than")]
    [InlineData("[[ends.zone]]\nfrom = 0\nto = 9", 17, 1, "says nothing")]
    [InlineData(
        "[[ends.zone]]\nfrom = 0\nto = 900\nkeel = { cut = \"fit\" }\n[[ends.zone]]\nfrom = 899\nto = 1000\nchine = { cut = \"fit\" }",
        21,
        1,
        "overlaps [[ends.zone]] 1"
    )]
    [InlineData("[output]\ndxf-units = \"cm\"", 18, 13, "\"cm\"", "\"mm\" or \"in\"")]
    [InlineData("[output]\npaper = \"A5\"", 18, 9, "\"A5\"", "\"Letter\"")]
    [InlineData("[limits]\nedge-strain-percent = 0", 18, 23, "greater than 0")]
    [InlineData("[limits]\ntwist-shear-percent = \"x\"", 18, 23, "plain number")]
    [InlineData(
        "[[limits.bend]]\nleast-radius-over-thickness = 9\nverdict = \"cold\"",
        18,
        31,
        "last row must have 0"
    )]
    [InlineData(
        "[[limits.bend]]\nleast-radius-over-thickness = 9\nverdict = \"cold\"\n[[limits.bend]]\nleast-radius-over-thickness = 10\nverdict = \"hot\"",
        21,
        31,
        "less than the row before"
    )]
    [InlineData("[[limits.bend]]\nleast-radius-over-thickness = 0", 17, 1, "no \"verdict\"")]
    [InlineData("[limits]\nbend = []", 18, 8, "empty list")]
    public void InWhatMayBeLeftOut(string added, int line, int column, params string[] words) =>
        Texts.Finds(
            Texts.Read(Texts.Job.ReplaceLineEndings("\n") + "\n" + added + "\n"),
            Severity.Error,
            $"job.toml, line {line}, column {column}",
            words
        );

    [Fact]
    public void ABareLengthInEighthsIsAnErrorButNoughtIsNot()
    {
        string job = Texts
            .Job.Replace("\"mm\"", "\"ft-in-8\"")
            .Replace("width = 150", "width = \"0-6-0\"")
            .Replace("thickness = 9", "thickness = 9\nmaster = 0\ngap = 0.0");
        ReadResult result = Texts.Read(job);
        Texts.Finds(result, Severity.Error, "job.toml, line 13, column 13", "bare number");
        Assert.DoesNotContain(result.Findings, f => f.Where.StartsWith("job.toml, line 14"));
        Assert.DoesNotContain(result.Findings, f => f.Where.StartsWith("job.toml, line 15"));
    }

    [Theory]
    [InlineData("thickness = 9", "thickness = 900", 13, 13, "unlikely thickness")]
    [InlineData("thickness = 9", "thickness = 0.5", 13, 13, "unlikely thickness")]
    [InlineData("width = 150", "width = 6", 14, 9, "unlikely width")]
    [InlineData("angle = 45", "angle = 135", 16, 9, "heads")]
    [InlineData("angle = 45", "angle = 45\ngap = 10", 17, 7, "gap")]
    public void WhatIsUnlikelyIsAWarningAndTheJobGoesOn(
        string sound,
        string spoiled,
        int line,
        int column,
        string word
    )
    {
        ReadResult result = Texts.Read(Texts.Job.Replace(sound, spoiled));
        Texts.Finds(result, Severity.Warning, $"job.toml, line {line}, column {column}", word);
        Assert.NotNull(result.Job);
    }

    [Fact]
    public void AllFaultsComeAtOnceInTheOrderOfTheFiles()
    {
        ReadResult result = Texts.Read(
            Texts
                .Job.Replace("\"outside\"", "\"out\"")
                .Replace("width = 150", "widht = 150")
                .Replace("angle = 45", "angle = 200"),
            Texts.Offsets.Replace("735", "abc").Replace("960", "-960")
        );
        Assert.Equal(
            [
                "job.toml, line 7, column 18",
                "job.toml, line 11, column 1", // no width
                "job.toml, line 14, column 1",
                "job.toml, line 16, column 9",
                "offsets.csv, line 6, column 4 (station 1)",
                "offsets.csv, line 7, column 6 (station 3)",
            ],
            result.Findings.Select(f => f.Where)
        );
    }

    [Fact]
    public void ALineThatCannotBeReadDoesNotHideTheFaultsOfOthersNorFeignAny()
    {
        ReadResult result = Texts.Read(
            Texts
                .Job.Replace("thickness = 9", "thickness = 9 mm")
                .Replace("angle = 45", "angle = 200")
        );
        Assert.Equal(
            ["job.toml, line 13, column 15", "job.toml, line 16, column 9"],
            result.Findings.Select(f => f.Where)
        );
        result = Texts.Read(Texts.Job.Replace("[hull]", "[hull"));
        Assert.Equal(["job.toml, line 5, column 6"], result.Findings.Select(f => f.Where));
    }

    [Fact]
    public void ATextThatIsNotClosedIsNamedOnce() =>
        Assert.Equal(
            ["job.toml, line 2, column 19"],
            Texts.Read(Texts.Job.Replace("punt\"", "punt")).Findings.Select(f => f.Where)
        );

    [Theory]
    [InlineData("")]
    [InlineData(" \n\n")]
    public void AnEmptyJob(string text) =>
        Texts.Finds(Texts.Read(text), Severity.Error, "job.toml", "empty");

    [Fact]
    public void AJobOfCommentsSaysWhatIsMissing()
    {
        ReadResult result = Texts.Read("# nothing yet\n");
        Texts.Finds(result, Severity.Error, "job.toml, line 1, column 1", "[job]");
        Texts.Finds(result, Severity.Error, "job.toml, line 1, column 1", "[hull]");
        Texts.Finds(result, Severity.Error, "job.toml, line 1, column 1", "[[layer]]");
    }

    /// <summary>The parser throws on these; the first was found by fuzzing.</summary>
    [Theory]
    [InlineData("a = \"b\\u0")]
    [InlineData("a = \"b\\U0000")]
    [InlineData("w\"\\u0")]
    public void AnEscapeThatTheFileEndsIn(string end) =>
        Assert.Contains(
            Texts.Read(Texts.Job + "\n" + end).Findings,
            f => f.Severity == Severity.Error && f.Where.StartsWith("job.toml, line 17, column ")
        );

    [Fact]
    public void BracketsNestedBeyondReason() =>
        Texts.Finds(
            Texts.Read("a = " + new string('[', 100_000)),
            Severity.Error,
            "job.toml, line 1, column 1",
            "nested"
        );
}
