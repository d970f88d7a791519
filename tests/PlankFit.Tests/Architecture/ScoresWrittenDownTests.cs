using System.Globalization;
using System.Text.RegularExpressions;

namespace PlankFit.Tests.Architecture;

/// <summary>What the tests see of planted faults is written down as the list of them has it: each part's row, and at least what CI asks of each.</summary>
public sealed partial class ScoresWrittenDownTests
{
    private const double LeastPercent = 85;

    private sealed record Part(string Name, int Planted, int Lives, int Equal)
    {
        public int Counted => Planted - Equal;

        public double Percent => 100.0 * (Counted - Lives) / Counted;
    }

    private static string Text(params string[] path) =>
        File.ReadAllText(Path.Combine([HouseRules.Root(), .. path]));

    private static Part[] Parts =>
        [
            .. Text("tests", "PlankFit.Mutants", "mutants.txt")
                .Split("\narea ")
                .Skip(1)
                .Select(text => new Part(
                    text.Split('\n')[0].Trim(),
                    Planted().Count(text),
                    Lives().Count(text),
                    Equal().Count(text)
                )),
        ];

    [Fact]
    public void EveryPartHasItsRow()
    {
        Part[] parts = Parts;
        string told = Text("DEVELOPERS.md");
        Assert.All(
            parts,
            p =>
                Assert.Contains(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"\n| {p.Name} | {p.Counted} | {p.Counted - p.Lives} | {p.Lives} | {p.Equal} | {p.Percent:0} % |\n"
                    ),
                    told,
                    StringComparison.Ordinal
                )
        );
        Assert.Contains(
            $"mutants.txt` has {parts.Sum(p => p.Planted)}:",
            told,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void EnoughAreSeenInEveryPart()
    {
        Part[] parts = Parts;
        Assert.All(parts, p => Assert.InRange(p.Percent, LeastPercent, 100));
        Assert.Subset(
            parts.Select(p => p.Name).ToHashSet(),
            new HashSet<string> { "Geometry", "Keel", "Joints", "Fastenings", "AsBuilt" }
        );
        Assert.True(parts.Sum(p => p.Counted) >= 150);
    }

    /// <summary>A reason stands beside each that lives, and beside each that nobody could see.</summary>
    [Fact]
    public void WhatLivesIsExplained()
    {
        string list = Text("tests", "PlankFit.Mutants", "mutants.txt");
        string[] reasons =
        [
            .. list[list.IndexOf("\narea ", StringComparison.Ordinal)..]
                .Split('\n')
                .Where(l =>
                    l.StartsWith("  lives", StringComparison.Ordinal)
                    || l.StartsWith("  equal", StringComparison.Ordinal)
                ),
        ];
        Assert.True(reasons.Length > 20);
        Assert.All(reasons, r => Assert.True(r.Length > 30, r));
    }

    [GeneratedRegex("^in ", RegexOptions.Multiline)]
    private static partial Regex Planted();

    [GeneratedRegex("^  lives ", RegexOptions.Multiline)]
    private static partial Regex Lives();

    [GeneratedRegex("^  equal ", RegexOptions.Multiline)]
    private static partial Regex Equal();
}
