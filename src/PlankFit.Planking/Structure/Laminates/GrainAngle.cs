namespace PlankFit.Planking.Structure.Laminates;

/// <summary>What wood has at an angle to its grain, from what it has along and across it alone.</summary>
public static class GrainAngle
{
    /// <summary>
    /// Hankinson's rule, a·b/(a sinⁿ + b cosⁿ): for strength in compression with n = 2, for stiffness with 1.5 to 2. It knows nothing of shear: with n = 2 it gives less
    /// stiffness between the two than the ply's own axes do (<see cref="PlyMaterial.ModulusAt"/>) where wood is as stiff in shear as handbooks have it.
    /// </summary>
    /// <param name="along">Along the grain; <paramref name="across"/> square to it, in the same unit.</param>
    /// <param name="degrees">Between the grain and the line that is asked for.</param>
    public static double Hankinson(double along, double across, double degrees, double power = 2)
    {
        (double s, double c) = Math.SinCos(degrees * Math.PI / 180);
        return along
            * across
            / ((along * Math.Pow(Math.Abs(s), power)) + (across * Math.Pow(Math.Abs(c), power)));
    }
}
