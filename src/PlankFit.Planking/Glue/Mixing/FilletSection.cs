namespace PlankFit.Planking.Glue.Mixing;

/// <summary>A fillet in the corner between two faces, rounded hollow and tangent to both.</summary>
/// <param name="AngleDegrees">Open between the faces: 90 in a square corner.</param>
public readonly record struct FilletSection(double RadiusMm, double AngleDegrees)
{
    private double Half => AngleDegrees * Math.PI / 360;

    /// <summary>r² (cot(a/2) - (π - a)/2): the kite of centre and corner without its sector.</summary>
    public double AreaMm2 => RadiusMm * RadiusMm * ((1 / Math.Tan(Half)) - ((Math.PI / 2) - Half));

    /// <summary>From the corner along each face.</summary>
    public double LegMm => RadiusMm / Math.Tan(Half);

    /// <summary>From the corner to the hollow.</summary>
    public double ThroatMm => RadiusMm * ((1 / Math.Sin(Half)) - 1);
}
