using System.Diagnostics;
using System.Globalization;

namespace PlankFit.Benchmarks;

/// <summary>
/// What cloth, glue and structure add to the whole run of the 8 m demo from the rack, as the builder waits for it: the program as it is shipped, a process a run, with
/// and without their tables in turn, so that what else the machine does meets all alike. Without the search for boards, which would hide it. Wanted: under 0.5 s.
/// </summary>
internal static class WhatClothAdds
{
    private const string Demo = "survey-launch-from-the-rack";

    /// <summary>The job's text from one of its remarks on, each before the table that it is about.</summary>
    private static readonly (string Name, string From)[] Parts =
    [
        ("cloth", "# Cloth of no maker"),
        ("glue", "# Resin, glue and fillers"),
        ("structure", "# What it comes to"),
    ];

    /// <param name="turns">How many runs of each.</param>
    public static void Measure(int turns)
    {
        string folder = Directory.CreateTempSubdirectory("plankfit-").FullName;
        try
        {
            (string Name, string Job)[] jobs = [.. Jobs(folder)];
            List<(double Wall, double Processor)>[] took =
            [
                .. jobs.Select(_ => new List<(double Wall, double Processor)>()),
            ];
            for (int turn = 0; turn < turns; turn++)
            {
                for (int i = 0; i < jobs.Length; i++)
                {
                    took[i].Add(Run(jobs[i].Job, Path.Combine(folder, "out")));
                }
            }

            (double wall, double processor) = Median(took[0]);
            foreach (
                ((string name, _), List<(double Wall, double Processor)> runs) in jobs.Zip(took)
            )
            {
                (double w, double p) = Median(runs);
                Console.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{name, -28} {w:0.00} s by the wall ({w - wall:+0.00;-0.00;0}), {p:0.00} s of processor time ({p - processor:+0.00;-0.00;0})"
                    )
                );
            }
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static IEnumerable<(string Name, string Job)> Jobs(string folder)
    {
        string file = Benchmarks.Demo.File(Demo),
            text = File.ReadAllText(file)
                .Replace(
                    "../survey-launch",
                    Path.Combine(Path.GetDirectoryName(file)!, "..", "survey-launch"),
                    StringComparison.Ordinal
                );
        int boards = text.IndexOf("# The boards:", StringComparison.Ordinal);
        int[] from =
        [
            .. Parts.Select(p => text.IndexOf(p.From, StringComparison.Ordinal)),
            text.Length,
        ];
        if (boards < 0 || from.Any(f => f < 0))
        {
            throw new InvalidOperationException($"{file} no longer has the remarks gone by here");
        }

        string job = text[..boards],
            name = "without any of them";
        yield return (name, Written(folder, 0, job));
        for (int i = 0; i < Parts.Length; i++)
        {
            job += text[from[i]..from[i + 1]];
            name = i == 0 ? $"with {Parts[i].Name}" : $"{name}, {Parts[i].Name}";
            yield return (name, Written(folder, i + 1, job));
        }
    }

    private static string Written(string folder, int number, string job)
    {
        string of = Path.Combine(folder, number.ToString(CultureInfo.InvariantCulture), "job.toml");
        _ = Directory.CreateDirectory(Path.GetDirectoryName(of)!);
        File.WriteAllText(of, job);
        return of;
    }

    private static (double Wall, double Processor) Run(string job, string to)
    {
        string bin = Path.Combine(
                Path.GetDirectoryName(Benchmarks.Demo.File(Demo))!,
                "../../src/PlankFit.Cli/bin/Release"
            ),
            program =
                Directory
                    .EnumerateFiles(bin, "plankfit.dll", SearchOption.AllDirectories)
                    .MaxBy(File.GetLastWriteTimeUtc)
                ?? throw new InvalidOperationException(
                    "build src/PlankFit.Cli in Release first: what is measured is the program as it is shipped"
                );
        long start = Stopwatch.GetTimestamp();
        using Process run = Process.Start(
            new ProcessStartInfo("dotnet", [program, "lay", job, "--out", to])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        Task<string> told = run.StandardError.ReadToEndAsync(),
            findings = run.StandardOutput.ReadToEndAsync();
        // Once it has ended nobody tells its processor time any more.
        TimeSpan processor = default;
        while (!run.WaitForExit(2))
        {
            try
            {
                processor = run.TotalProcessorTime;
            }
            catch (Exception e)
                when (e is InvalidOperationException or System.ComponentModel.Win32Exception)
            {
                // It ended between the two: what was read last holds, 2 ms before.
            }
        }

        double wall = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return run.ExitCode == 0
            ? (wall, processor.TotalSeconds)
            : throw new InvalidOperationException(told.Result + findings.Result);
    }

    private static (double Wall, double Processor) Median(
        List<(double Wall, double Processor)> runs
    ) =>
        (
            runs.Select(r => r.Wall).Order().ElementAt(runs.Count / 2),
            runs.Select(r => r.Processor).Order().ElementAt(runs.Count / 2)
        );
}
