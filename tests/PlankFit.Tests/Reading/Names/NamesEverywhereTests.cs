using System.Text.Json;
using System.Text.RegularExpressions;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Help;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Names;

/// <summary>Nasty texts in every place where a builder may write one: refused at their line, or a name that everything after can bear.</summary>
public sealed partial class NamesEverywhereTests
{
    /// <summary>Texts that no sheet can show or that steer what shows them.</summary>
    private static readonly string[] Refused =
    [
        "boat \U0001F6A4", // an emoji
        "船", // another script
        "שיט", // from right to left
        "a\u202Egnp.exe", // an override of the direction
        "\u001B[31mred", // a terminal's escape
        "bell\u0007",
        "nul\0",
        "two\nlines",
        "tab\tbed",
        "no-break\u00A0blank",
        "e\u0301", // an accent apart
        "line\u2028separator",
        "zero\u200Bwidth",
        "C1\u009Bcsi",
        new('a', 101),
        new('a', 10_000),
    ];

    /// <summary>Texts that can be drawn, however odd as names: read or refused, but never an exception and never without a place.</summary>
    private static readonly string[] Odd =
    [
        "CON",
        "../x",
        "/",
        "trailing...",
        "-",
        "=1+1",
        "@a",
        "'",
        "{0}",
        "%s",
        "<b>&amp;",
        "Łódź ½″ — „Гагара“ Θ",
        new('W', 100),
    ];

    public static TheoryData<string> Files => new("job", "sheer", "offsets", "stock", "measured");

    [Theory]
    [MemberData(nameof(Files))]
    public void ATextThatCannotBeDrawnIsRefusedWithItsLine(string file)
    {
        int tried = 0;
        foreach (
            (string what, string nasty, int line, Func<ReadResult> read) in Spoiled(file, Refused)
        )
        {
            ReadResult result = read();
            Assert.True(result.Job is null, $"{what} as {Quoted.Of(nasty)} was read");
            Assert.True(
                result.Findings.Any(f =>
                    f.Severity == Severity.Error
                    && f.Where.Contains($", line {line}", StringComparison.Ordinal)
                ),
                $"{what} as {Quoted.Of(nasty)}: nothing is said of line {line}:\n{Listed(result)}"
            );
            Assert.All(result.Findings, f => Assert.True(IsPlain(f.Where + f.Message), f.Message));
            tried++;
        }

        Assert.True(tried > (LongRuns.Asked ? 50 : 10));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void AnOddTextIsReadOrRefusedWithAPlace(string file)
    {
        foreach ((string what, string odd, _, Func<ReadResult> read) in Spoiled(file, Odd))
        {
            ReadResult result = read();
            Assert.True(
                result.Job is not null || result.HasFaults,
                $"{what} as {Quoted.Of(odd)}: neither a job nor a fault"
            );
            Assert.All(
                result.Findings.Where(f => f.Severity == Severity.Error),
                f => Assert.NotEmpty(f.Where)
            );
        }
    }

    /// <summary>Where a key is new and takes a text, it must be in the job that the tests above spoil.</summary>
    [Fact]
    public void EveryKeyThatTakesATextIsTried()
    {
        Assert.NotNull(EveryName.Read().Job);
        Assert.NotNull(EveryName.Read(EveryName.JobWithSheer).Job);
        string[] keys =
        [
            .. KeyPath
                .All.Select(k => k.Key is EitherKey either ? either.Plain : k.Key)
                .Where(k => k is TextKey or TextsKey or FilesKey)
                .Select(k => k.Name)
                .Distinct(),
        ];
        Assert.True(keys.Length > 15);
        // A record of sawn planks is the program's own file.
        string[] elsewhere = ["sawn"];
        Assert.All(
            keys.Except(elsewhere),
            k => Assert.Matches($@"\b{k} = [\[{{""]", EveryName.Job + EveryName.JobWithSheer)
        );
    }

    [Fact]
    public void TheJobFilesOwnNameIsHeldToTheRule()
    {
        ReadResult result = JobReader.Read("/nowhere/\u001B[31m\u202Ejob.toml");
        Assert.Contains("<U+001B>", Assert.Single(result.Findings).Where, StringComparison.Ordinal);
    }

    private static IEnumerable<(string What, string Text, int Line, Func<ReadResult> Read)> Spoiled(
        string file,
        string[] texts
    ) =>
        // A fifth of them by default, other texts from value to value.
        Spoiling(file, texts).Where((_, i) => LongRuns.Asked || (i + (i / texts.Length)) % 5 == 0);

    private static IEnumerable<(
        string What,
        string Text,
        int Line,
        Func<ReadResult> Read
    )> Spoiling(string file, string[] texts)
    {
        if (file is "job" or "sheer")
        {
            string job = file == "job" ? EveryName.Job : EveryName.JobWithSheer;
            foreach (Match value in QuotedText().Matches(job))
            {
                foreach (string text in texts)
                {
                    string spoiled = job.Remove(value.Index, value.Length)
                        .Insert(value.Index, JsonSerializer.Serialize(text));
                    yield return (
                        LineOf(job, value.Index) + ": " + value.Value,
                        text,
                        NumberOf(job, value.Index),
                        () => EveryName.Read(spoiled)
                    );
                }
            }

            yield break;
        }

        string table = file switch
        {
            "offsets" => EveryName.Offsets,
            "stock" => EveryName.Stock,
            _ => EveryName.Measured,
        };
        foreach (Match cell in Cell().Matches(table))
        {
            foreach (string text in texts.Where(t => !t.Contains('\n')))
            {
                string spoiled = table
                    .Remove(cell.Index, cell.Length)
                    .Insert(cell.Index, $"\"{text.Replace("\"", "\"\"")}\"");
                yield return (
                    cell.Value,
                    text,
                    NumberOf(table, cell.Index),
                    () =>
                        file switch
                        {
                            "offsets" => EveryName.Read(offsets: spoiled),
                            "stock" => EveryName.Read(stock: spoiled),
                            _ => EveryName.Read(measured: spoiled),
                        }
                );
            }
        }
    }

    private static bool IsPlain(string text) =>
        text.EnumerateRunes().All(PlainText.IsSeen) && text.Length < 2 * PlainText.Longest;

    private static int NumberOf(string text, int at) => 1 + text.AsSpan(0, at).Count('\n');

    private static string LineOf(string text, int at) => text.Split('\n')[NumberOf(text, at) - 1];

    private static string Listed(ReadResult result) =>
        string.Join('\n', result.Findings.Select(f => f.Where + ": " + f.Message));

    [GeneratedRegex("\"[^\"\\n]*\"")]
    private static partial Regex QuotedText();

    [GeneratedRegex("[^,\\n]+")]
    private static partial Regex Cell();
}
