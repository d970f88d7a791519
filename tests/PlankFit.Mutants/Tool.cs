using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PlankFit.Mutants;

/// <summary>What became of a program that was run.</summary>
/// <param name="Exit">Null where it was stopped for its time.</param>
internal sealed record Ran(int? Exit, string Said, TimeSpan Took);

/// <summary>Runs another program to its end, or to the end of its time.</summary>
internal static class Tool
{
    public static async Task<Ran> Run(
        string folder,
        IEnumerable<string> arguments,
        int mutant,
        TimeSpan? atMost,
        CancellationToken stop
    )
    {
        var start = new ProcessStartInfo("dotnet", arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment[PlantedCopy.Variable] = mutant.ToString(CultureInfo.InvariantCulture);
        start.Environment["DOTNET_NOLOGO"] = "1";
        // Faults are looked for with more chance than the tests draw by default.
        start.Environment["PLANKFIT_DRAWS"] = "4";

        // Short runs: what is compiled better after thousands of calls is never repaid.
        start.Environment["DOTNET_TieredPGO"] = "0";
        var said = new StringBuilder();
        var watch = Stopwatch.StartNew();
        using var process = new Process { StartInfo = start };
        void Hear(string? line)
        {
            lock (said)
            {
                said.AppendLine(line);
            }
        }

        process.OutputDataReceived += (_, e) => Hear(e.Data);
        process.ErrorDataReceived += (_, e) => Hear(e.Data);
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        if (atMost is { } time)
        {
            limit.CancelAfter(time);
        }

        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            stop.ThrowIfCancellationRequested();
            return new(null, said.ToString(), watch.Elapsed);
        }

        return new(process.ExitCode, said.ToString(), watch.Elapsed);
    }
}
