using PlankFit.Planking;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PlankFit.Reading;

/// <summary>A TOML text as tables with places.</summary>
/// <param name="Whole">False where lines could not be read, so that what seems missing may only be unread.</param>
internal sealed record TomlText(TomlTable Root, bool Whole)
{
    /// <summary>Never throws for what the text holds; faults of syntax go to the findings.</summary>
    public static TomlText Read(string text, string file, List<Finding> findings)
    {
        try
        {
            DocumentSyntax document = SyntaxParser.Parse(text, file, validate: false);
            findings.AddRange(TomlSyntaxFaults.Of(document.Diagnostics, text, file));
            TomlTable root = new TomlTreeBuilder(file, findings).Build(document);
            return new(root, !document.HasErrors);
        }
        catch (TomlException e)
        {
            // The parser gives up only on brackets nested beyond its depth of 64, which no job needs.
            Place at = new(file, Math.Max(1, e.Line ?? 1), Math.Max(1, e.Column ?? 1));
            findings.Add(
                new(Severity.Error, at.ToString(), "brackets are nested too deep to be a job")
            );
            return new(new TomlTable(new(file, 1, 1)), Whole: false);
        }
    }
}
