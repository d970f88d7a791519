namespace PlankFit.Planking.Glue.Mixing;

/// <summary>
/// Glass and resin by mass. With w the glass, kg/m², and c the glass content, its part of the mass of both, the resin is w (1/c - 1); thicknesses are masses
/// over densities. Densities in kg a litre.
/// </summary>
public static class GlassInResin
{
    /// <summary>Usual densities: glass 2.54, epoxy 1.15 (figures of boat-building forums, read there).</summary>
    public const double GlassKgPerLitre = 2.54;

    /// <summary>kg/m² of resin and hardener together.</summary>
    public static double ResinKgPerM2(double glassKgPerM2, double glassContent) =>
        glassKgPerM2 * ((1 / glassContent) - 1);

    /// <summary>Cured, without voids, mm.</summary>
    public static double ThicknessMm(
        double glassKgPerM2,
        double glassContent,
        double glassKgPerLitre,
        double resinKgPerLitre
    ) =>
        (glassKgPerM2 / glassKgPerLitre)
        + (ResinKgPerM2(glassKgPerM2, glassContent) / resinKgPerLitre);

    /// <summary>Glass as a part of the volume.</summary>
    public static double FibreVolume(
        double glassContent,
        double glassKgPerLitre,
        double resinKgPerLitre
    )
    {
        double glass = glassContent / glassKgPerLitre,
            resin = (1 - glassContent) / resinKgPerLitre;
        return glass / (glass + resin);
    }
}
