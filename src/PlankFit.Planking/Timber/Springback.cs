namespace PlankFit.Planking.Timber;

/// <summary>
/// What a clamp must hold while the glue sets: an estimate. A strip bent to curvature k carries the moment M = E w t³/12 k; where it falls to nothing one
/// clamp's spacing c to either side, the clamp between holds 2 M/c. Twist asks for a pair of forces at the plank's edges, T/w, with T = G w t³/3 τ
/// (Saint-Venant, thin strip) and G = E/16 (Wood Handbook's ratios for Douglas-fir are 0.064 and 0.078, second hand).
/// </summary>
public static class Springback
{
    public const double ShearPart = 1.0 / 16;

    public static double MomentNmm(
        double modulusMPa,
        double widthMm,
        double thicknessMm,
        double curvature
    ) => modulusMPa * widthMm * Math.Pow(thicknessMm, 3) / 12 * curvature;

    /// <summary>Newtons a clamp.</summary>
    /// <param name="twist">Radians per mm.</param>
    public static double ClampNewtons(
        double modulusMPa,
        double widthMm,
        double thicknessMm,
        double curvature,
        double twist,
        double spacingMm
    ) =>
        (2 * MomentNmm(modulusMPa, widthMm, thicknessMm, curvature) / spacingMm)
        + (modulusMPa * ShearPart * Math.Pow(thicknessMm, 3) / 3 * twist);
}
