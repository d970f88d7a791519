using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>How lengths of planks and seams hang on the table, from the slopes of all numbers of the plan as drawn.</summary>
public static class PlankSloper
{
    /// <summary>Half of what a mark is moved by for the slope of a tape between two, mm.</summary>
    private const double StepMm = 1;

    private static readonly (NumberKind, NumberKind, NumberKind) AfterSeam = (
        NumberKind.AfterSeam,
        NumberKind.AfterKeelMark,
        NumberKind.AfterChineMark
    );

    private static readonly (NumberKind, NumberKind, NumberKind) ForwardSeam = (
        NumberKind.ForwardSeam,
        NumberKind.ForwardKeelMark,
        NumberKind.ForwardChineMark
    );

    private static readonly (NumberKind, NumberKind, NumberKind) Diagonal = (
        NumberKind.Diagonal,
        NumberKind.ForwardKeelMark,
        NumberKind.AfterChineMark
    );

    public static PlankSlopes Of(Planked planked, TrustSpec trust, Sensitivities of)
    {
        var loft = new TapedLoft(planked.Job with { AsBuilt = Jobs.AsBuiltSpec.None });
        Vector<double> sizes = Vector<double>.Build.DenseOfArray([
            TrustSpec.Sigma(trust.StockWidthWithinMm),
            TrustSpec.Sigma(trust.StockThicknessWithinMm),
        ]);
        return new([
            .. planked
                .PlankLayers.SelectMany(l => l.Starboard)
                .Select(p => p.Id)
                .Select(id =>
                    of.IndexOf(new(id, NumberKind.Length)) is { } row
                        ? new SlopedPlank(
                            id,
                            of.J.Row(row),
                            of.Stock.Row(row)
                                .PointwiseMultiply(sizes)
                                .DotProduct(of.Stock.Row(row).PointwiseMultiply(sizes)),
                            Seam(planked, loft, of, id, AfterSeam)
                        )
                        {
                            ForwardSeam = Seam(planked, loft, of, id, ForwardSeam),
                            Diagonal = Seam(planked, loft, of, id, Diagonal),
                            Fit = Fit(planked, of, id),
                        }
                        : null
                )
                .OfType<SlopedPlank>(),
        ]);
    }

    private static SlopedFit? Fit(Planked planked, Sensitivities of, PlankId id) =>
        of.IndexOf(new(id, NumberKind.Inboard)) is { } inboard
        && of.IndexOf(new(id, NumberKind.Outboard)) is { } outboard
        && of.IndexOf(new(id, NumberKind.InboardAngle)) is { } atKeel
        && of.IndexOf(new(id, NumberKind.OutboardAngle)) is { } atChine
        && planked.Find(id)?.OnHull.Ends.FirstOrDefault(e => e.At == Hulls.PanelEdge.Lower)
            is { NetLine: [var forward, .., var after] }
            ? new(
                of.Drawn[inboard],
                of.Drawn[outboard],
                of.Drawn[atKeel],
                of.Drawn[atChine],
                // A plank that is tapered is not as wide here as at its widest.
                (after - forward).Norm * Math.Abs(Math.Sin(of.Drawn[atKeel] * Math.PI / 180)),
                of.J.Row(atKeel)
            )
            : null;

    private static SlopedSeam? Seam(
        Planked planked,
        TapedLoft loft,
        Sensitivities of,
        PlankId id,
        (NumberKind Length, NumberKind Keel, NumberKind Chine) kinds
    )
    {
        PlankLayerPlan layer = planked.PlankLayers.First(l => l.Number == id.Layer);
        if (
            of.IndexOf(new(id, kinds.Length)) is not { } seam
            || of.IndexOf(new(id, kinds.Keel)) is not { } keel
            || of.IndexOf(new(id, kinds.Chine)) is not { } chine
            || HookOf(layer) is not { } hook
        )
        {
            return null;
        }

        var marks = new SeamMarks(hook, of.Drawn[keel], of.Drawn[chine]);
        double face = layer.NeutralOffsetMm - (layer.Planks.ThicknessMm / 2);
        double? Rate(double alongKeel, double alongChine) =>
            loft.Between(
                marks with
                {
                    AlongKeelMm = marks.AlongKeelMm + alongKeel,
                    AlongChineMm = marks.AlongChineMm + alongChine,
                },
                face
            )
                is { } more
            && loft.Between(
                marks with
                {
                    AlongKeelMm = marks.AlongKeelMm - alongKeel,
                    AlongChineMm = marks.AlongChineMm - alongChine,
                },
                face
            )
                is { } less
                ? (more - less) / (2 * StepMm)
                : null;
        // A tape between fixed marks: the edge as it is laid on, less what its ends' own run along keel and chine does to it.
        return Rate(StepMm, 0) is { } atKeel && Rate(0, StepMm) is { } atChine
            ? new(
                marks,
                of.Drawn[seam],
                of.J.Row(seam) - (atKeel * of.J.Row(keel)) - (atChine * of.J.Row(chine)),
                of.J.Row(seam)
            )
            : null;
    }

    /// <summary>The station that the layer's marks are measured from.</summary>
    private static string? HookOf(PlankLayerPlan layer) =>
        layer
            .Checks.SelectMany(c => new[] { c.Forward, c.After })
            .OfType<TapedSeam>()
            .SelectMany(s => new[] { s.Inboard, s.Outboard })
            .FirstOrDefault(e => e.At is Hulls.PanelEdge.Lower or Hulls.PanelEdge.Upper)
            ?.From;
}
