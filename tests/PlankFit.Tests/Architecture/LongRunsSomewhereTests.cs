using System.Text.RegularExpressions;

namespace PlankFit.Tests.Architecture;

/// <summary>What a test leaves to long runs is run by CI: its class is among those that `.ci/run` names; what it leaves to planted faults as well may be named by their list instead.</summary>
public sealed partial class LongRunsSomewhereTests
{
    private static readonly HashSet<string> Long =
    [
        .. Classes()
            .Match(File.ReadAllText(Path.Combine(HouseRules.Root(), ".ci", "run")))
            .Groups[1]
            .Value.Split(' ')
            .Select(c => c + "Tests"),
    ];

    private static readonly HashSet<string> Planted =
    [
        .. File.ReadLines(
                Path.Combine(HouseRules.Root(), "tests", "PlankFit.Mutants", "mutants.txt")
            )
            .Select(l => Judges().Match(l))
            .Where(m => m.Success)
            .SelectMany(m => m.Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(name => name.Split('.')[0]),
    ];

    private static readonly (string Class, string Text)[] Sources =
    [
        .. Directory
            .EnumerateFiles(
                Path.Combine(HouseRules.Root(), "tests", "PlankFit.Tests"),
                "*Tests.cs",
                SearchOption.AllDirectories
            )
            .Select(f => (Path.GetFileNameWithoutExtension(f), File.ReadAllText(f)))
            .Where(s => s.Item1 != nameof(LongRunsSomewhereTests)),
    ];

    [Fact]
    public void EveryClassThatDoesMoreWhereAskedIsAsked()
    {
        string[] asking = [.. Sources.Where(s => Asking().IsMatch(s.Text)).Select(s => s.Class)];
        Assert.True(asking.Length > 50, $"{asking.Length} classes ask");
        Assert.Empty(asking.Except(Long));
    }

    [Fact]
    public void EveryClassThatDoesMoreForPlantedFaultsIsAskedByOneOfThem()
    {
        string[] more = [.. Sources.Where(s => More().IsMatch(s.Text)).Select(s => s.Class)];
        Assert.NotEmpty(more);
        Assert.Empty(more.Except(Long).Except(Planted));
    }

    [Fact]
    public void EveryClassThatIsAskedIsThere() =>
        Assert.Empty(Long.Except(Sources.Select(s => s.Class)));

    [GeneratedRegex(@"^for class in (.*); do$", RegexOptions.Multiline)]
    private static partial Regex Classes();

    [GeneratedRegex(@"^ *(?:all|tests) ((?:\w+Tests(?:\.\w+)? ?)+)$")]
    private static partial Regex Judges();

    [GeneratedRegex(
        @"LongRuns\.Asked|LongRuns\.FirstOf|LongRuns\.Of\(0,|[^.]Long\.IsAsked|""PLANKFIT_LONG"""
    )]
    private static partial Regex Asking();

    [GeneratedRegex(@"LongRuns\.More")]
    private static partial Regex More();
}
