using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fastenings;

/// <summary>Length = pad + skins and cloth passed + bite, rounded up to one that can be had whose point stays in the wood.</summary>
public static class FasteningLengths
{
    /// <summary>Wood left before the point of a fastening in a timber, mm; and in a skin. Proposals without a source.</summary>
    public const double PointCoverMm = 3;
    public const double SkinCoverMm = 1;

    private const double NoiseMm = 1e-6;

    /// <summary>Where the job names no lengths: steps of 5 mm, or of 1/8 in where inches are used.</summary>
    public static double StepMm(LengthUnit units) =>
        LengthUnits.IsMetric(units) ? 5 : LengthUnits.MmPerInch / 8;

    /// <summary>Into the timber behind a layer.</summary>
    public static ChosenLength IntoBacking(
        FasteningRule rule,
        string backing,
        double passedMm,
        double? depthMm,
        double stepMm
    )
    {
        double wanted = rule.BiteMm ?? FasteningRule.NailBiteMm(passedMm);
        if (rule.BiteMm is null && depthMm is { } depth)
        {
            wanted = Math.Min(wanted, Math.Max(0, depth - PointCoverMm));
        }

        return Chosen(
            new(FasteningUse.Backing, backing, rule.PadMm, passedMm, wanted, depthMm, null, 0),
            PointCoverMm,
            rule.LengthsMm,
            stepMm
        );
    }

    /// <summary>Between timbers: a screw through all skins to a loose block, a staple through the skin and what cloth is under it into the skins below.</summary>
    /// <param name="wholeMm">Of all layers up to and with this one.</param>
    /// <param name="toSkinBelowMm">Of this skin and the cloth between it and the skin below.</param>
    public static ChosenLength PullDown(
        PullDownRule rule,
        double wholeMm,
        double toSkinBelowMm,
        double stepMm
    )
    {
        bool screw = rule.Kind == FasteningKind.ScrewAndPad;
        double passed = screw ? wholeMm : toSkinBelowMm,
            depth = screw ? rule.BlockMm : wholeMm - toSkinBelowMm,
            wanted = rule.BiteMm ?? (2 * depth / 3);
        return Chosen(
            new(FasteningUse.PullDown, null, rule.PadMm, passed, wanted, depth, null, 0),
            screw ? PointCoverMm : SkinCoverMm,
            rule.LengthsMm,
            stepMm
        );
    }

    private static ChosenLength Chosen(
        ChosenLength asked,
        double coverMm,
        ImmutableArray<double> lengths,
        double stepMm
    )
    {
        double through = asked.PadMm + asked.PassedMm,
            least = through + asked.WantedBiteMm,
            most = asked.DepthMm is { } depth ? through + depth - coverMm : double.PositiveInfinity;
        double? length = lengths.IsEmpty
            ? ByStep(least, most, through, stepMm)
            : ByList(least, most, through, lengths);
        return asked with { LengthMm = length, BiteMm = length is { } mm ? mm - through : 0 };
    }

    /// <summary>The shortest that bites as asked and stays in; failing that the longest that stays in.</summary>
    private static double? ByList(
        double least,
        double most,
        double through,
        ImmutableArray<double> lengths
    )
    {
        double[] stay = [.. lengths.Where(l => l <= most + NoiseMm && l > through + NoiseMm)];
        double[] bite = [.. stay.Where(l => l >= least - NoiseMm)];
        return bite.Length > 0 ? bite.Min()
            : stay.Length > 0 ? stay.Max()
            : null;
    }

    private static double? ByStep(double least, double most, double through, double step)
    {
        double up = Math.Ceiling((least - NoiseMm) / step) * step;
        if (up <= most + NoiseMm && up > through + NoiseMm)
        {
            return up;
        }

        double down = Math.Floor((most + NoiseMm) / step) * step;
        return double.IsFinite(down) && down > through + NoiseMm ? down : null;
    }
}
