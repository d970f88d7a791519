using System.CommandLine;
using System.Runtime.InteropServices;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Export.Words;
using PlankFit.Planking.Laying;

namespace PlankFit.Cli;

/// <summary>Runs a verb at the terminal: messages to standard error, results asked for to standard output, Ctrl-C stops it cleanly.</summary>
internal static class Terminal
{
    public static int Run(
        CommonOptions common,
        ParseResult parsed,
        Func<RunRequest, IProgress<PlanProgress>, Timings, CancellationToken, RunReport> verb
    )
    {
        using var stop = new CancellationTokenSource();
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Stop);
        void Stop(PosixSignalContext signal)
        {
            // Once is asking; whoever asks twice does not want to wait.
            signal.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
        }

        var timings = new Timings();
        using var progress = new ProgressLine();
        try
        {
            RunRequest request = common.Request(parsed);
            if (UnfinishedMove.Mend(request.Folder) is { } mended)
            {
                Console.Error.WriteLine($"plankfit: {mended}");
            }

            RunReport report = verb(request, progress, timings, stop.Token);
            progress.Clear();
            Print(report);
            if (common.WantsTimings(parsed))
            {
                timings.Lines().ToList().ForEach(Console.Error.WriteLine);
            }

            return (int)report.Exit;
        }
        catch (OperationCanceledException)
        {
            progress.Clear();
            Console.Error.WriteLine("plankfit: stopped; what an earlier run wrote is untouched.");
            return (int)ExitCode.Interrupted;
        }
        catch (OutputException e)
        {
            progress.Clear();
            Console.Error.WriteLine(
                $"plankfit: {e.Message} {(e.HalfDone ? "Until then the folder holds files of two runs, mixed: do not saw by them." : "What an earlier run wrote is untouched.")}"
            );
            return (int)ExitCode.CouldNotWrite;
        }
        catch (LostStreamException)
        {
            throw;
        }
        catch (Exception e) when (Environment.GetEnvironmentVariable("PLANKFIT_TRACE") is null)
        {
            progress.Clear();
            Console.Error.WriteLine(
                $"plankfit: a fault of the program, not of the job: {e.Message} Please report it with the job's two files; PLANKFIT_TRACE=1 shows where."
            );
            return (int)ExitCode.JobHasFaults;
        }
    }

    /// <summary>Tells what needs no job and no folder.</summary>
    public static int Say(RunReport report)
    {
        Print(report);
        return (int)report.Exit;
    }

    /// <summary>The last word where a stream takes nothing: said on the other one, if that does.</summary>
    public static int CouldNotSay(LostStreamException lost)
    {
        try
        {
            Console.Error.WriteLine($"plankfit: {lost.Message}.");
        }
        catch (LostStreamException) { }

        return (int)ExitCode.CouldNotWrite;
    }

    private static void Print(RunReport report)
    {
        foreach (string line in report.First)
        {
            Console.Error.WriteLine(line);
        }

        foreach (string line in report.Told())
        {
            Console.Error.WriteLine(line);
        }

        foreach (string line in report.Lines)
        {
            Console.Error.WriteLine(line);
        }

        if (report.Exit == ExitCode.JobHasFaults)
        {
            Console.Error.WriteLine(FindingsText.Tally(report.Findings));
        }

        if (report.Result is not null)
        {
            Console.Out.Write(report.Result);
        }
    }
}
