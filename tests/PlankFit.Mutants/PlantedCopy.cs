using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace PlankFit.Mutants;

/// <summary>
/// All mutants at once in a copy of the sources: each expression becomes a choice between itself and what is planted, by a number read once from the
/// environment. One build serves them all.
/// </summary>
internal static class PlantedCopy
{
    public const string Variable = "PLANKFIT_MUTANT";

    private static readonly string[] LeftBehind = ["bin", "obj", "output", "TestResults"];
    private static readonly string[] Projects = ["PlankFit.Mutants", "PlankFit.Benchmarks"];

    private const string SwitchFile = "src/PlankFit.Geometry/PlantedMutant.cs";

    private const string Switch = $$"""
        namespace PlankFit.Geometry;

        public static class PlantedMutant
        {
            private static readonly int Planted =
                int.TryParse(System.Environment.GetEnvironmentVariable("{{Variable}}"), out int id) ? id : 0;

            public static bool Is(int id) => id == Planted;
        }
        """;

    /// <returns>Of every mutant that has no place: why, and what to do.</returns>
    public static ImmutableArray<string> Plant(
        ImmutableArray<Mutant> mutants,
        string checkout,
        out ImmutableDictionary<string, string> texts
    )
    {
        ImmutableArray<string>.Builder lost = ImmutableArray.CreateBuilder<string>();
        ImmutableDictionary<string, string>.Builder planted = ImmutableDictionary.CreateBuilder<
            string,
            string
        >();
        foreach (IGrouping<string, Mutant> file in mutants.GroupBy(m => m.File))
        {
            string path = Path.Combine(checkout, file.Key);
            if (!File.Exists(path))
            {
                lost.AddRange(
                    file.Select(m => $"{m}: there is no such file; name the one that it moved to")
                );
                continue;
            }

            string source = File.ReadAllText(path);
            SyntaxNode root = CSharpSyntaxTree.ParseText(source).GetRoot();
            var places = new List<(TextSpan Span, Mutant Mutant)>();
            foreach (Mutant mutant in file)
            {
                (TextSpan? span, string why) = PlaceInSource.Of(mutant, source, root);
                if (span is { } s && places.Exists(p => p.Span.OverlapsWith(s)))
                {
                    (span, why) = (null, "it overlaps another; choose another expression");
                }

                if (span is { } at)
                {
                    places.Add((at, mutant));
                }
                else
                {
                    lost.Add($"{mutant}\n    {why} (line {mutant.ListLine} of the list)");
                }
            }

            foreach ((TextSpan span, Mutant m) in places.OrderByDescending(p => p.Span.Start))
            {
                string was = source[span.Start..span.End];
                source =
                    source[..span.Start]
                    + $"(global::PlankFit.Geometry.PlantedMutant.Is({m.Id}) ? ({m.Now}) : ({was}))"
                    + source[span.End..];
            }

            planted[file.Key] = source;
        }

        texts = planted.ToImmutable();
        return lost.ToImmutable();
    }

    /// <summary>Why a folder cannot be the copy: it would be one that somebody needs. Null where it can.</summary>
    public static string? Unfit(string checkout, string copy)
    {
        string inside = Path.GetRelativePath(checkout, Path.GetFullPath(copy));
        return !inside.StartsWith("..", StringComparison.Ordinal) && !Path.IsPathRooted(inside)
                ? $"{copy} lies in the checkout; name a folder outside it"
            : Directory.Exists(copy)
            && Directory.EnumerateFileSystemEntries(copy).Any()
            && !File.Exists(Path.Combine(copy, SwitchFile))
                ? $"{copy} holds something else; name a new folder, or one that was used for this before"
            : null;
    }

    /// <summary>Copies the sources and writes the planted ones over them; what is there already and alike is left, so that a copy that was kept is built the faster.</summary>
    public static void Write(
        string checkout,
        string copy,
        ImmutableDictionary<string, string> planted
    )
    {
        var there = new HashSet<string>(StringComparer.Ordinal);
        void Put(string relative, byte[] bytes)
        {
            string path = Path.GetFullPath(Path.Combine(copy, relative));
            there.Add(path);
            if (!File.Exists(path) || !File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, bytes);
            }
        }

        foreach (string file in Files(checkout))
        {
            string relative = Path.GetRelativePath(checkout, file).Replace('\\', '/');
            Put(
                relative,
                planted.TryGetValue(relative, out string? text)
                    ? Encoding.UTF8.GetBytes(text)
                    : File.ReadAllBytes(file)
            );
        }

        Put(SwitchFile, Encoding.UTF8.GetBytes(Switch));

        // What was there the last time and is gone since.
        foreach (string file in Files(copy).Where(f => !there.Contains(Path.GetFullPath(f))))
        {
            File.Delete(file);
        }
    }

    private static string[] Files(string top) =>
        [
            .. Directory.EnumerateFiles(top).Where(f => Path.GetFileName(f) != ".git"),
            .. new[] { "src", "tests", "hulls" }.SelectMany(f => Under(Path.Combine(top, f))),
        ];

    private static IEnumerable<string> Under(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Concat(
                Directory
                    .EnumerateDirectories(folder)
                    .Where(d =>
                        !LeftBehind.Contains(Path.GetFileName(d))
                        && !Projects.Contains(Path.GetFileName(d))
                    )
                    .SelectMany(Under)
            );
}
