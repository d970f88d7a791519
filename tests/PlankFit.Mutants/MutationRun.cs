using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;

namespace PlankFit.Mutants;

/// <summary>Plants, builds, runs and reports.</summary>
/// <param name="Some">How many to look at, spread evenly over the list; null for all.</param>
/// <param name="Only">Looks at those alone whose area or file has this in it; null for all.</param>
/// <param name="Copy">Where the planted copy is made and left; null for a folder of its own that is removed.</param>
/// <param name="PlacesOnly">Whether to end once all are found in the sources, which takes a moment only.</param>
/// <param name="Killers">Whether every mutant is told with the test that sees it.</param>
internal sealed record MutationRun(
    string Checkout,
    int? Some,
    string? Only,
    string? Copy,
    bool PlacesOnly,
    bool Killers
)
{
    private const int Abreast = 2;
    private const int TellEvery = 25;

    /// <returns>0 where every area has its score; 1 where one has not; 2 where the list or the sources are at fault.</returns>
    public async Task<int> Go(CancellationToken stop)
    {
        var watch = Stopwatch.StartNew();
        var list = MutantList.Read(
            Path.Combine(Checkout, "tests", "PlankFit.Mutants", "mutants.txt")
        );
        ImmutableArray<Mutant> all = [.. list.Mutants.Where(m => m.Equal is null)];
        ImmutableArray<string> lost = PlantedCopy.Plant(
            list.Mutants,
            Checkout,
            out ImmutableDictionary<string, string> planted
        );
        if (!lost.IsEmpty)
        {
            Console.WriteLine(
                $"{lost.Length} of {list.Mutants.Length} mutants cannot be planted; mend tests/PlankFit.Mutants/mutants.txt:"
            );
            Console.WriteLine(string.Join("\n", lost));
            return 2;
        }

        if (PlacesOnly)
        {
            Console.WriteLine($"each of {list.Mutants.Length} mutants has its place");
            return 0;
        }

        if (Copy is not null && PlantedCopy.Unfit(Checkout, Copy) is { } unfit)
        {
            Console.WriteLine(unfit);
            return 2;
        }

        string copy = Copy ?? Directory.CreateTempSubdirectory("plankfit-mutants-").FullName;
        try
        {
            return await InCopy(copy, planted, list, Chosen(all), watch, stop);
        }
        finally
        {
            if (Copy is null)
            {
                Directory.Delete(copy, recursive: true);
            }
        }
    }

    private async Task<int> InCopy(
        string copy,
        ImmutableDictionary<string, string> planted,
        MutantList list,
        ImmutableArray<Mutant> chosen,
        Stopwatch watch,
        CancellationToken stop
    )
    {
        PlantedCopy.Write(Checkout, copy, planted);
        var tests = new TestProgram(copy, chosen.SelectMany(m => m.Tests));
        Ran built = await tests.Build(stop);
        if (built.Exit != 0)
        {
            Console.WriteLine($"the planted copy does not build:\n{built.Said}");
            return 2;
        }

        Say($"{chosen.Length} mutants planted and built");
        string[] used = [.. chosen.SelectMany(m => m.Tests).DistinctBy(tests.Together)];
        var wrong = new ConcurrentBag<string>();
        await Each(
            used,
            async test =>
            {
                if ((await tests.Unspoiled(test, stop)).Wrong is { } why)
                {
                    wrong.Add(why);
                }
            },
            stop
        );
        if (!wrong.IsEmpty)
        {
            Console.WriteLine(string.Join("\n", wrong));
            return 2;
        }

        Say($"the tests of {used.Length} classes pass with nothing planted");
        var verdicts = new ConcurrentDictionary<int, Verdict>();
        int judged = 0;

        // What takes longest first.
        await Each(
            chosen.OrderByDescending(m => m.Endless).ThenByDescending(m => m.Lives is not null),
            async m =>
            {
                IEnumerable<string> judges = m.Lives is null
                    ? m.Tests.Concat(list.Areas.First(a => a.Name == m.Area).Tests).Distinct()
                    : m.Tests;
                string? killer = await tests.Killer(m, judges, stop);
                verdicts[m.Id] = new(m, killer);
                Tell(m, killer);
                int done = Interlocked.Increment(ref judged);
                if (done % TellEvery == 0)
                {
                    Say($"{done} of {chosen.Length}");
                }
            },
            stop
        );
        ImmutableArray<Verdict> told = [.. chosen.Select(m => verdicts[m.Id])];
        Say("done");
        foreach (string row in Scores.Table(list.Areas, told, list.Mutants))
        {
            Console.WriteLine(row);
        }

        string[] under =
        [
            .. list
                .Areas.Select(a => a.Name)
                .Where(a =>
                    Scores.Percent([.. told.Where(v => v.Mutant.Area == a)]) < Scores.LeastPercent
                ),
        ];
        if (chosen.Length < list.Mutants.Count(m => m.Equal is null))
        {
            Console.WriteLine("a look at some of them only: no score to go by");
            return 0;
        }

        if (under.Length > 0)
        {
            Console.WriteLine(
                $"under {Scores.LeastPercent} %: {string.Join(", ", under)}; write tests that see what lives"
            );
        }

        return under.Length > 0 ? 1 : 0;

        void Say(string what) => Console.WriteLine($"[{watch.Elapsed:m\\:ss}] {what}");
    }

    private void Tell(Mutant m, string? killer)
    {
        if (killer is null)
        {
            Console.WriteLine(
                $"lives: {m}\n    {m.Lives ?? "nobody has said why: write a test that sees it, or the reason under `lives` or `equal` in the list"}"
            );
        }
        else if (m.Lives is not null)
        {
            Console.WriteLine(
                $"seen by {killer}, though the list says that it lives: {m}\n    take out the reason"
            );
        }
        else if (Killers)
        {
            Console.WriteLine($"seen by {killer}: {m}");
        }
    }

    private ImmutableArray<Mutant> Chosen(ImmutableArray<Mutant> all)
    {
        ImmutableArray<Mutant> asked =
        [
            .. all.Where(m =>
                Only is null
                || m.Area.Contains(Only, StringComparison.OrdinalIgnoreCase)
                || m.File.Contains(Only, StringComparison.OrdinalIgnoreCase)
            ),
        ];
        return Some is { } n && n < asked.Length
            ? [.. Enumerable.Range(0, n).Select(i => asked[(int)((long)i * asked.Length / n)])]
            : asked;
    }

    private static Task Each<T>(IEnumerable<T> of, Func<T, Task> act, CancellationToken stop) =>
        Parallel.ForEachAsync(
            of,
            new ParallelOptions { MaxDegreeOfParallelism = Abreast, CancellationToken = stop },
            async (t, _) => await act(t)
        );
}
