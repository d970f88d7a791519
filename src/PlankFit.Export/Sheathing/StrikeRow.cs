using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheathing;

/// <summary>Where a piece's two edges are struck on the roll, square across at one place along it.</summary>
/// <param name="AlongMm">From where the piece begins.</param>
/// <param name="LowMm">Of its lower edge, from the roll's edge that is drawn below.</param>
internal sealed record StrikeRow(
    CutRoll Roll,
    PieceOnRoll Piece,
    double AlongMm,
    double LowMm,
    double HighMm
)
{
    public static IEnumerable<StrikeRow> Of(CutRoll roll, PieceOnRoll piece, LengthUnit unit)
    {
        const double apartMm = 40;
        double every = LengthUnits.IsMetric(unit) ? 500 : 18 * LengthUnits.MmPerInch,
            length = piece.Piece.LengthMm;
        double[] corners = [0, .. Corners(piece.Outline).Select(x => x - piece.FromMm), length];
        foreach (
            double at in Enumerable
                .Range(1, (int)(length / every))
                .Select(i => i * every)
                .Where(x => corners.All(c => Math.Abs(c - x) > apartMm))
                .Concat(corners)
                .Order()
                .Select(x => Math.Clamp(Math.Round(x, 3), 0, length))
                .Distinct()
        )
        {
            if (Across(piece.Outline, piece.FromMm + at) is { } ends)
            {
                yield return new(roll, piece, at, ends.Low, ends.High);
            }
        }
    }

    /// <summary>Where along the roll the outline turns a corner.</summary>
    private static IEnumerable<double> Corners(ImmutableArray<Vec2> outline)
    {
        const double cornerRad = 0.3,
            leastMm = 1;
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 at = outline[i],
                came = at - outline[(i + outline.Length - 1) % outline.Length],
                goes = outline[(i + 1) % outline.Length] - at;
            if (
                came.Norm > leastMm
                && goes.Norm > leastMm
                && Math.Abs(Math.Atan2(came.Cross(goes), came.Dot(goes))) > cornerRad
            )
            {
                yield return at.X;
            }
        }
    }

    private static (double Low, double High)? Across(ImmutableArray<Vec2> outline, double x)
    {
        const double onMm = 1e-6;
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 a = outline[i],
                b = outline[(i + 1) % outline.Length];
            if (Math.Min(a.X, b.X) > x + onMm || Math.Max(a.X, b.X) < x - onMm)
            {
                continue;
            }

            double part =
                Math.Abs(b.X - a.X) < onMm ? 0 : Math.Clamp((x - a.X) / (b.X - a.X), 0, 1);
            double one = a.Y + (part * (b.Y - a.Y)),
                other = Math.Abs(b.X - a.X) < onMm ? b.Y : one;
            low = Math.Min(low, Math.Min(one, other));
            high = Math.Max(high, Math.Max(one, other));
        }

        return low <= high ? (low, high) : null;
    }
}
