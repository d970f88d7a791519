using System.Collections.Concurrent;
using System.Text.RegularExpressions;

namespace PlankFit.Mutants;

/// <summary>The tests of the planted copy, class by class.</summary>
/// <param name="copy">Where it stands.</param>
/// <param name="used">All that are asked for, so that the methods of one class are run together while nothing is planted.</param>
internal sealed partial class TestProgram(string copy, IEnumerable<string> used)
{
    private readonly ILookup<string, string> methods = used.Where(t => t.Contains('.'))
        .Distinct()
        .ToLookup(ClassOf);

    private readonly ConcurrentDictionary<
        string,
        Lazy<Task<(string? Wrong, TimeSpan Took)>>
    > unspoiled = new();

    /// <summary>The program that the build has made.</summary>
    private string Program =>
        Directory
            .EnumerateFiles(
                Path.Combine(copy, "tests", "PlankFit.Tests", "bin", "Release"),
                "PlankFit.Tests.dll",
                SearchOption.AllDirectories
            )
            .Single(f => File.Exists(Path.ChangeExtension(f, ".runtimeconfig.json")));

    public Task<Ran> Build(CancellationToken stop) =>
        Tool.Run(
            copy,
            [
                "build",
                "tests/PlankFit.Tests",
                "-c",
                "Release",
                "-p:RunAnalyzers=false",
                "-p:PublishReadyToRun=false",
                "-p:TreatWarningsAsErrors=false",
            ],
            0,
            null,
            stop
        );

    /// <summary>
    /// A test with nothing planted, with the others of its class that are asked for: it must pass, and says how long it takes at most. Run once, however often it is
    /// asked.
    /// </summary>
    /// <returns>What is wrong; null where it passes.</returns>
    public Task<(string? Wrong, TimeSpan Took)> Unspoiled(string test, CancellationToken stop) =>
        unspoiled
            .GetOrAdd(
                Together(test),
                names =>
                    new(async () =>
                    {
                        Ran ran = await Run(names.Split(' '), 0, null, stop);
                        return (
                            ran.Exit == 0
                                ? Missing(names, ran)
                                : $"{names} fails with nothing planted:\n{ran.Said}",
                            ran.Took
                        );
                    })
            )
            .Value;

    /// <summary>What is run as one while nothing is planted.</summary>
    public string Together(string test) =>
        test.Contains('.') ? string.Join(' ', methods[ClassOf(test)]) : test;

    /// <summary>Whether tests see a mutant.</summary>
    /// <returns>The test that fails, or that the time ran out; null where all pass.</returns>
    public async Task<string?> Killer(
        Mutant mutant,
        IEnumerable<string> tests,
        CancellationToken stop
    )
    {
        foreach (string test in tests)
        {
            (string? wrong, TimeSpan took) = await Unspoiled(test, stop);
            if (wrong is not null)
            {
                throw new InvalidDataException(wrong);
            }

            // What takes many times as long as it should is in a loop without end, or so slow that nobody would wait for it.
            TimeSpan limit =
                ((mutant.Endless ? 4 : 12) * took) + TimeSpan.FromSeconds(mutant.Endless ? 15 : 60);
            Ran ran = await Run([test], mutant.Id, limit, stop);
            if (Missing(test, ran) is { } missing)
            {
                throw new InvalidDataException(missing);
            }

            if (ran.Exit is null && mutant.Endless)
            {
                return $"{test}, which does not end";
            }

            if (ran.Exit is not (null or 0))
            {
                Match failed = Failed().Match(ran.Said);
                return failed.Success ? failed.Groups[1].Value : $"{test} (exit {ran.Exit})";
            }
        }

        return null;
    }

    private static string ClassOf(string test) => test.Split('.')[0];

    private static string? Missing(string test, Ran ran) =>
        ran.Exit == 0 && NoTest().IsMatch(ran.Said)
            ? $"{test}: there is no such test; name in the list the one that it became"
            : null;

    private Task<Ran> Run(string[] tests, int mutant, TimeSpan? limit, CancellationToken stop) =>
        Tool.Run(
            Path.GetDirectoryName(Program)!,
            [
                Program,
                "-noColor",
                "-noLogo",
                "-stopOnFail",
                .. tests.SelectMany(t =>
                    new[] { t.Contains('.') ? "-method" : "-class", $"*.{t}" }
                ),
            ],
            mutant,
            limit,
            stop
        );

    [GeneratedRegex(@"Total: 0,")]
    private static partial Regex NoTest();

    [GeneratedRegex(@"(\w+\.\w+)(\(.*\))? \[FAIL\]")]
    private static partial Regex Failed();
}
