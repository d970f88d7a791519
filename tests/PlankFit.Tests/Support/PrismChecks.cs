using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>
/// What a tape reads on the inner face of a prism's layer, in closed form: on a plane seams are straight and parallel, a width apart, at the stock's angle.
/// </summary>
internal static class PrismChecks
{
    private const string Hook = "3";

    public static BottomPlan With(Prism prism)
    {
        BottomPlan plan = PrismaticPlan.Build(prism);
        return plan with
        {
            Layers =
            [
                .. plan.Layers.Select(l =>
                    l is PlankLayerPlan p ? p with { Checks = Of(prism, p) } : l
                ),
            ],
        };
    }

    /// <summary>x at which the seam after the plank of that number crosses a distance along the slant; 0 for the forward seam of the first.</summary>
    public static double SeamX(Prism prism, PlankLayerPlan layer, int afterNumber, double slantMm)
    {
        double middle = (prism.KeelHalfBreadthMm + prism.HalfBeamMm) / 2 / Math.Cos(prism.Deadrise),
            angle = prism.AngleDegrees * Math.PI / 180,
            lean = (layer.Planks.Heads == Heads.Aft ? 1 : -1) / Math.Tan(angle),
            seam =
                prism.MasterMm
                + ((afterNumber - layer.MasterNumber + 0.5) * prism.WidthMm / Math.Sin(angle));
        return seam + ((slantMm - middle) * lean);
    }

    private static ImmutableArray<SeamCheck> Of(Prism prism, PlankLayerPlan layer)
    {
        double inner = layer.NeutralOffsetMm - (prism.ThicknessMm / 2),
            keel = prism.KeelMm(inner),
            chine = prism.ChineMm,
            hook = prism.LengthMm / 2,
            angle = prism.AngleDegrees * Math.PI / 180,
            length = (chine - keel) / Math.Sin(angle);
        ImmutableArray<SeamCheck>.Builder checks = ImmutableArray.CreateBuilder<SeamCheck>();
        // Planks that run from keel to chine: at the ends of the bottom a reading goes to stem or transom, which is left to the planking's own tests.
        foreach (int number in new[] { 10, 15, 20, layer.MasterNumber }.Distinct().Order())
        {
            TapedSeam Seam(int after) =>
                new(
                    new(PanelEdge.Lower, Hook, SeamX(prism, layer, after, keel) - hook),
                    new(PanelEdge.Upper, Hook, SeamX(prism, layer, after, chine) - hook),
                    length
                );
            double along =
                    SeamX(prism, layer, number, chine) - SeamX(prism, layer, number - 1, keel),
                diagonal = Math.Sqrt((along * along) + ((chine - keel) * (chine - keel)));
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                checks.Add(
                    new(
                        PlankId.OfBottom(side, layer.Number, number),
                        Seam(number - 1),
                        Seam(number),
                        diagonal
                    )
                );
            }
        }

        return checks.ToImmutable();
    }
}
