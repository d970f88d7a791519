namespace PlankFit.Planking.Glue.Mixing;

/// <summary>A figure that is not known better than within a range: the least, what is usual and the most.</summary>
public readonly record struct Estimate(double Least, double Usual, double Most)
{
    public static readonly Estimate Zero = new(0, 0, 0);

    public static Estimate Exactly(double value) => new(value, value, value);

    public static Estimate operator *(double factor, Estimate e) =>
        new(factor * e.Least, factor * e.Usual, factor * e.Most);

    /// <summary>Both at their ends at once: of amounts that hang on one and the same rate.</summary>
    public static Estimate operator +(Estimate a, Estimate b) =>
        new(a.Least + b.Least, a.Usual + b.Usual, a.Most + b.Most);

    /// <summary>The ends added up: it cannot be more, and it cannot be less.</summary>
    public static Estimate Bounds(IEnumerable<Estimate> parts) =>
        parts.Aggregate(Zero, (sum, part) => sum + part);

    /// <summary>
    /// What is likely of parts whose rates have nothing to do with each other: their departures from what is usual, added as squares (JCGM 100:2008, 5.1.2).
    /// </summary>
    public static Estimate Likely(IEnumerable<Estimate> parts)
    {
        double usual = 0,
            below = 0,
            above = 0;
        foreach (Estimate part in parts)
        {
            usual += part.Usual;
            below += Math.Pow(part.Usual - part.Least, 2);
            above += Math.Pow(part.Most - part.Usual, 2);
        }

        return new(usual - Math.Sqrt(below), usual, usual + Math.Sqrt(above));
    }
}
