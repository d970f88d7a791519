using System.Collections.Immutable;
using System.Globalization;

namespace PlankFit.Reading.Editing;

/// <summary>The first text of a job: the fewest values that planks are laid by, each put in as a person typed it. Whether it will do is the reader's to say.</summary>
public static class NewJob
{
    public const int MostLayers = 4;

    /// <summary>The table lies beside it under this name.</summary>
    public const string Table = "offsets.csv";

    /// <summary>What such a job is told; its table lies beside it, and no other file can be named.</summary>
    private static readonly ImmutableHashSet<string> Told =
    [
        "job.name",
        "job.units",
        "hull.offsets-are-to",
        "hull.keel",
        "hull.chine",
        "layer[0].thickness",
        "layer[0].width",
        "layer[0].heads",
        "layer[0].angle",
    ];

    private const string Head = """
        [job]
        name = ""
        units = "mm"

        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = ""
        chine = ""

        """;

    private const string Layer = """

        [[layer]]
        name = ""
        thickness = 0
        width = 0
        heads = "aft"
        angle = 45

        """;

    /// <param name="typed">By the addresses of the job's values; of layers those of the first: "job.name", "layer[0].width".</param>
    /// <param name="layers">From the inside out, all alike but for the way that they head: by turns.</param>
    /// <returns>Null where it asks for a value that such a job has not, or one that is no value.</returns>
    public static string? Of(IReadOnlyDictionary<string, string> typed, int layers)
    {
        if (layers is < 1 or > MostLayers || !Told.IsSupersetOf(typed.Keys))
        {
            return null;
        }

        string? text = Head + string.Concat(Enumerable.Repeat(Layer, layers));
        foreach ((string address, string value) in Values(typed, layers))
        {
            text = text is null ? null : JobChange.Of(text, address, value);
        }

        return text;
    }

    private static IEnumerable<(string Address, string Value)> Values(
        IReadOnlyDictionary<string, string> typed,
        int layers
    )
    {
        const string first = "layer[0].";
        for (int i = 0; i < layers; i++)
        {
            yield return (At(i) + "name", NameOf(i, layers));
        }

        foreach ((string address, string value) in typed)
        {
            if (!address.StartsWith(first, StringComparison.Ordinal))
            {
                yield return (address, value);
                continue;
            }

            for (int i = 0; i < layers; i++)
            {
                yield return (
                    At(i) + address[first.Length..],
                    address == first + "heads" && i % 2 == 1 ? Other(value) : value
                );
            }
        }
    }

    private static string At(int layer) =>
        string.Create(CultureInfo.InvariantCulture, $"layer[{layer}].");

    private static string Other(string heads) => heads == "aft" ? "forward" : "aft";

    private static string NameOf(int layer, int of) =>
        of == 1 ? "skin"
        : layer == 0 ? "inner"
        : layer == of - 1 ? "outer"
        : of == 3 ? "middle"
        : string.Create(CultureInfo.InvariantCulture, $"middle {layer}");
}
