using System.Collections.Concurrent;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Text;
using PlankFit.Tests.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Fuzz;

/// <summary>
/// Spoiled texts through both readers: whatever comes, there is a job or a fault, never an exception and never a wait. Each run is seeded by its number, so
/// that a failure names the input. PLANKFIT_LONG=1 asks for more; with PLANKFIT_FUZZ=1 the full run of more than a million inputs is made.
/// </summary>
public class ReaderFuzzTests(ITestOutputHelper output)
{
    private const int QuickRuns = 2_500;
    private const int MoreRuns = 40_000;
    private const int FullRuns = 600_000;

    /// <summary>Far above any honest reading of a few kilobytes. Work is told by what it allocates, which no slow or busy machine changes.</summary>
    private const long MostBytes = 20_000_000;

    private static readonly string[] JobTokens =
    [
        .. "[ ] [[ ]] { } = , . # ' \" \"\"\" ''' \\ \n \r\n \0 \t - + _ [job] [hull] [[layer]] [ends] [[ends.zone]] [limits] [[limits.bend]] [output] [layer] [a.b.c] [[]]".Split(
            ' '
        ),
        .. "job hull layer ends zone limits bend output name units offsets positions keel chine between keel-side kind thickness width heads angle master hold angle-drift gap stagger from to cut by allowance".Split(
            ' '
        ),
        .. "nan -inf +inf 1e999 -1e-999 9999999999999999999 0xFFFF 0b1 0o7 007 1__0 1_0 -0 0.0 1.5e300 true false 1979-05-27 07:32:00 1979-05-27T07:32:00Z".Split(
            ' '
        ),
        "\"mm\"",
        "\"ft-in-8\"",
        "\"in\"",
        "\"5-4-6+\"",
        "\"1-54\"",
        "\"5' 4 3/4\\\"\"",
        "\"9,5 mm\"",
        "\"fit\"",
        "\"left long\"",
        "\"forward\"",
        "\"cloth\"",
        "\"chine\"",
        "\"\\uD800\"",
        "\"\\u0000\"",
        "{ cut = \"left long\", by = 25 }",
        "{ cut = { cut = { cut = 1 } } }",
        "[[[[[[[[[[",
        "[1, [2, [3]], {a=1}]",
        "a.b.c.d = 1\n",
        "layer = 3\n",
        "ends = [1]\n",
        "limits.bend = [1, {}]\n",
        "\uFEFF",
        "𝄞",
        new string('9', 400),
        new string('a', 3000),
        new string('{', 70),
    ];

    private static readonly string[] TableTokens =
    [
        .. "0 -0 600 2400 -5 5-4-6 5-4-6+ 5-4-6- 0-0-0- 1-54 227 NaN -Infinity inf 1e308 1e-400 0x10 9999999999999999 ½ 5½ 1/0 0/0 3/7 5'-4\" 5'4 , ,, ,,,, ; \t \" \"\" \"\"\" ' # \n \r\n \r \0 ,\n height half-breadth position line measure keel chine".Split(
            ' '
        ),
        "5-4-6 1/2",
        "\"5'-4 3/4\"\"\"",
        "keel edge",
        "bilge",
        "\n# note, with \"quote\n",
        "\n,position,",
        "1,5",
        "\uFEFF",
        "𝄞",
        "\u2028",
        "\u0085",
        new string(',', 500),
        new string('"', 301),
        new string('9', 400),
        new string('-', 200),
    ];

    private static readonly string FullJob =
        Texts.Job
        + """

            master = 1200
            hold = "width"
            angle-drift = 7.5
            gap = 0.5
            stagger = 0.5
            [[layer]]
            kind = "cloth"
            name = "core"
            thickness = "1 mm"
            [ends]
            keel = { cut = "fit" }
            chine = { cut = "left long", by = 25 }
            [[ends.zone]]
            from = 0
            to = 900
            chine = { cut = "fit", allowance = 15 }
            [limits]
            edge-strain-percent = 0.1
            [[limits.bend]]
            least-radius-over-thickness = 0
            verdict = "cold"
            [output]
            dxf-units = "mm"
            """;

    private static int Runs =>
        Environment.GetEnvironmentVariable("PLANKFIT_FUZZ") == "1" ? FullRuns
        : LongRuns.Asked ? MoreRuns
        : QuickRuns;

    [Fact]
    public void ASpoiledJobIsAJobOrAFault() =>
        Fuzz(
            JobTokens,
            [FullJob, Texts.Job],
            (job, _) => JobReader.Read(job, "job.toml", Texts.Offsets, "offsets.csv")
        );

    [Fact]
    public void ASpoiledTableIsATableOrAFault()
    {
        string eighths = Texts
            .Job.Replace("\"mm\"", "\"ft-in-8\"")
            .Replace("= 9", "= \"3/8 in\"")
            .Replace("= 150", "= \"6 in\"");
        string forward = FullJob.Replace("[hull]", "[hull]\npositions = \"forward\"");
        string[] jobs = [FullJob, forward, eighths];
        const string tableOfEighths = """
            line,measure,0,1,2,3
            ,position,0-0-0,2-0-0,4-0-0,8-0-0
            keel edge,height,-0-3-4,0-0-0,0-0-4,0-1-0 1/4
            keel edge,half-breadth,0-1-0,0-1-0,,0-1-0+
            chine,position,0-0-0,2-0-0,4-0-0,8-2-0
            chine,height,2-0-0,1-6-0,1-0-0,0-10-0
            chine,half-breadth,1-0-0,2-0-0,3-0-0,3-6-0-
            """;
        Fuzz(
            TableTokens,
            [Texts.Offsets, tableOfEighths],
            (table, run) => JobReader.Read(jobs[run % 3], "job.toml", table, "offsets.csv")
        );
    }

    [Fact]
    public void ASpoiledStockIsAStockOrAFault()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        string job = FullJob + "\n[nest]\nstock = \"stock.csv\"\ngrades = [\"clear\", \"sound\"]\n";
        const string stock = """
            board,kind,count,length,width,thickness,species,grade,price,ends,faults,grain
            B-01,board,2,3600,160,9,douglas-fir,clear,21.50,40/0,1200..1260; 2000..2030 x 0..60,
            PLY,sheet,,2440,1220,9,,sound,,10,,across
            """;
        string[] tokens =
        [
            .. TableTokens,
            .. ".. x ; / 1200..1260 0..60 40/0 1/2 1/2/3/4 board sheet along across clear -1 1e9 B-01".Split(
                ' '
            ),
        ];
        Fuzz(
            tokens,
            [stock, stock.Replace(',', ';').Replace("; 2000", ", 2000")],
            (text, _) =>
                JobReader.Read(job, "job.toml", Texts.Offsets, "offsets.csv", stockTexts: [text])
        );
    }

    private void Fuzz(string[] tokens, string[] seeds, Func<string, int, ReadResult> read)
    {
        var failures = new ConcurrentQueue<string>();
        int jobs = 0,
            refused = 0,
            heaviestRun = 0;
        long heaviest = 0;
        for (int run = 0; run < Runs && failures.IsEmpty; run++)
        {
            byte[] bytes = new Mutator(run, tokens).Spoil(seeds[run % seeds.Length]);
            var file = TextFile.Decode(bytes, "spoiled");
            if (file.Text is null)
            {
                Assert.NotNull(file.Fault);
                refused++;
                continue;
            }

            long before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                ReadResult result = read(file.Text, run);
                if (Wrong(result) is { } wrong)
                {
                    failures.Enqueue($"run {run}: {wrong}\n{file.Text}");
                }

                jobs += result.Job is null ? 0 : 1;
                refused += result.Job is null ? 1 : 0;
            }
            catch (Exception e)
            {
                failures.Enqueue($"run {run}: {e}\n{file.Text}");
            }

            long work = GC.GetAllocatedBytesForCurrentThread() - before;
            (heaviest, heaviestRun) = work > heaviest ? (work, run) : (heaviest, heaviestRun);
        }

        output.WriteLine(
            FormattableString.Invariant(
                $"{Runs} inputs: {jobs} read, {refused} refused; heaviest {heaviest} bytes, run {heaviestRun}"
            )
        );
        Assert.True(failures.IsEmpty, string.Join("\n\n", failures));
        Assert.True(heaviest < MostBytes, $"run {heaviestRun} allocated {heaviest} bytes");

        // Were all refused, or none, the texts would not be spoiled in a way that tries the readers.
        Assert.True(jobs > Runs / 100 && refused > Runs / 10);
    }

    /// <summary>A job has only finite, sound numbers; no job has a fault that says why.</summary>
    private static string? Wrong(ReadResult result)
    {
        if (result.Findings.Any(f => f.Message.Length < 8 || f.Where.Length == 0))
        {
            return "a finding says nothing";
        }

        if (result.Job is not { } job)
        {
            return result.HasFaults ? null : "neither a job nor a fault";
        }

        if (result.HasFaults)
        {
            return "a job in spite of a fault";
        }

        IEnumerable<double?> numbers = job
            .Offsets.Lines.SelectMany(l =>
                l.HeightsMm.Concat(l.HalfBreadthsMm).Concat(l.PositionsMm)
            )
            .Concat(job.Offsets.Stations.Select(s => (double?)s.PositionMm))
            .Concat(job.Layers.Select(l => (double?)l.ThicknessMm))
            .Concat(
                job.Layers.OfType<PlankLayerSpec>()
                    .SelectMany(p =>
                        new double?[]
                        {
                            p.WidthMm,
                            p.AngleDegrees,
                            p.MasterMm,
                            p.GapMm,
                            p.DriftDegrees,
                        }
                    )
            );
        return
            numbers.All(n => n is null || double.IsFinite(n.Value))
            && job.Layers.All(l => l.ThicknessMm > 0)
            && job.Offsets.Stations.Zip(job.Offsets.Stations.Skip(1))
                .All(p => p.First.PositionMm < p.Second.PositionMm)
            ? null
            : "a job with an unsound number";
    }
}
