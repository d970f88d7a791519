using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>How large the two corner pieces of a row are: greatest distance from their one seam, and length along it, mm.</summary>
internal readonly record struct CornerPiece(double WidthMm, double LengthMm)
{
    /// <summary>Narrower than a quarter of the width or shorter than the width: a sliver that no one wants to fit.</summary>
    public bool IsSliver(double stockWidthMm) =>
        WidthMm < stockWidthMm / 4 || LengthMm < stockWidthMm;

    /// <summary>Part of what is asked that the piece reaches, 1 when it is large enough.</summary>
    public double Worth(double stockWidthMm) =>
        Math.Min(1, Math.Min(WidthMm / (stockWidthMm / 4), LengthMm / stockWidthMm));

    public static CornerPiece Forward(LayerRegion region, SeamRow row, Tracing tracing) =>
        Beyond(region, row.Seams[0], BoundaryWalk.Ahead(row.Seams[0]), tracing);

    public static CornerPiece Aft(LayerRegion region, SeamRow row, Tracing tracing) =>
        Beyond(region, row.Seams[^1], BoundaryWalk.Behind(row.Seams[^1]), tracing);

    private static CornerPiece Beyond(
        LayerRegion region,
        Seam seam,
        IReadOnlyList<BoundaryPiece> pieces,
        Tracing tracing
    )
    {
        double width = 0;
        foreach (BoundaryPiece piece in pieces)
        {
            for (int i = 0; i <= 8; i++)
            {
                Uv uv = region.OnLap(piece.From + ((piece.To - piece.From) * i / 8), piece.Edge);
                width = Math.Max(width, DistanceFrom(region, seam, uv, tracing));
            }
        }

        return new(width, seam.LengthMm);
    }

    private static double DistanceFrom(LayerRegion region, Seam seam, Uv uv, Tracing tracing)
    {
        Vec3 point = region.PointAt(uv);
        double best = seam.MiddleS,
            least = double.PositiveInfinity;
        for (int i = 0; i <= 30; i++)
        {
            double s = seam.Line.From + ((seam.Line.To - seam.Line.From) * i / 30);
            double d = seam.Line.Under(s).P.ChordTo(point);
            (best, least) = d < least ? (s, d) : (best, least);
        }

        return Math.Abs(
            new FermiStrip(seam.Line, tracing.PerpendicularStepMm)
                .Find(uv, point, new(best, 0), 1e-3)
                .T
        );
    }
}

/// <summary>Choosing the master's shift so that neither corner is left a sliver.</summary>
internal static class CornerShift
{
    private const int TriesEachWay = 8;

    /// <summary>The row with the least shift, at most half a width either way, whose corner pieces are both large enough; failing that the one whose worse corner is best.</summary>
    public static SeamRow Choose(
        LayerRegion region,
        PlankLayerSpec spec,
        double baseShiftMm,
        bool mayShift,
        Tracing tracing,
        CancellationToken stop
    )
    {
        SeamRow? best = null;
        double bestWorth = -1;
        for (int i = 0; i <= (mayShift ? 2 * TriesEachWay : 0); i++)
        {
            stop.ThrowIfCancellationRequested();
            double shift =
                (i % 2 == 0 ? -1 : 1) * ((i + 1) / 2) * spec.WidthMm / (2 * TriesEachWay);
            SeamRow row;
            try
            {
                row = SeamFamily.Lay(region, spec, baseShiftMm + shift, tracing);
            }
            catch (JobFaultException) when (best is not null)
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

        return best!;
    }
}
