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
    public static IReadOnlyList<(RollShape Shape, double X, double Y)>? Shorter(
        (RollShape Shape, double Y)[][] ways,
        double thanMm
    )
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

        List<(RollShape, double, double)> laid = [];
        (RollShape, double, double)[]? best = null;
        bool[] has = new bool[ways.Length];
        Next(0);
        return best;

        void Next(double reachMm)
        {
            if (laid.Count == ways.Length)
            {
                (best, thanMm) = ([.. laid], reachMm);
                return;
            }

            for (int piece = 0; piece < ways.Length; piece++)
            {
                if (has[piece])
                {
                    continue;
                }

                has[piece] = true;
                foreach ((RollShape shape, double y) in ways[piece])
                {
                    double x = From(shape, y),
                        reach = Math.Max(reachMm, x + shape.LengthMm);
                    if (reach < thanMm - HairMm)
                    {
                        laid.Add((shape, x, y));
                        Next(reach);
                        laid.RemoveAt(laid.Count - 1);
                    }
                }

                has[piece] = false;
            }
        }

        double From(RollShape shape, double y)
        {
            double x = 0;
            foreach ((RollShape before, double bx, double by) in laid)
            {
                if (before.Pitch(by, shape, y) is { } pitch)
                {
                    x = Math.Max(x, bx + pitch);
                }
            }

            return x;
        }
    }
}
