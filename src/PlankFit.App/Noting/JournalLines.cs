using System.Collections.Immutable;
using System.Text.Json;

namespace PlankFit.App.Noting;

/// <summary>The whole lines of a journal.</summary>
/// <param name="Whole">Where they end, bytes.</param>
/// <param name="Strange">Those, from 1, that are no notes: another hand's, or of another version of this program.</param>
internal sealed record JournalLines(
    List<ProgressTick> Ticks,
    long Whole,
    ImmutableArray<int> Strange
)
{
    public static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web);

    public static JournalLines Of(FileStream file)
    {
        byte[] bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        List<ProgressTick> ticks = [];
        List<int> strange = [];
        int from = 0,
            line = 0;
        while (Array.IndexOf(bytes, (byte)'\n', from) is var to && to >= 0)
        {
            line++;
            ReadOnlySpan<byte> text = bytes.AsSpan(from, to - from);
            if (Read(text) is { } tick)
            {
                ticks.Add(tick);
            }
            else if (text.ContainsAnyExcept(" \t\r"u8))
            {
                strange.Add(line);
            }

            from = to + 1;
        }

        return new(ticks, from, [.. strange]);
    }

    /// <summary>What a person should be told of lines that are no notes; null where there are none.</summary>
    public static string? Told(ImmutableArray<int> strange) =>
        strange.IsEmpty
            ? null
            : $"{(strange.Length == 1 ? "line" : "lines")} {string.Join(", ", strange.Take(5))}{(strange.Length > 5 ? $" and {strange.Length - 5} more" : "")} {(strange.Length == 1 ? "is no note" : "are no notes")} of this program: left as they are, and nothing is taken from them. Another hand wrote there, or another version";

    private static ProgressTick? Read(ReadOnlySpan<byte> line)
    {
        try
        {
            return
                JsonSerializer.Deserialize<ProgressTick>(line, Form)
                    is {
                        Plank: not null,
                        Field: not null,
                        Value: not null,
                        Client: not null,
                        At: not null
                    } tick
                && ProgressField.Fault(tick) is null
                ? tick
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
