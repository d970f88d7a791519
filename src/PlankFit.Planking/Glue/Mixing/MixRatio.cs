namespace PlankFit.Planking.Glue.Mixing;

/// <summary>
/// In which parts resin and hardener are mixed. By volume and by mass these are different numbers: by mass = by volume times the resin's density over the hardener's.
/// </summary>
/// <param name="ResinPerHardener">By volume.</param>
/// <param name="ResinKgPerLitre">Density of the resin; <paramref name="HardenerKgPerLitre"/> that of the hardener.</param>
public readonly record struct MixRatio(
    double ResinPerHardener,
    double ResinKgPerLitre,
    double HardenerKgPerLitre
)
{
    public static MixRatio ByMass(
        double resinPerHardener,
        double resinKgPerLitre,
        double hardenerKgPerLitre
    ) =>
        new(
            resinPerHardener * hardenerKgPerLitre / resinKgPerLitre,
            resinKgPerLitre,
            hardenerKgPerLitre
        );

    /// <summary>Resin over hardener by mass.</summary>
    public double ResinPerHardenerByMass => ResinPerHardener * ResinKgPerLitre / HardenerKgPerLitre;

    /// <summary>Grams of hardener to 100 g of resin.</summary>
    public double HardenerTo100 => 100 / ResinPerHardenerByMass;

    /// <summary>Of the mix.</summary>
    public double KgPerLitre =>
        ((ResinPerHardener * ResinKgPerLitre) + HardenerKgPerLitre) / (ResinPerHardener + 1);

    /// <summary>By how much the hardener would be too much if the volumes' parts were weighed out instead; negative where it would be too little.</summary>
    public double TooMuchIfWeighed => (ResinPerHardenerByMass / ResinPerHardener) - 1;

    /// <summary>Both parts of a mass of mix.</summary>
    public MixParts Parts(double kg)
    {
        double hardener = kg / (ResinPerHardenerByMass + 1);
        double resin = kg - hardener;
        return new(resin, hardener, resin / ResinKgPerLitre, hardener / HardenerKgPerLitre);
    }
}

/// <summary>What goes into a mix, by mass and by volume.</summary>
public readonly record struct MixParts(
    double ResinKg,
    double HardenerKg,
    double ResinLitres,
    double HardenerLitres
)
{
    public double Kg => ResinKg + HardenerKg;

    public double Litres => ResinLitres + HardenerLitres;
}
