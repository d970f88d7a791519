using System.Text;

namespace PlankFit.Tests.Export.Tables;

/// <summary>A strict reader of RFC 4180, for tests: quotes only around a whole field, CR LF between rows, every row as long as the head.</summary>
internal static class CsvReader
{
    public static List<Dictionary<string, string>> Rows(byte[] file)
    {
        Assert.Equal([0xEF, 0xBB, 0xBF], file[..3]);
        List<List<string>> rows = Split(new UTF8Encoding(false, true).GetString(file[3..]));
        Assert.Equal(rows[0].Count, rows[0].Distinct().Count());
        return
        [
            .. rows.Skip(1)
                .Select(row =>
                {
                    Assert.Equal(rows[0].Count, row.Count);
                    return rows[0].Zip(row).ToDictionary(p => p.First, p => p.Second);
                }),
        ];
    }

    private static List<List<string>> Split(string text)
    {
        List<List<string>> rows = [];
        List<string> row = [];
        int at = 0;
        while (at < text.Length)
        {
            row.Add(Field(text, ref at));
            if (at < text.Length && text[at] == ',')
            {
                at++;
                continue;
            }

            Assert.Equal("\r\n", text.Substring(at, 2));
            at += 2;
            rows.Add(row);
            row = [];
        }

        Assert.Empty(row);
        return rows;
    }

    private static string Field(string text, ref int at)
    {
        StringBuilder field = new();
        if (text[at] != '"')
        {
            while (text[at] is not (',' or '\r'))
            {
                Assert.False(text[at] is '"' or '\n', "a quote or a line's end outside quotes");
                field.Append(text[at++]);
            }

            return field.ToString();
        }

        for (at++; ; at++)
        {
            if (text[at] == '"')
            {
                at++;
                if (text[at] != '"')
                {
                    return field.ToString();
                }
            }

            field.Append(text[at]);
        }
    }
}
