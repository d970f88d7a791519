using PlankFit.App.Helping;
using PlankFit.App.Running;
using PlankFit.Reading.Help;
using PlankFit.Reading.Panels;

namespace PlankFit.Tests.Reading.Keys;

/// <summary>What `plankfit help` tells.</summary>
public class KeyHelpTests
{
    [Fact]
    public void AllTablesAreToldWithTheirKeys()
    {
        string told = Told("keys");
        Assert.All(
            KeyPath.All,
            k =>
                Assert.Matches(
                    k.IsHeaded
                        ? $"(?m)^{System.Text.RegularExpressions.Regex.Escape(k.Key.Line)}"
                        : $"(?m)^ +{k.Key.Name} ",
                    told
                )
        );
        Assert.All(told.Split('\n'), line => Assert.True(line.Length <= 110, line));
    }

    [Theory]
    [InlineData("layer")]
    [InlineData("[[layer]]")]
    public void OneTableIsToldByItsNameOrItsHead(string name)
    {
        string told = Told(name);
        Assert.StartsWith("[[layer]]", told);
        Assert.All(LayerKeys.Table.Keys, k => Assert.Contains($"  {k.Name} ", told));
        Assert.DoesNotContain("offsets-are-to", told);
    }

    [Theory]
    [InlineData(
        "layer.width",
        "a length",
        "3/8 in",
        "must be given",
        "more than 0",
        "less than 20 mm, more than 600 mm",
        "no source",
        "    [[layer]]\n    width = 150"
    )]
    [InlineData(
        "nest.kerf",
        "3 mm",
        "at least 0",
        "a proposal, no source",
        "    [nest]\n    kerf = 3"
    )]
    [InlineData("layer.heads", "\"aft\" or \"forward\"", "must be given")]
    [InlineData("layer.angle", "degrees", "more than 0 and less than 180")]
    [InlineData("ends.zone.keel.by", "25 mm", "[[ends.zone]]\n    keel = { by = 25 }")]
    [InlineData("setting-up.cloth-radius", "8 mm", "common practice, no source")]
    [InlineData("timber.species.modulus", "MPa", "GPa", "Mpsi")]
    [InlineData("keel-layer.half-width", "\"mitre\"", "keel-layer.half-width.forward")]
    [InlineData("keel.half-width-tolerance", "0.8 mm", "1/32 in")]
    [InlineData("fastenings.spacing", "6 thicknesses", "Whitfield", "at least 10 mm")]
    public void OneKeyIsToldInFull(string name, params string[] words)
    {
        string told = Told(name);
        Assert.StartsWith(name, told);
        Assert.All(words, w => Assert.Contains(w, told.Replace("\n               ", " ")));
    }

    [Fact]
    public void AKeyByItselfIsToldForEveryTableThatHasIt()
    {
        string told = Told("kerf");
        Assert.StartsWith("nest.kerf\n", told);
        Assert.Contains("joints.layer.grid\n", Told("grid"));
    }

    [Theory]
    [InlineData("laier", "\"layer\"")]
    [InlineData("layer.widht", "\"layer.width\"")]
    [InlineData("kerff", "\"nest.kerf\"")]
    public void ANameThatIsNotKnownIsAMistakeWithTheNearestNames(string name, string near)
    {
        RunReport report = HelpRun.Run(name);
        Assert.Equal(ExitCode.WrongUsage, report.Exit);
        Assert.Null(report.Result);
        Assert.Contains(near, Assert.Single(report.Lines));
    }

    private static string Told(string? name)
    {
        RunReport report = HelpRun.Run(name);
        Assert.Equal(ExitCode.Done, report.Exit);
        return report.Result!;
    }
}
