using System.Collections.Immutable;
using PlankFit.Draughting.Bodies;
using PlankFit.Export.Framing;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Solids;

/// <summary>
/// What lies behind the planks, as far as they cover it, on the inner face of the first skin: as wide as it is, and as deep as [fastenings] says, or half as deep as
/// wide where the job does not say; a place that is kept open is drawn as a mark on the planks.
/// </summary>
internal static class BehindBodies
{
    private const double OpenMm = 1,
        ThinnedMm = 0.5;

    public static IEnumerable<Body> Of(PlanShown shown)
    {
        BottomPlan plan = shown.Plan;
        if (plan.PlankLayers.FirstOrDefault() is not { } first)
        {
            yield break;
        }

        double half = first.Spec.ThicknessMm / 2;
        foreach (Plank plank in Enum.GetValues<Side>().SelectMany(s => first.On(s)))
        {
            foreach (FramingCrossing crossing in plan.Framing.On(plank.Id))
            {
                Vec2[] ring = [.. Thinning.Closed(crossing.Cover, ThinnedMm)];
                if (ring.Length > 2)
                {
                    yield return Of(plank, crossing.Of, ring, half, Deep(shown, crossing.Of));
                }
            }
        }
    }

    private static double Deep(PlanShown shown, FramingSpec thing) =>
        thing.Kind == FramingKind.Open
            ? OpenMm
            : shown
                .Added.Select(a => a.DepthBehindMm(thing.Name))
                .FirstOrDefault(d => d is not null)
                ?? (thing.WidthMm / 2);

    private static Body Of(Plank plank, FramingSpec thing, Vec2[] ring, double halfMm, double deep)
    {
        ImmutableArray<(Vec3 P, Vec3 Normal)> against =
        [
            .. ring.Select(p => OnPlank.Both(plank, p, -halfMm)),
        ];
        return BodyMaking
            .Between(
                [.. against.Select(a => a.P)],
                [.. against.Select(a => a.P - (deep * a.Normal))],
                [.. against.Select(a => a.Normal)],
                EarClipping.Of(ring)
            )
            .Named(FramingWords.Sided(thing)) with
        {
            Kind = FramingWords.Of(thing.Kind),
        };
    }
}
