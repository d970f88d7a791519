using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

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
        Beyond(region, row.Seams[0], BoundaryWalk.Ahead(region, row.Seams[0]), tracing);

    public static CornerPiece Aft(LayerRegion region, SeamRow row, Tracing tracing) =>
        Beyond(region, row.Seams[^1], BoundaryWalk.Behind(region, row.Seams[^1]), tracing);

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
