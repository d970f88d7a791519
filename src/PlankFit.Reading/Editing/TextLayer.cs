using System.Collections.Immutable;
using PlankFit.Reading.Panels;

namespace PlankFit.Reading.Editing;

/// <summary>A layer of planks in the text of a job.</summary>
/// <param name="Table">Its address: layer[2].</param>
/// <param name="Name">As messages call it.</param>
/// <param name="Panel">The panel that it names; null for the bottom.</param>
/// <param name="Number">From the inside out among the planks of its panel, from 1.</param>
/// <param name="Written">The values that stand there, by key.</param>
public sealed record TextLayer(
    string Table,
    string Name,
    string? Panel,
    int Number,
    ImmutableDictionary<string, string> Written
)
{
    public string? Heads => Written.GetValueOrDefault(LayerKeys.Heading.Name);

    /// <summary>Those of all panels, in the order of the file; none where it cannot be read.</summary>
    public static IEnumerable<TextLayer> All(string text)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        int table = 0;
        foreach (
            IGrouping<string, JobField> layer in JobFields
                .Of(text)
                .Where(f => f.Table.StartsWith("layer[", StringComparison.Ordinal))
                .GroupBy(f => f.Table.Split('.')[0])
        )
        {
            string? Of(string key) =>
                layer.FirstOrDefault(f => f.Address == $"{layer.Key}.{key}")?.Written;
            table++;
            if (Of(LayerKeys.Cloth.Name) == "cloth")
            {
                continue;
            }

            string? panel =
                Of(LayerKeys.Panel.Name) is { } named && named != Planking.Hulls.Panel.BottomName
                    ? named
                    : null;
            int number = numbers[panel ?? ""] = numbers.GetValueOrDefault(panel ?? "") + 1;
            yield return new(
                layer.Key,
                Of(LayerKeys.Name.Name) ?? $"layer {table}",
                panel,
                number,
                layer
                    .Where(f => f.Written is not null && f.Address == $"{layer.Key}.{f.Key.Name}")
                    .ToImmutableDictionary(f => f.Key.Name, f => f.Written!)
            );
        }
    }
}
