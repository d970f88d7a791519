using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>A layer of planks in the text of a job.</summary>
/// <param name="Table">Its address: layer[2].</param>
/// <param name="Name">As messages call it.</param>
/// <param name="Panel">The panel that it names; null for the bottom.</param>
/// <param name="Number">From the inside out among the planks of its panel, from 1.</param>
/// <param name="Heads">As it stands there.</param>
internal sealed record VariedLayer(
    string Table,
    string Name,
    string? Panel,
    int Number,
    string? Heads
);

/// <summary>Which layers of a job's text are changed.</summary>
internal static class VariedLayers
{
    /// <param name="asked">Names them; where it names none, all planks of the bottom are meant, or of the panels where the bottom is bare.</param>
    public static (ImmutableArray<VariedLayer> Layers, ImmutableArray<Finding> Findings) Of(
        string text,
        CompareAsked asked
    )
    {
        VariedLayer[] all = [.. All(text)];
        if (asked.Layers.IsEmpty)
        {
            VariedLayer[] bottom = [.. all.Where(l => l.Panel is null)];
            return ([.. bottom.Length > 0 ? bottom : all], []);
        }

        List<VariedLayer> found = [];
        List<Finding> faults = [];
        foreach (string name in asked.Layers.Select(n => n.Trim()))
        {
            VariedLayer[] meant =
            [
                .. all.Where(l => l.Name == name),
                .. all.Where(l => l.Panel is null && $"{l.Number}" == name),
            ];
            if (meant.Length == 0)
            {
                faults.Add(
                    new(
                        Severity.Error,
                        $"{asked.Mark}layer {name}",
                        $"the job has no layer of planks of this name or number; it has {string.Join(", ", all.Select(l => Quoted.Of(l.Name)))}"
                    )
                );
            }
            else
            {
                found.Add(meant[0]);
            }
        }

        return ([.. found.Distinct()], [.. faults]);
    }

    private static IEnumerable<VariedLayer> All(string text)
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

            string? panel = Of(LayerKeys.Panel.Name);
            int number = numbers[panel ?? ""] = numbers.GetValueOrDefault(panel ?? "") + 1;
            yield return new(
                layer.Key,
                Of(LayerKeys.Name.Name) ?? $"layer {table}",
                panel,
                number,
                Of(LayerKeys.Heading.Name)
            );
        }
    }
}
