using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Wood;

/// <summary>Which way the grain of plywood's faces runs against the plank.</summary>
public enum FaceGrain
{
    Along,
    Across,
}

/// <summary>
/// The least radii to which Douglas-fir plywood panels are bent dry, published by APA, The Engineered Wood Association, form V345 (concrete form panels):
/// thickness in inches, radius in feet, bent across the face grain and along it.
/// </summary>
public static class PlywoodRadii
{
    public const string Source = "APA form V345, least dry radii of Douglas-fir panels";

    public static readonly ImmutableArray<(
        double ThicknessInch,
        double AcrossFeet,
        double AlongFeet
    )> Published =
    [
        (1.0 / 4, 2, 5),
        (5.0 / 16, 2, 6),
        (3.0 / 8, 3, 8),
        (1.0 / 2, 6, 12),
        (5.0 / 8, 8, 16),
        (3.0 / 4, 12, 20),
    ];

    /// <summary>
    /// Least dry radius over thickness: the published ratio, between two thicknesses on the straight line between their ratios; thinner and thicker panels
    /// take the ratio of the nearest one (our own carrying on: the table ends at 1/4 and 3/4 in).
    /// </summary>
    /// <param name="face">A plank bends along its length: with the face grain along the plank the radius is the greater one.</param>
    public static double LeastRadiusOverThickness(double thicknessMm, FaceGrain face)
    {
        double t = thicknessMm / LengthUnits.MmPerInch;
        double Ratio(int i) =>
            12
            * (face == FaceGrain.Along ? Published[i].AlongFeet : Published[i].AcrossFeet)
            / Published[i].ThicknessInch;
        if (t <= Published[0].ThicknessInch)
        {
            return Ratio(0);
        }

        for (int i = 1; i < Published.Length; i++)
        {
            if (t <= Published[i].ThicknessInch)
            {
                double from = Published[i - 1].ThicknessInch,
                    part = (t - from) / (Published[i].ThicknessInch - from);
                return Ratio(i - 1) + (part * (Ratio(i) - Ratio(i - 1)));
            }
        }

        return Ratio(Published.Length - 1);
    }
}
