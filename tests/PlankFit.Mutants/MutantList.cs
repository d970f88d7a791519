using System.Collections.Immutable;

namespace PlankFit.Mutants;

/// <summary>
/// The list as text: lines of a word and what belongs to it, with empty lines and lines from # on left out. `area` begins an area and `all` names its tests;
/// `in` begins a mutant by its file, and after it come `find` (the place, with the expression between ⟦ and ⟧), `plant`, `tests`, and where they apply `equal`
/// and `lives` with the reason, and `endless`.
/// </summary>
internal sealed record MutantList(ImmutableArray<Area> Areas, ImmutableArray<Mutant> Mutants)
{
    public static MutantList Read(string path)
    {
        ImmutableArray<Area>.Builder areas = ImmutableArray.CreateBuilder<Area>();
        ImmutableArray<Mutant>.Builder mutants = ImmutableArray.CreateBuilder<Mutant>();
        int number = 0;
        foreach (string line in File.ReadLines(path))
        {
            number++;
            string text = line.Trim();
            if (text.Length == 0 || text[0] == '#')
            {
                continue;
            }

            string word = text.Split(' ')[0],
                rest = text[word.Length..].Trim();
            InvalidDataException Wrong(string what) => new($"{path}({number}): {what}");
            switch (word)
            {
                case "area":
                    areas.Add(new(rest, []));
                    break;
                case "all" when areas.Count > 0:
                    areas[^1] = areas[^1] with { Tests = Words(rest) };
                    break;
                case "in" when areas.Count > 0:
                    mutants.Add(
                        new(
                            mutants.Count + 1,
                            number,
                            areas[^1].Name,
                            rest,
                            "",
                            "",
                            "",
                            "",
                            [],
                            null,
                            null,
                            false
                        )
                    );
                    break;
                default:
                    if (mutants.Count == 0)
                    {
                        throw Wrong($"\"{word}\" belongs to no mutant; begin one by \"in FILE\"");
                    }

                    mutants[^1] =
                        With(mutants[^1], word, rest)
                        ?? throw Wrong(
                            $"\"{text}\" is not understood; a mutant has find (with ⟦ and ⟧), plant, tests, equal, lives, endless"
                        );
                    break;
            }
        }

        foreach (Mutant m in mutants)
        {
            if (m.Was.Length == 0 || m.Now.Length == 0 || (m.Tests.IsEmpty && m.Equal is null))
            {
                throw new InvalidDataException(
                    $"{path}({m.ListLine}): a mutant needs find, plant, and tests or equal"
                );
            }
        }

        return new(areas.ToImmutable(), mutants.ToImmutable());
    }

    private static Mutant? With(Mutant mutant, string word, string rest) =>
        word switch
        {
            "find" => Found(mutant, rest.Split('⟦', '⟧')),
            "plant" => mutant with { Now = rest },
            "tests" => mutant with { Tests = Words(rest) },
            "equal" => mutant with { Equal = rest },
            "lives" => mutant with { Lives = rest },
            "endless" => mutant with { Endless = true },
            _ => null,
        };

    private static Mutant? Found(Mutant mutant, string[] parts) =>
        parts.Length == 3
            ? mutant with
            {
                Before = parts[0],
                Was = parts[1],
                After = parts[2],
            }
            : null;

    private static ImmutableArray<string> Words(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
