using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Trust;

/// <summary>How sure every plank of a bottom is, on its table and what was taped.</summary>
internal static class TrustPlanner
{
    /// <summary>One in twenty on one side of a normal error.</summary>
    private const double OneInTwenty = 0.05;

    /// <param name="known">Of the table's cells after what was taped; null where nothing was.</param>
    /// <param name="toWhatWasTaped">Whether the planks are laid to what was taped.</param>
    public static TrustPlan Of(
        TrustSpec spec,
        Planked planked,
        Sensitivities slopes,
        SidesKnown? known = null,
        bool toWhatWasTaped = false,
        CancellationToken stop = default
    )
    {
        Sureness sure = known is null
            ? Sureness.Of(spec, slopes)
            : Sureness.OfSides(spec, slopes, known);
        bool InPlace(PlankId id) => planked.Find(id) is { } plank && !Told(plank, sure);
        Matrix<double>[] tables = known is null
            ? [sure.Table]
            : [.. new[] { known.Starboard, known.Port }.Distinct()];
        SampledLengths[] samples =
        [
            .. tables.Select(t => SampledLengths.Of(planked, slopes.Cells, t, InPlace, stop)),
        ];
        ImmutableArray<LayerTrust> layers =
        [
            .. planked.PlankLayers.Select(l => Layer(spec, sure, samples, l)),
        ];
        return new(
            sure,
            layers,
            [.. TrustFindings.Of(spec, planked, slopes, layers, toWhatWasTaped)]
        );
    }

    /// <summary>So many standard deviations, that none of so many errors goes beyond to one side, 19 times in 20: by Bonferroni's bound, which holds however they hang together.</summary>
    public static double NoneBeyond(int count) =>
        Normal.InvCDF(0, 1, 1 - (OneInTwenty / Math.Max(1, count)));

    private static LayerTrust Layer(
        TrustSpec spec,
        Sureness sure,
        SampledLengths[] samples,
        PlankLayerPlan layer
    )
    {
        double oneSided = NoneBeyond(1);
        int count = layer.Starboard.Count(p => Told(p, sure));
        double none = NoneBeyond(count);
        return new(
            layer.Number,
            layer.Planks.Name,
            [
                .. layer.Starboard.Select(p =>
                {
                    double? Within(NumberKind kind) =>
                        Told(p, sure) ? sure.WithinOf(new(p.Id, kind)) : null;
                    double? length = Within(NumberKind.Length),
                        sigma = length / TrustSpec.Within;
                    return new PlankTrust(p.Id)
                    {
                        LengthMm = length,
                        InPlaceMm = length is null ? samples.Max(s => s.WithinOf(p.Id)) : null,
                        InboardMm = Within(NumberKind.Inboard),
                        OutboardMm = Within(NumberKind.Outboard),
                        InboardDegrees = Within(NumberKind.InboardAngle),
                        OutboardDegrees = Within(NumberKind.OutboardAngle),
                        BevelDegrees = Within(NumberKind.Bevel),
                        OneInTwentyMm = oneSided * sigma,
                        NoneShortMm = none * sigma,
                        MayFitBothEnds = length <= spec.SawWhenMm,
                    };
                }),
            ]
        )
        {
            NoneShortSigmas = none,
        };
    }

    /// <summary>A corner piece has one seam alone, and its length is what is left.</summary>
    private static bool Told(Plank plank, Sureness sure) =>
        plank.Kind != PlankKind.Corner
        && sure.SigmaOf(new(plank.Id, NumberKind.Length)) is not null;
}
