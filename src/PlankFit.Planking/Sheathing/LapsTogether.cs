using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Sheathing;

/// <summary>Laps at the keel of two cloths that end on one line: the step is twice as high there, and a ridge prints through.</summary>
internal static class LapsTogether
{
    /// <summary>Nearer than this the edges of two laps count as one, mm: a proposal, no source.</summary>
    private const double ApartMm = 15;

    /// <summary>By so much more each next lap goes past the centre line, a round figure in the job's own lengths, mm: a proposal, no source.</summary>
    private static double MoreMm(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 25 : LengthUnits.MmPerInch;

    public static IEnumerable<Finding> Of(IReadOnlyList<SheathedLayer> layers, LengthUnit unit)
    {
        for (int i = 1; i < layers.Count; i++)
        {
            if (Past(layers[i]) is not { } mine)
            {
                continue;
            }

            SheathedLayer? same = layers
                .Take(i)
                .FirstOrDefault(l => Past(l) is { } other && Math.Abs(other - mine) < ApartMm);
            if (same is not null)
            {
                yield return new(
                    Severity.Note,
                    Subject.OfLayer(layers[i].Name) with
                    {
                        Key = "sheathing.keel",
                    },
                    $"its lap at the keel ends where that of {same.Name} does, to less than {LengthText.ForPaper(ApartMm, unit)}: give one of them {LengthText.ForPaper(MoreMm(unit), unit)} more past the centre line, so that the steps lie beside each other (a proposal, no source)"
                );
            }
        }
    }

    private static double? Past(SheathedLayer layer) =>
        layer.Spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 } past ? past.Mm : null;
}
