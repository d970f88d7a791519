namespace PlankFit.Planking.Wood;

/// <summary>
/// The strain of laying a flat plank on a surface that is curved both ways, K w²/12 along the grain at its edges (Horikawa and Tarumi 2022, E11 = K B² (r² − 1/3)/2);
/// the middle has half of it with the other sign. Twist that comes with bend and cup to match (K = 0) costs none.
/// </summary>
public static class FlatStrain
{
    /// <param name="gauss">Gauss curvature, 1/mm²; its sign does not matter.</param>
    public static double AtEdges(double gauss, double widthMm) =>
        Math.Abs(gauss) * widthMm * widthMm / 12;

    /// <summary>The width that has just this strain at its edges; null where any width may.</summary>
    public static double? WidestMm(double gauss, double strain) =>
        gauss == 0 ? null : Math.Sqrt(12 * strain / Math.Abs(gauss));
}
