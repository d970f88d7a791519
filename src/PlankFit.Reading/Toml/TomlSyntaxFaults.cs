using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;
using Tomlyn.Syntax;

namespace PlankFit.Reading.Toml;

/// <summary>The parser's diagnostics, one a line of the file, in words for people who do not write parsers.</summary>
internal static class TomlSyntaxFaults
{
    private const int Most = 40;

    public static IEnumerable<Finding> Of(DiagnosticsBag diagnostics, string text, string file)
    {
        string[] lines = text.Split('\n');
        var seen = new HashSet<int>();
        foreach (
            DiagnosticMessage d in diagnostics
                .OrderBy(d => d.Span.Start.Line)
                .ThenBy(d => d.Span.Start.Column)
        )
        {
            int line = Math.Clamp(d.Span.Start.Line, 0, lines.Length - 1);
            // A head whose bracket is not closed trips the parser once more on the line below.
            bool echo =
                line > 0 && seen.Contains(line - 1) && lines[line - 1].TrimStart().StartsWith('[');
            if (!seen.Add(line) || seen.Count > Most || echo)
            {
                continue;
            }

            string written = lines[line].Trim();
            yield return new(
                Severity.Error,
                new Place(file, line + 1, d.Span.Start.Column + 1).ToString(),
                $"{Quoted.Of(written)}: {Words(d.Message, written)}"
            );
            if (d.Message.Contains("newline in a string", StringComparison.Ordinal))
            {
                // All that follows is swallowed by the open string, and every further message is about that.
                yield break;
            }
        }
    }

    /// <summary>Whether any fault stands on a line that is not plainly key = value, or opened a text that swallows the lines below.</summary>
    public static bool TouchHeads(DiagnosticsBag diagnostics, string text)
    {
        string[] lines = text.Split('\n');
        return diagnostics.Any(d =>
        {
            string line = lines[Math.Clamp(d.Span.Start.Line, 0, lines.Length - 1)].TrimStart();
            return line.StartsWith('[')
                || !line.Contains('=', StringComparison.Ordinal)
                || d.Message.Contains("string", StringComparison.Ordinal);
        });
    }

    private static string Words(string message, string line)
    {
        if (
            message.Contains("newline in a string", StringComparison.Ordinal)
            || message.Contains("End-Of-File found on string", StringComparison.Ordinal)
        )
        {
            return "a text in quotes is not closed on its line; what follows could not be read";
        }

        if (message.Contains("while expecting token `newline`", StringComparison.Ordinal))
        {
            return line.Contains('=', StringComparison.Ordinal)
                ? "something is left over after the value: texts and lengths with a unit go in quotes (thickness = \"9 mm\"), decimals take a point, one key a line"
                : "something is left over after the bracket: a table's name stands alone on its line";
        }

        if (message.Contains("Expecting `=`", StringComparison.Ordinal))
        {
            return "a line is key = value, or a table's name in brackets";
        }

        if (
            message.Contains("for a value", StringComparison.Ordinal)
            || message.Contains("expecting a value", StringComparison.Ordinal)
        )
        {
            return "there is no value after the equals sign, or one that is neither a number, a text in quotes nor a list in brackets";
        }

        if (message.Contains("leading zero", StringComparison.Ordinal))
        {
            return "a number does not begin with a zero before other digits";
        }

        return
            message.Contains("bracket", StringComparison.Ordinal)
            || message.Contains("base key", StringComparison.Ordinal)
            ? "a table's name stands in brackets: [hull] for a single one, [[layer]] for one of several"
            : "not readable as TOML (" + message.Replace('\n', ' ') + ")";
    }
}
