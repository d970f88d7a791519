using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>
/// A keel layer whose side is square to the planks and whose half-width is off its mitre, on plane bottoms: planks end on the plane that holds the layer's outer
/// edge and the bottom's normal, and nowhere in the keel.
/// </summary>
public sealed class SquareSideTests
{
    private const double Keel = 9;

    public static TheoryData<double, double, double> Sides =>
        new()
        {
            { 28, 0, 2 },
            { 28, 0, -2 },
            { 28, 5, 2 },
            { 12, -3, 1.5 },
            { 40, 4, 0 },
        };

    [Theory]
    [MemberData(nameof(Sides))]
    public void PlanksEndAtTheKeelsOuterEdge(double deadrise, double slope, double offMm)
    {
        double mitre = Planned(deadrise, slope, new KeelHalfWidth.Mitre())
            .Keel!.Layers[0]
            .Stations[0]
            .WantedHalfWidthMm;
        BottomPlan plan = Planned(
            deadrise,
            slope,
            new KeelHalfWidth.Tapered(mitre + offMm, mitre + offMm)
        );
        double tb = Math.Tan(deadrise * Math.PI / 180),
            tp = Math.Tan(slope * Math.PI / 180);
        Vec3 normal = new Vec3(tp, tb, -1).Unit(),
            edge = new(0, mitre + offMm, -Keel * Math.Sqrt(1 + (tp * tp))),
            run = new(1, 0, tp),
            side = normal.Cross(run).Unit();
        side = side.Y < 0 ? -side : side;

        // The keel's inner face runs up the table's keel line, and its outer face lies its thickness from it.
        KeelSideLaws.Side off = (p, _) => Math.Abs(side.Dot(p - edge));
        (double worst, string where) = KeelSideLaws.Worst(plan, plan.PlankLayers.First(), off);
        Assert.True(worst < 1e-5, $"{where}: {worst} mm off the keel's side");

        // What is told of each plank: as far along its own line as from the side that is there to one at the mitre.
        Vec3 mitred = edge - (offMm * Vec3.UnitY);
        int held = 0;
        foreach (
            KeelPlankEnd told in plan.Keel!.Layers[0]
                .PlankEnds.Where(e => e.PlankId.Side == Side.Starboard)
        )
        {
            Plank plank = plan.Find(told.PlankId)!;
            if (plank.Kind is PlankKind.Corner)
            {
                continue;
            }

            Vec3 end = plank.Ends.First(e => e.At == PanelEdge.Lower).Outline[0],
                grain = (plank.ForwardEdge.Seam[^1] - plank.ForwardEdge.Seam[0]).Unit();
            Assert.Equal(side.Dot(mitred - end) / side.Dot(grain), told.LengthChangeMm, 1e-4);
            Assert.Equal(0, told.BevelDegrees);
            Assert.Equal(0, told.CutChangeDegrees, 1e-6);
            held++;
        }

        Assert.True(held > 20);
        Assert.All(
            plan.Keel.Layers[0].Stations,
            r => Assert.Equal(Math.Atan(tb) * 180 / Math.PI, r.Angles.BevelDegrees, 1e-6)
        );
    }

    private static BottomPlan Planned(double deadrise, double slope, KeelHalfWidth width) =>
        WholeBottomTests.Planned(
            PlaneBottom.Job(deadrise, slope, 9, 1, OffsetsAreTo.Inside) with
            {
                Keel = KeelSpec.None with
                {
                    Layers =
                    [
                        PlaneBottom.KeelLayer("first layer", "inner", Keel) with
                        {
                            HalfWidth = width,
                            Side = new KeelLayerSide.SquareToPlank(),
                        },
                    ],
                },
            }
        );
}
