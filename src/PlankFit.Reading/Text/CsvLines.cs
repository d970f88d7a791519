using System.Text;

namespace PlankFit.Reading.Text;

/// <summary>
/// Makes the lines of a table fit for a CSV parser, one for one, so that line numbers stay. Comments become blank lines. A quotation mark inside a cell
/// that does not begin with one is an inch mark, and becomes a double prime; a cell whose quotes are not closed on its line is named, and the line blanked,
/// since otherwise it would swallow the lines below.
/// </summary>
internal static class CsvLines
{
    public const char InchMark = '\u2033';

    public static string[] Split(string text)
    {
        string[] lines = text.Replace("\r\n", "\n", StringComparison.Ordinal)
            .Replace('\r', '\n')
            .Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            string start = lines[i].TrimStart();
            if (start.StartsWith('#') || start.StartsWith("\"#", StringComparison.Ordinal))
            {
                lines[i] = "";
            }
        }

        return lines;
    }

    /// <summary>The separator of the head line: comma, semicolon or tab, whichever it has most of.</summary>
    public static char Separator(string head)
    {
        ReadOnlySpan<char> candidates = [',', ';', '\t'];
        char best = ',';
        foreach (char c in candidates)
        {
            if (head.AsSpan().Count(c) > head.AsSpan().Count(best))
            {
                best = c;
            }
        }

        return best;
    }

    /// <summary>The line with inch marks in place of stray quotes, or null where a quoted cell is not closed or goes on after its closing quote.</summary>
    public static string? Clean(string line, char separator)
    {
        if (!line.Contains('"', StringComparison.Ordinal))
        {
            return line;
        }

        var clean = new StringBuilder(line.Length);
        int at = 0;
        while (true)
        {
            int end = EndOfCell(line, at, separator);
            if (end < 0)
            {
                return null;
            }

            string cell = line[at..end];
            clean.Append(
                cell.TrimStart().StartsWith('"') ? cell.Trim() : cell.Replace('"', InchMark)
            );
            if (end == line.Length)
            {
                return clean.ToString();
            }

            clean.Append(separator);
            at = end + 1;
        }
    }

    /// <summary>Where each cell of a line begins and ends; the last one ends with the line. An unclosed quote takes the rest of the line.</summary>
    public static List<(int From, int To)> Cells(string line, char separator)
    {
        List<(int, int)> cells = [];
        int at = 0;
        while (true)
        {
            int end = EndOfCell(line, at, separator) is var found and >= 0 ? found : line.Length;
            cells.Add((at, end));
            if (end == line.Length)
            {
                return cells;
            }

            at = end + 1;
        }
    }

    private static int EndOfCell(string line, int at, char separator)
    {
        int i = at;
        while (i < line.Length && line[i] is ' ' && line[i] != separator)
        {
            i++;
        }

        if (i == line.Length || line[i] != '"')
        {
            int plain = line.IndexOf(separator, at);
            return plain < 0 ? line.Length : plain;
        }

        for (i++; i < line.Length; i++)
        {
            if (line[i] != '"')
            {
                continue;
            }

            if (i + 1 < line.Length && line[i + 1] == '"')
            {
                i++;
                continue;
            }

            // Closed: nothing but blanks before the next separator.
            int next = line.IndexOf(separator, i);
            next = next < 0 ? line.Length : next;
            return string.IsNullOrWhiteSpace(line[(i + 1)..next]) ? next : -1;
        }

        return -1;
    }
}
