namespace PlankFit.Planking.Sheathing;

/// <summary>Of few pieces every order, turning and height is tried, each piece pushed as far as those before it let it.</summary>
internal static class RollTrial
{
    /// <summary>Of so many ways all are tried; of more none.</summary>
    private const double Most = 20_000;

    private const double HairMm = 1e-6;

    /// <param name="ways">For each piece how it may be turned, and how high it may lie.</param>
    /// <param name="thanMm">What was found already.</param>
    /// <returns>The shortest of all ways; null where none is shorter, or where there are too many to try.</returns>
    public static IReadOnlyList<LaidWay>? Shorter(RollWay[][] ways, double thanMm)
    {
        double all = 1;
        for (int i = 0; i < ways.Length; i++)
        {
            all *= (i + 1) * ways[i].Length;
        }

        if (all > Most)
        {
            return null;
        }

        (int Piece, RollWay Way)[] each =
        [
            .. ways.SelectMany((w, piece) => w.Select(way => (piece, way))),
        ];
        // How far apart two of them must lie is asked for again and again.
        double?[,] apart = Apart(each);
        List<(int Way, double X)> laid = [];
        (int Way, double X)[]? best = null;
        bool[] has = new bool[ways.Length];
        Next(0);
        return best is null
            ? null
            : [.. best.Select(l => new LaidWay(each[l.Way].Piece, each[l.Way].Way, l.X))];

        void Next(double reachMm)
        {
            if (laid.Count == ways.Length)
            {
                (best, thanMm) = ([.. laid], reachMm);
                return;
            }

            for (int way = 0; way < each.Length; way++)
            {
                int piece = each[way].Piece;
                if (has[piece])
                {
                    continue;
                }

                double x = From(way),
                    reach = Math.Max(reachMm, x + each[way].Way.Shape.LengthMm);
                if (reach < thanMm - HairMm)
                {
                    has[piece] = true;
                    laid.Add((way, x));
                    Next(reach);
                    laid.RemoveAt(laid.Count - 1);
                    has[piece] = false;
                }
            }
        }

        double From(int way)
        {
            double x = 0;
            foreach ((int before, double bx) in laid)
            {
                if (apart[before, way] is { } pitch)
                {
                    x = Math.Max(x, bx + pitch);
                }
            }

            return x;
        }
    }

    private static double?[,] Apart((int Piece, RollWay Way)[] each)
    {
        double?[,] apart = new double?[each.Length, each.Length];
        for (int i = 0; i < each.Length; i++)
        {
            for (int j = 0; j < each.Length; j++)
            {
                apart[i, j] =
                    each[i].Piece == each[j].Piece ? null : each[i].Way.Pitch(each[j].Way);
            }
        }

        return apart;
    }
}
