using System.Diagnostics;

namespace PlankFit.Tests.Support;

/// <summary>The program as it was built, in a process of its own.</summary>
internal static class BuiltProgram
{
    /// <summary>Where it was built to, compiled ahead of time if the build was asked for that; else the copy beside the tests.</summary>
    private static string Path { get; } =
        new[]
        {
            AppContext.BaseDirectory.Replace(
                "tests/PlankFit.Tests",
                "src/PlankFit.Cli",
                StringComparison.Ordinal
            ),
            AppContext.BaseDirectory,
        }
            .Select(f => System.IO.Path.Combine(f, "plankfit.dll"))
            .First(File.Exists);

    public static Process Start(
        IEnumerable<string> arguments,
        params (string Name, string Value)[] environment
    )
    {
        var start = new ProcessStartInfo("dotnet", [Path, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    public static (int Code, string Output, string Errors) Run(
        IEnumerable<string> arguments,
        params (string Name, string Value)[] environment
    )
    {
        using Process process = Start(arguments, environment);
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, errors.Result);
    }

    /// <summary>The same behind a shell's own redirections, such as "2>&amp;-".</summary>
    public static (int Code, string Text) RunRedirected(
        string redirections,
        params string[] arguments
    ) =>
        OutsideTool.Try(
            "bash",
            "bash",
            ["-c", $"\"$@\" {redirections}", "shell", "dotnet", Path, .. arguments]
        );
}
