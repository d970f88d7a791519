using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Keel;

/// <summary>What the keel's layers name, against the job and its table.</summary>
internal static class KeelChecks
{
    /// <summary>Half-breadths that the edge of a keel layer needs to have a run.</summary>
    private const int LeastPoints = 3;

    public static IEnumerable<Finding> Of(PlankingJob job)
    {
        foreach (KeelLayerSpec layer in job.Keel.Layers)
        {
            if (!job.Layers.OfType<PlankLayerSpec>().Any(p => p.Name == layer.Meets))
            {
                yield return Fault(
                    $"keel layer '{layer.Name}' meets '{layer.Meets}', and no layer of planks has that name"
                );
            }

            if (layer.HalfWidth is not KeelHalfWidth.Line(var name))
            {
                continue;
            }

            if (job.Offsets.Find(name) is not { } line)
            {
                yield return Fault(OffsetTable.NoLine(name));
            }
            else if (line.HalfBreadthsMm.Count(y => y is not null) is < LeastPoints and var points)
            {
                yield return Fault(
                    $"the line '{name}' has {NumberText.Count(points, "half-breadth")}; a keel layer's half-width needs three at least"
                );
            }
        }
    }

    private static Finding Fault(string message) => new(Severity.Error, "keel", message);
}
