namespace PlankFit.Planking.Structure.Laminates;

/// <summary>What a ply is made of, in its own axes, MPa: along its fibres or grain (1) and across them in its plane (2).</summary>
/// <param name="Nu12">Poisson's ratio: how much it draws in across where it is pulled along.</param>
public sealed record PlyMaterial(double E1, double E2, double G12, double Nu12)
{
    private double Rest => 1 - (Nu12 * Nu12 * E2 / E1);

    internal double Q11 => E1 / Rest;

    internal double Q22 => E2 / Rest;

    internal double Q12 => Nu12 * E2 / Rest;

    internal double Q66 => G12;

    /// <summary>
    /// Of straight fibres in resin, both alike all ways: mixtures along the fibres, Halpin and Tsai's interpolation across them (ξ = 2) and in shear (ξ = 1), as in
    /// Jones, Mechanics of Composite Materials, ch. 3 (from memory).
    /// </summary>
    /// <param name="fibreVolume">Fibres as a part of the whole.</param>
    public static PlyMaterial OfFibres(
        double fibreMPa,
        double fibreNu,
        double resinMPa,
        double resinNu,
        double fibreVolume
    )
    {
        double v = fibreVolume;
        return new(
            (v * fibreMPa) + ((1 - v) * resinMPa),
            Between(fibreMPa, resinMPa, 2),
            Between(fibreMPa / (2 * (1 + fibreNu)), resinMPa / (2 * (1 + resinNu)), 1),
            (v * fibreNu) + ((1 - v) * resinNu)
        );

        double Between(double fibre, double resin, double xi)
        {
            double eta = ((fibre / resin) - 1) / ((fibre / resin) + xi);
            return resin * (1 + (xi * eta * v)) / (1 - (eta * v));
        }
    }

    /// <summary>Stiffness along a line turned by this angle from its fibres, MPa, free to draw in and to shear.</summary>
    public double ModulusAt(double degrees)
    {
        (double s, double c) = Math.SinCos(degrees * Math.PI / 180);
        return 1
            / (
                (Math.Pow(c, 4) / E1)
                + (Math.Pow(s, 4) / E2)
                + (((1 / G12) - (2 * Nu12 / E1)) * s * s * c * c)
            );
    }
}

/// <summary>One ply of a stack.</summary>
/// <param name="Degrees">Of its fibres or grain from x towards y.</param>
/// <param name="KgPerM3">Its density.</param>
public sealed record Ply(
    PlyMaterial Material,
    double ThicknessMm,
    double Degrees,
    double KgPerM3 = 0
);
