using System.Globalization;

namespace PlankFit.Tests.Support;

/// <summary>
/// Published cutting-stock instances, which are not part of the project: read from the folder named by PLANKFIT_BENCH, or from where they lie
/// beside one of the folders above the tests. Where they are not there, the test is skipped, saying so.
/// </summary>
internal static class PublishedCutting
{
    public const string Variable = "PLANKFIT_BENCH";

    /// <summary>All numbers of a file, in their order.</summary>
    public static double[] Numbers(params string[] path)
    {
        string? folder = Folder();
        if (folder is null)
        {
            Assert.Skip(
                $"the published cutting-stock instances are not here: set {Variable} to their folder (it holds 1d and 2d-guillotine)"
            );
        }

        return
        [
            .. File.ReadAllText(Path.Combine([folder, .. path]))
                .Split([.. " \t\r\n\u001a"], StringSplitOptions.RemoveEmptyEntries)
                .Select(n => double.Parse(n, CultureInfo.InvariantCulture)),
        ];
    }

    private static string? Folder()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
        {
            return named;
        }

        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string beside = Path.Combine(at.FullName, "shared", "data", "cutting-stock");
            if (Directory.Exists(beside))
            {
                return beside;
            }
        }

        return null;
    }
}
