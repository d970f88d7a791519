using System.Text.RegularExpressions;
using PlankFit.App.Helping;
using PlankFit.Reading.Help;
using PlankFit.Tests.Architecture;

namespace PlankFit.Tests.Reading.Keys;

/// <summary>The manual's jobs have every key of the job file, each in its table, and no other; README's have no other.</summary>
public sealed partial class ReadmeKeysTests
{
    [Fact]
    public void EveryKeyStandsInTheManualAndNoOther()
    {
        HashSet<string> shown = [.. Shown(Manual())];
        Assert.Equal("", string.Join(", ", shown.Except(KeyPath.All.Select(k => k.Path))));
        Assert.Equal(
            "",
            string.Join(", ", KeyPath.All.Where(k => !Stands(k, shown)).Select(k => k.Path))
        );
    }

    [Fact]
    public void TheReadmeHasNoKeyThatThereIsNot()
    {
        string[] shown = [.. Shown(File.ReadAllLines(Readme()))];
        Assert.True(shown.Length > 8);
        Assert.Empty(shown.Except(KeyPath.All.Select(k => k.Path)));
    }

    [Fact]
    public void AKeyThatIsMissingOrUnknownIsFound()
    {
        string[] lines = [.. Manual().Select(l => l.Replace("    kerf  =", "    curve ="))];
        HashSet<string> shown = [.. Shown(lines)];
        Assert.Contains("nest.curve", shown);
        Assert.DoesNotContain("nest.kerf", shown);
    }

    /// <summary>What several tables have alike is shown in one of them.</summary>
    private static bool Stands(KeyPath key, HashSet<string> shown) =>
        KeyPath.All.Any(k =>
            k.Key.Name == key.Key.Name && k.Key.What == key.Key.What && shown.Contains(k.Path)
        );

    /// <summary>The keys in the blocks of TOML, each with its tables.</summary>
    private static IEnumerable<string> Shown(string[] lines)
    {
        string? table = null;
        foreach (string line in lines)
        {
            if (!line.StartsWith("    ", StringComparison.Ordinal))
            {
                table = line.Length == 0 ? table : null;
                continue;
            }

            if (Head().Match(line) is { Success: true } head)
            {
                table = head.Groups[1].Value;
                string path = "";
                foreach (string part in table.Split('.'))
                {
                    path += (path.Length > 0 ? "." : "") + part;
                    yield return path;
                }
            }
            else if (table is not null)
            {
                foreach (string key in OfLine(line))
                {
                    yield return $"{table}.{key}";
                }
            }
        }
    }

    /// <summary>A remark may show another form of the line's key, in braces, and keys besides.</summary>
    private static IEnumerable<string> OfLine(string line)
    {
        string[] parts = line.Split('#', 2);
        string? own = null;
        foreach (Match key in Key().Matches(parts[0]))
        {
            own = key.Groups[1].Value;
            foreach (
                string inner in Key().Matches(key.Groups[2].Value).Select(m => m.Groups[1].Value)
            )
            {
                yield return $"{own}.{inner}";
            }

            yield return own;
        }

        string remark = parts.ElementAtOrDefault(1) ?? "";
        foreach (Match braces in Braces().Matches(remark))
        {
            string of = braces.Groups[1] is { Success: true } named ? named.Value : own!;
            foreach (Match inner in Key().Matches(braces.Groups[2].Value))
            {
                yield return $"{of}.{inner.Groups[1].Value}";
            }

            yield return of;
        }

        foreach (Match key in Key().Matches(Braces().Replace(remark, "")))
        {
            yield return key.Groups[1].Value;
        }
    }

    private static string[] Manual() =>
        [.. Topic.All.SelectMany(t => t.Text.Split('\n').Append(""))];

    private static string Readme() => Path.Combine(HouseRules.Root(), "README.md");

    [GeneratedRegex(@"^ {4}\[+([a-z][a-z.-]*)\]+ *(#.*)?$")]
    private static partial Regex Head();

    [GeneratedRegex(
        @"(?<![\w-])([a-z][a-z-]*) *= *(\[?\{[^}]*\}(?:, \{[^}]*\})*|""[^""]*""|\[[^\]]*\]|[^\s,;#}]+)"
    )]
    private static partial Regex Key();

    [GeneratedRegex(@"(?:([a-z][a-z-]*) *= *\[?)?(\{[^}]*\})")]
    private static partial Regex Braces();
}
