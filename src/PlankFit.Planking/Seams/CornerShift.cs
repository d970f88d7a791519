using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>Choosing the master's shift so that neither corner is left a sliver.</summary>
internal static class CornerShift
{
    private const int TriesEachWay = 12;
    private const int MostLaid = 6;

    /// <summary>
    /// The row with the least shift, at most half a width either way, whose corner pieces are both large enough; failing that the one whose worse corner is
    /// best. What a shift would do is foretold from the unshifted row (the corner pieces grow and shrink by what the seams move), and only the promising
    /// shifts are laid.
    /// </summary>
    public static SeamRow Choose(
        LayerRegion region,
        PlankLayerSpec spec,
        double baseShiftMm,
        bool mayShift,
        Tracing tracing,
        CancellationToken stop
    )
    {
        SeamRow best = SeamFamily.Lay(region, spec, baseShiftMm, tracing) with { ShiftMm = 0 };
        CornerPiece forward = CornerPiece.Forward(region, best, tracing),
            aft = CornerPiece.Aft(region, best, tracing);
        double bestWorth = Math.Min(forward.Worth(spec.WidthMm), aft.Worth(spec.WidthMm));
        if (!mayShift || bestWorth >= 1)
        {
            return best;
        }

        double across = Math.Sin(spec.AngleDegrees * Math.PI / 180);
        double Foretold(double shift) =>
            Math.Min(
                Grown(forward, shift * across, spec.WidthMm).Worth(spec.WidthMm),
                Grown(aft, -shift * across, spec.WidthMm).Worth(spec.WidthMm)
            );
        IEnumerable<(double Shift, double Worth)> shifts = Enumerable
            .Range(1, TriesEachWay)
            .SelectMany(i => new[] { i, -i })
            .Select(i => i * spec.WidthMm / (2 * TriesEachWay))
            .Select(shift => (Shift: shift, Worth: Foretold(shift)))
            .OrderByDescending(t => Math.Round(t.Worth, 2))
            .ThenBy(t => Math.Abs(t.Shift))
            .Take(MostLaid);
        foreach ((double shift, _) in shifts)
        {
            stop.ThrowIfCancellationRequested();
            if (TryLay(region, spec, baseShiftMm + shift, tracing) is not { } row)
            {
                continue;
            }

            double worth = Math.Min(
                CornerPiece.Forward(region, row, tracing).Worth(spec.WidthMm),
                CornerPiece.Aft(region, row, tracing).Worth(spec.WidthMm)
            );
            if (worth > bestWorth + 1e-9)
            {
                (best, bestWorth) = (row with { ShiftMm = shift }, worth);
            }

            if (worth >= 1)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>A shifted master may fall off the bottom where the unshifted one did not; then that shift is none.</summary>
    private static SeamRow? TryLay(
        LayerRegion region,
        PlankLayerSpec spec,
        double shiftMm,
        Tracing tracing
    )
    {
        try
        {
            return SeamFamily.Lay(region, spec, shiftMm, tracing);
        }
        catch (Exception e) when (e is JobFaultException || LostPlace.Is(e))
        {
            return null;
        }
    }

    /// <summary>A corner piece whose seam moves away from the corner by so much; a seam enters or leaves at whole widths, and length goes with width.</summary>
    private static CornerPiece Grown(CornerPiece piece, double mm, double stockWidthMm)
    {
        double width = piece.WidthMm + mm;
        width -= stockWidthMm * Math.Floor(width / stockWidthMm);
        return new(width, piece.WidthMm > 1e-6 ? width * piece.LengthMm / piece.WidthMm : width);
    }
}
