namespace PlankFit.Reading.Text;

/// <summary>The known name that a mistyped one most likely stands for.</summary>
public static class NearestName
{
    private const int LeastPart = 4;

    /// <summary>A known name that has the written word for a part; else the nearest of the known names by slips of the keyboard (insert, drop, change, swap), or null where none is near.</summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        if (written.Length > 60)
        {
            return null;
        }

        // A key that said less once: drift for angle-drift. Short words are part of too many.
        if (
            written.Length >= LeastPart
            && known.FirstOrDefault(n =>
                n.Split('-').Contains(written, StringComparer.OrdinalIgnoreCase)
            )
                is { } longer
        )
        {
            return longer;
        }

        string? best = null;
        int least = int.MaxValue;
        foreach (string name in known)
        {
            int slips = Slips(written.ToLowerInvariant(), name.ToLowerInvariant());
            if (slips < least)
            {
                (best, least) = (name, slips);
            }
        }

        return best is not null && least <= Math.Max(2, best.Length / 2) ? best : null;
    }

    /// <summary>Optimal string alignment distance (Damerau 1964, Levenshtein 1966, each pair swapped at most once).</summary>
    private static int Slips(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (int j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(
                    Math.Min(d[i - 1, j], d[i, j - 1]) + 1,
                    d[i - 1, j - 1] + change
                );
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
