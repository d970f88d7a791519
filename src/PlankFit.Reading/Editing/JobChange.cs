using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PlankFit.Reading.Keys;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PlankFit.Reading.Editing;

/// <summary>
/// One value of a job file changed, everything else left as it stands to the last sign: comments, order, spacing and line ends. Whether the value will do is
/// the reader's to say, of the text that comes of it.
/// </summary>
public static partial class JobChange
{
    /// <summary>The text with what a person typed in that field; null where the text has no such field, or what was typed is no single value.</summary>
    /// <param name="text">Without a byte order mark.</param>
    /// <param name="address">As <see cref="JobField.Address"/> has it.</param>
    /// <param name="typed">As a person writes it: 150, 6 in, forward; a list in brackets.</param>
    public static string? Of(string text, string address, string typed)
    {
        if (JobFields.Of(text).FirstOrDefault(f => f.Address == address) is not { } field)
        {
            return null;
        }

        if (Value(field.Key, typed.Trim()) is not { } value)
        {
            return null;
        }

        if (field.Written is not null)
        {
            return text[..field.Span.From] + value + text[field.Span.To..];
        }

        string newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n",
            before = text[..field.Span.From];
        return before
            + (before.EndsWith('\n') ? "" : newLine)
            + $"{field.Key.Name} = {value}{newLine}"
            + text[field.Span.To..];
    }

    /// <summary>As it stands in the file: a number bare where the key takes one, a list as it is typed, anything else in quotes.</summary>
    internal static string? Value(JobKey key, string typed) =>
        key switch
        {
            ListKey when typed.StartsWith('[') => IsOneValue(typed) ? typed : null,
            YesNoKey when typed is "true" or "false" => typed,
            LengthKey or NumberKey or QuantityKey when Number().IsMatch(typed) => typed,
            _ => Quoted(typed),
        };

    /// <summary>What is put into the text as it was typed must not be more than a value: a line of its own would be a change that nobody sees.</summary>
    private static bool IsOneValue(string typed)
    {
        if (typed.Contains('\n', StringComparison.Ordinal) || typed.Contains('#'))
        {
            return false;
        }

        try
        {
            DocumentSyntax document = SyntaxParser.Parse($"a = {typed}\n", "", validate: true);
            return !document.HasErrors
                && document.Tables.ChildrenCount == 0
                && document.KeyValues.ChildrenCount == 1;
        }
        catch (Exception e) when (e is TomlException or ArgumentException)
        {
            return false;
        }
    }

    private static string Quoted(string typed)
    {
        var quoted = new StringBuilder("\"");
        foreach (char sign in typed)
        {
            _ = sign switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append(@"\\"),
                < ' ' or '\u007f' => quoted.Append(
                    CultureInfo.InvariantCulture,
                    $"\\u{(int)sign:X4}"
                ),
                _ => quoted.Append(sign),
            };
        }

        return quoted.Append('"').ToString();
    }

    [GeneratedRegex(@"^-?(0|[1-9][0-9]{0,11})(\.[0-9]{1,12})?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Number();
}
