using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace PlankFit.Tests.Support;

/// <summary>Asks SciPy, a program that is not ours; skips the test, saying what to install, where it is missing.</summary>
public static class Scipy
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Runs a script and returns the numbers that it prints, apart by white space.</summary>
    public static double[] Numbers(string script)
    {
        (int imported, _, _) = Run("import numpy, scipy");
        Assert.SkipWhen(
            imported != 0,
            "SciPy is not installed: apt-get install python3-numpy python3-scipy"
        );
        (int code, string text, string errors) = Run(script);
        Assert.True(code == 0, errors);
        return
        [
            .. text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
                .Select(t => double.Parse(t, CultureInfo.InvariantCulture)),
        ];
    }

    /// <summary>A list of numbers as Python writes it.</summary>
    public static string List(IEnumerable<double> values) =>
        "["
        + string.Join(",", values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)))
        + "]";

    private static (int Code, string Text, string Errors) Run(string script)
    {
        try
        {
            ProcessStartInfo start = new(Python, ["-c", script])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            using Process process = Process.Start(start)!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, text, errors.Result);
        }
        catch (Win32Exception)
        {
            return (-1, "", Python + " is missing");
        }
    }
}
