using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PlankFit.Reading.Toml;

/// <summary>A TOML text as tables with places.</summary>
/// <param name="Whole">False where lines could not be read, so that what seems missing may only be unread.</param>
/// <param name="HeadsWhole">False where the unread lines may have held the head of a table.</param>
internal sealed record TomlText(TomlTable Root, bool Whole, bool HeadsWhole)
{
    /// <summary>Never throws for what the text holds; faults of syntax go to the findings.</summary>
    public static TomlText Read(string text, string file, List<Finding> findings)
    {
        try
        {
            DocumentSyntax document = SyntaxParser.Parse(text, file, validate: false);
            findings.AddRange(TomlSyntaxFaults.Of(document.Diagnostics, text, file));
            TomlTable root = new TomlTreeBuilder(file, findings).Build(document);
            return new(
                root,
                !document.HasErrors,
                !TomlSyntaxFaults.TouchHeads(document.Diagnostics, text)
            );
        }
        catch (TomlException e)
        {
            // The parser gives up only on brackets nested beyond its depth of 64, which no job needs.
            Place at = new(file, Math.Max(1, e.Line ?? 1), Math.Max(1, e.Column ?? 1));
            return GivenUp(at, "brackets are nested too deep to be a job", findings);
        }
        catch (ArgumentException)
        {
            // Tomlyn 2.10.2 throws on a \u escape that the file ends in; found by fuzzing.
            int escape = Math.Max(
                text.LastIndexOf("\\u", StringComparison.Ordinal),
                text.LastIndexOf("\\U", StringComparison.Ordinal)
            );
            ReadOnlySpan<char> before = text.AsSpan(0, Math.Max(0, escape));
            Place at = new(
                file,
                1 + before.Count('\n'),
                1 + before.Length - (before.LastIndexOf('\n') + 1)
            );
            return GivenUp(
                at,
                "a \\u in a text in quotes is not finished: it takes four hexadecimal digits (a lone backslash is written twice)",
                findings
            );
        }
    }

    private static TomlText GivenUp(Place at, string why, List<Finding> findings)
    {
        findings.Add(new(Severity.Error, at.ToString(), why));
        return new(new TomlTable(at), Whole: false, HeadsWhole: false);
    }
}
