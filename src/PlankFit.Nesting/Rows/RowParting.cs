using PlankFit.Nesting.Shapes;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Whether a saw parts a row, cut by cut from edge to edge. Any two neighbours have room for a straight kerf; but over a thing that is too short the kerf beside
/// it, carried on, comes upon the neighbour's neighbour.
/// </summary>
internal static class RowParting
{
    private const double NearMm = 1e-9;

    /// <summary>Where one more thing may begin behind a row that can be parted, so that it still can, mm.</summary>
    /// <param name="fromMm">Where each pair by itself has room for a kerf.</param>
    public static double From(
        List<(RowShape Shape, double FromMm)> row,
        RowShape next,
        double fromMm,
        double kerfMm
    )
    {
        if (row.Count < 2 || IsHidden(row))
        {
            return fromMm;
        }

        double behindAll = row.Min(r => r.FromMm) + Pitch.Of(RowShape.Of(row), next, kerfMm);
        return behindAll <= fromMm + NearMm || IsParted([.. row, (next, fromMm)], kerfMm)
            ? fromMm
            : behindAll;
    }

    /// <summary>All of a row lies behind the side of its last thing that looks to what follows: a kerf that clears the last clears all.</summary>
    private static bool IsHidden(List<(RowShape Shape, double FromMm)> row)
    {
        (RowShape last, double from) = row[^1];
        for (int i = 0; i + 1 < row.Count; i++)
        {
            if (
                row[i].Shape.HeightMm > last.HeightMm
                || row[i].FromMm + row[i].Shape.LengthMm > from + last.LeastRightMm
            )
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// A first cut somewhere, and further ones on both sides of it. What lies before the last thing can be parted whatever is taken from it, so that only what
    /// the last is in is to be looked at.
    /// </summary>
    private static bool IsParted(List<(RowShape Shape, double FromMm)> row, double kerfMm)
    {
        bool[] parted = new bool[row.Count];
        parted[^1] = true;
        for (int first = row.Count - 2; first >= 0; first--)
        {
            for (int cut = first + 1; cut < row.Count && !parted[first]; cut++)
            {
                parted[first] = parted[cut] && IsCut(row[first..cut], row[cut..], kerfMm);
            }
        }

        return parted[0];
    }

    private static bool IsCut(
        List<(RowShape Shape, double FromMm)> before,
        List<(RowShape Shape, double FromMm)> after,
        double kerfMm
    ) =>
        before.Min(r => r.FromMm) + Pitch.Of(RowShape.Of(before), RowShape.Of(after), kerfMm)
        <= after.Min(r => r.FromMm) + NearMm;
}
