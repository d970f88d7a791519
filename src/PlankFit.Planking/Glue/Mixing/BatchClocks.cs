namespace PlankFit.Planking.Glue.Mixing;

/// <summary>What one plank, or one stretch of cloth, asks of a batch.</summary>
/// <param name="Grams">Of mix.</param>
/// <param name="SpreadMinutes">To get it out of the pot and spread.</param>
/// <param name="SetMinutes">To fit and fasten it after that.</param>
public readonly record struct BatchShare(double Grams, double SpreadMinutes, double SetMinutes);

/// <summary>A batch against its two clocks, one after the other, minutes from the beginning of mixing.</summary>
/// <param name="PotUsed">When the pot is empty; it must be before <paramref name="PotAllowed"/>.</param>
/// <param name="FilmUsed">When the last is down; it must be before <paramref name="FilmAllowed"/>.</param>
public readonly record struct BatchClocks(
    double Grams,
    double PotUsed,
    double PotAllowed,
    double FilmUsed,
    double FilmAllowed
)
{
    /// <summary>Nothing here is as exact as this, minutes.</summary>
    private const double Hair = 1e-6;

    public bool Hold => PotUsed <= PotAllowed + Hair && FilmUsed <= FilmAllowed + Hair;

    /// <param name="pot">Minutes that may be used of the pot with that many grams in it.</param>
    /// <param name="filmAllowed">Minutes that may be used of the film.</param>
    public static BatchClocks Of(
        IReadOnlyCollection<BatchShare> shares,
        double mixMinutes,
        Func<double, double> pot,
        double filmAllowed
    )
    {
        double grams = shares.Sum(s => s.Grams),
            spread = shares.Sum(s => s.SpreadMinutes),
            set = shares.Sum(s => s.SetMinutes);
        return new(grams, mixMinutes + spread, pot(grams), mixMinutes + spread + set, filmAllowed);
    }

    /// <summary>How many of those in order make the largest batch; 0 where not even the first is spread and down in time.</summary>
    /// <param name="mostGrams">Above which nothing is known of the pot, or the cup is full.</param>
    public static int Largest(
        IReadOnlyList<BatchShare> shares,
        double mixMinutes,
        Func<double, double> pot,
        double filmAllowed,
        double mostGrams
    )
    {
        int k = 0;
        while (
            k < shares.Count
            && shares.Take(k + 1).Sum(s => s.Grams) <= mostGrams
            && Of([.. shares.Take(k + 1)], mixMinutes, pot, filmAllowed).Hold
        )
        {
            k++;
        }

        return k;
    }
}
