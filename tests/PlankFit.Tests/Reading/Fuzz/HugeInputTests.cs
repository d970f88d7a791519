using System.Diagnostics;
using System.Text;
using PlankFit.Planking;
using PlankFit.Reading;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Fuzz;

/// <summary>Files of a quarter of a megabyte that are no honest job: refused in seconds, since the work grows no faster than the file.</summary>
public class HugeInputTests
{
    private const int Size = 250_000;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    private static string Repeat(Func<int, string> piece)
    {
        var text = new StringBuilder();
        for (int i = 0; text.Length < Size; i++)
        {
            text.Append(piece(i));
        }

        return text.ToString();
    }

    public static TheoryData<string, Func<int, string>> Jobs =>
        new()
        {
            { "dotted key", _ => "a." },
            { "unknown keys", i => $"key{i} = 1\n" },
            { "layers", _ => "[[layer]]\n" },
            { "zones", i => $"[[ends.zone]]\nfrom = {i}\nto = {i + 1}\n" },
            { "open brackets", _ => "[" },
            { "quotes", _ => "\"" },
            { "lines of rubbish", _ => "= ]\n" },
            { "one long word", _ => "a" },
        };

    public static TheoryData<string, Func<int, string>> Tables =>
        new()
        {
            { "lines", i => $"line {i},height,1,2,3,4\n" },
            { "rows the same", _ => "keel edge,height,1,2,3,4\n" },
            { "commas", _ => "," },
            { "quotes", _ => "\"" },
            { "open quotes", _ => "\"\n" },
            { "rubbish", _ => "x,height,a,b,c,d\n" },
            { "stations", i => $"s{i}," },
        };

    [Theory]
    [MemberData(nameof(Jobs), DisableDiscoveryEnumeration = true)]
    public void A_job(string what, Func<int, string> piece) =>
        Refused(what, () => Texts.Read(Texts.Job + "\n" + Repeat(piece)));

    [Theory]
    [MemberData(nameof(Tables), DisableDiscoveryEnumeration = true)]
    public void A_table(string what, Func<int, string> piece)
    {
        string rest = Repeat(piece);
        string text = what == "stations" ? "line,measure," + rest : Texts.Offsets + "\n" + rest;
        string job = Texts.Job.Replace("\"keel edge\"", "\"keel\"");
        Refused(what, () => Texts.Read(job, text));
    }

    private static void Refused(string what, Func<ReadResult> read)
    {
        var watch = Stopwatch.StartNew();
        ReadResult result = read();
        Assert.True(watch.Elapsed < Longest, $"{what} took {watch.Elapsed}");
        Assert.Null(result.Job);
        Assert.Contains(result.Findings, f => f.Severity == Severity.Error);
    }
}
