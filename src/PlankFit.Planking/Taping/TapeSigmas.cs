using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>What one reading of each kind is out by itself, one standard deviation, mm.</summary>
public static class TapeSigmas
{
    public static double Of(TrustSpec spec, TapeKind kind) =>
        TrustSpec.Sigma(
            kind switch
            {
                TapeKind.HalfBreadth => spec.StringWithinMm,
                TapeKind.Height => spec.LevelWithinMm,
                _ => spec.TapeWithinMm,
            }
        );
}
