using System.Collections.Immutable;
using PlankFit.Draughting.Bodies;
using PlankFit.Export.Shown;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Solids;

/// <summary>A point that is put through a plank, on its outer face.</summary>
/// <param name="Plank">Its place in the order of the packed bodies.</param>
public readonly record struct ShownPoint(int Plank, PointUse Use, Vec3 At);

/// <summary>What is shown beside the planks: keel layers and what lies behind as bodies, fastenings as points.</summary>
/// <param name="Lacking">By kind, what to add to the job for what it does not have.</param>
public sealed record ShownParts(
    ImmutableArray<Body> Bodies,
    ImmutableArray<ShownPoint> Points,
    ImmutableArray<(string Kind, string Words)> Lacking
)
{
    public const string Keel = "keel",
        Behind = "behind",
        Fastenings = "fastenings";

    public static ShownParts Of(BottomPlan plan)
    {
        ImmutableArray<Body> keel = [.. OnPlanks.Of(plan).Bodies()],
            behind = [.. plan.Panels.SelectMany(p => BehindBodies.Of(OnPlanks.Of(p)))];
        ImmutableArray<ShownPoint> points = [.. PointsOf(plan)];
        return new(keel.AddRange(behind), points, [.. Lacks(keel, behind, points)]);
    }

    private static IEnumerable<(string, string)> Lacks(
        ImmutableArray<Body> keel,
        ImmutableArray<Body> behind,
        ImmutableArray<ShownPoint> points
    )
    {
        if (keel.IsEmpty)
        {
            yield return (
                Keel,
                "The job has no keel layers: add a [[keel-layer]] for each (plankfit help keel)."
            );
        }

        if (behind.IsEmpty)
        {
            yield return (
                Behind,
                "The job names nothing behind the planks: add a [[behind]] for each stringer and frame (plankfit help behind)."
            );
        }

        if (points.IsEmpty)
        {
            yield return (
                Fastenings,
                "The job asks for no fastenings: add [fastenings] (plankfit help fastenings)."
            );
        }
    }

    private static IEnumerable<ShownPoint> PointsOf(BottomPlan plan)
    {
        int place = 0;
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            double half = layer.Spec.ThicknessMm / 2;
            foreach (Plank plank in Enum.GetValues<Side>().SelectMany(s => layer.On(s)))
            {
                foreach (
                    (Vec2 at, PointUse use) in OnPlanks
                        .Of(panel)
                        .Added.SelectMany(a => a.Points(plank))
                )
                {
                    yield return new(place, use, OnPlank.At(plank, at, half));
                }

                place++;
            }
        }
    }
}
