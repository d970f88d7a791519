using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>Which layers of a job's text are changed.</summary>
internal static class VariedLayers
{
    /// <param name="asked">Names them; where it names none, all planks of the bottom are meant, or of the panels where the bottom is bare.</param>
    public static (ImmutableArray<TextLayer> Layers, ImmutableArray<Finding> Findings) Of(
        string text,
        CompareAsked asked
    )
    {
        TextLayer[] all = [.. TextLayer.All(text)];
        if (asked.Layers.IsEmpty)
        {
            TextLayer[] bottom = [.. all.Where(l => l.Panel is null)];
            return ([.. bottom.Length > 0 ? bottom : all], []);
        }

        List<TextLayer> found = [];
        List<Finding> faults = [];
        foreach (string name in asked.Layers.Select(n => n.Trim()))
        {
            TextLayer[] meant =
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
}
