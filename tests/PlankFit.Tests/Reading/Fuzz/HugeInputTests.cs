using System.Text;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;

namespace PlankFit.Tests.Reading.Fuzz;

/// <summary>
/// Files of a quarter of a megabyte that are no honest job: refused, and the work grows no faster than the file. Work is told by what it allocates, which no
/// slow or busy machine changes.
/// </summary>
public class HugeInputTests
{
    private const int Size = 250_000;

    /// <summary>How many times the work of a file of a quarter of the size is still no faster than the file: 4, and a half more for what grows in steps.</summary>
    private const double MostGrowth = 6;

    private static string Repeat(Func<int, string> piece, int size)
    {
        var text = new StringBuilder();
        for (int i = 0; text.Length < size; i++)
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
    public void AJob(string what, Func<int, string> piece) =>
        Refused(what, size => Texts.Read(Texts.Job + "\n" + Repeat(piece, size)));

    [Theory]
    [MemberData(nameof(Tables), DisableDiscoveryEnumeration = true)]
    public void ATable(string what, Func<int, string> piece)
    {
        string job = Texts.Job.Replace("\"keel edge\"", "\"keel\"");
        Refused(
            what,
            size =>
            {
                string rest = Repeat(piece, size);
                return Texts.Read(
                    job,
                    what == "stations" ? "line,measure," + rest : Texts.Offsets + "\n" + rest
                );
            }
        );
    }

    private static void Refused(string what, Func<int, ReadResult> read)
    {
        // The first reading makes what is made once and for all.
        read(Size / 16);
        long quarter = Allocated(() => read(Size / 4));
        long whole = Allocated(() =>
        {
            ReadResult result = read(Size);
            Assert.Null(result.Job);
            Assert.Contains(result.Findings, f => f.Severity == Severity.Error);
        });
        Assert.True(whole < MostGrowth * quarter, $"{what}: {quarter} bytes, then {whole}");
    }

    private static long Allocated(Action work)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        work();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
