namespace PlankFit.Planking.Glue.Mixing;

/// <summary>A round mixing cup, measured inside. Straight where its slope is none.</summary>
/// <param name="BottomRadiusMm">Of its bottom.</param>
/// <param name="Slope">By how much the radius grows for each mm of height.</param>
public sealed record Cup(double BottomRadiusMm, double Slope)
{
    /// <summary>To its rim; endless where it is not known.</summary>
    public double RimMm { get; init; } = double.PositiveInfinity;

    /// <summary>The part of its height to which it is filled, so that it can be stirred: a proposal, no source.</summary>
    public const double FilledTo = 0.8;

    /// <summary>How high a volume stands in it, mm. A frustum of slope s: π ((r + s h)³ - r³)/(3 s) = V.</summary>
    public double HeightMm(double litres)
    {
        double mm3 = litres * 1e6,
            straight = mm3 / (Math.PI * BottomRadiusMm * BottomRadiusMm);
        if (Slope == 0)
        {
            return straight;
        }

        // Written so that a slope of next to nothing loses no digits.
        double x = 3 * Slope * straight / BottomRadiusMm;
        double root = Math.Cbrt(1 + x);
        return 3 * straight / ((root * root) + root + 1);
    }

    /// <summary>What stands in it up to a height, litres.</summary>
    public double Litres(double heightMm)
    {
        double top = BottomRadiusMm + (Slope * heightMm);
        return Math.PI
            * heightMm
            * ((BottomRadiusMm * BottomRadiusMm) + (BottomRadiusMm * top) + (top * top))
            / 3e6;
    }
}
