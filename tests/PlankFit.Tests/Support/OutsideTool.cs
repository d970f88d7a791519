using System.Diagnostics;

namespace PlankFit.Tests.Support;

/// <summary>Runs a program that is not ours over a file that is, and skips the test, saying what to install, where the program is missing.</summary>
public static class OutsideTool
{
    /// <returns>What it printed, standard error after standard output.</returns>
    public static string Run(string program, string package, params string[] arguments)
    {
        (int code, string? text) = Try(program, package, arguments);
        Assert.True(code == 0, $"{program} ended with {code}: {text}");
        return text;
    }

    public static (int Code, string Text) Try(
        string program,
        string package,
        params string[] arguments
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["QT_QPA_PLATFORM"] = "offscreen";
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, text + errors.Result);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip($"{program} is not installed: apt-get install {package}");
            throw;
        }
    }
}
