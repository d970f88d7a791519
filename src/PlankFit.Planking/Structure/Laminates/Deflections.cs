namespace PlankFit.Planking.Structure.Laminates;

/// <summary>How far plates and beams give way, mm, by the beam formulas; small deflections, no edge that pulls.</summary>
public static class Deflections
{
    /// <summary>A long panel between two stringers under an even pressure, held so at both that it cannot turn: p L⁴/(384 D).</summary>
    /// <param name="stiffness">N mm² for each mm of width.</param>
    public static double HeldPanelMm(double pressureMPa, double spanMm, double stiffness) =>
        pressureMPa * Math.Pow(spanMm, 4) / (384 * stiffness);

    /// <summary>The same where it may turn at both: five times as much.</summary>
    public static double RestingPanelMm(double pressureMPa, double spanMm, double stiffness) =>
        5 * HeldPanelMm(pressureMPa, spanMm, stiffness);

    /// <summary>A strip on two rests, loaded in the middle: F L³/(48 EI b).</summary>
    public static double CouponMm(
        double newtons,
        double spanMm,
        double widthMm,
        double stiffness
    ) => newtons * Math.Pow(spanMm, 3) / (48 * stiffness * widthMm);

    /// <summary>The load under which such a strip of one stuff goes down so far, N: 48 E b h³ d/(12 L³).</summary>
    public static double StripNewtons(
        double modulusMPa,
        double thicknessMm,
        double widthMm,
        double spanMm,
        double downMm
    ) => 48 * modulusMPa * widthMm * Math.Pow(thicknessMm, 3) / 12 * downMm / Math.Pow(spanMm, 3);

    /// <summary>What shear adds to it: F L/(4 · 5/6 · G b h).</summary>
    public static double CouponShearMm(
        double newtons,
        double spanMm,
        double widthMm,
        double thicknessMm,
        double shearMPa
    ) => newtons * spanMm / (4 * (5.0 / 6) * shearMPa * widthMm * thicknessMm);

    /// <summary>Stiffness of a sandwich over that of its faces laid together, at so many times their depth, the core's own counted for nothing: n³ - (n - 1)³.</summary>
    public static double SandwichRatio(double depths) =>
        Math.Pow(depths, 3) - Math.Pow(depths - 1, 3);
}
