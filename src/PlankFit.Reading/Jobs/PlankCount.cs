using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Jobs;

/// <summary>About how many planks a layer would have, before any is laid: a width with the wrong unit makes a hundred thousand.</summary>
internal static class PlankCount
{
    public static ImmutableArray<Finding> Check(JobDraft draft, Job job)
    {
        double length = job.Offsets.Stations[^1].PositionMm - job.Offsets.Stations[0].PositionMm;
        double breadth = job.Offsets.Lines.SelectMany(l => l.HalfBreadthsMm).Max(mm => mm ?? 0);
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        ImmutableArray<LayerSpec> layers = [.. job.Layers, .. job.Panels.SelectMany(p => p.Layers)];
        ImmutableArray<Place> widthsAt =
        [
            .. draft.WidthsAt,
            .. draft.Panels.SelectMany(p => p.WidthsAt),
        ];
        for (int i = 0; i < layers.Length; i++)
        {
            if (layers[i] is not PlankLayerSpec layer)
            {
                continue;
            }

            double angle = double.DegreesToRadians(layer.AngleDegrees),
                across = (length * Math.Sin(angle)) + (breadth * Math.Abs(Math.Cos(angle))),
                planks = across / layer.WidthMm;
            if (planks > Bounds.Planks)
            {
                string about = Math.Min(1e9, Math.Round(planks))
                    .ToString("0", CultureInfo.InvariantCulture);
                findings.Add(
                    new(
                        Severity.Error,
                        i < widthsAt.Length ? widthsAt[i].ToString() : "the job",
                        $"layer {Quoted.Of(layer.Name)} would have about {about} planks on each side, of {LengthText.ForPaper(layer.WidthMm, job.Units)} on {LengthText.ForPaper(length, job.Units)} of hull, and this program takes up to {Bounds.Planks}: is a unit wrong, of the width or of the table's positions?"
                    )
                );
            }
        }

        return findings.ToImmutable();
    }
}
