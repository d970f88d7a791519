using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>What the keel does to the planks, told in figures, against their own outlines and straight lines met with planes here.</summary>
public sealed class KeelPlankEndTests
{
    private const double Slope = 3;
    private const double Narrow = -1;
    private const double Wide = 5;

    /// <summary>A keel that is 1 mm narrow forward and 5 mm wide aft turns every cut and shortens planks, more so going aft; port and starboard alike.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void LengthsAndCutsChangeAsIsSaid(double leanDegrees)
    {
        double wanted = WholeBottomTests
            .Planned(Job(new KeelHalfWidth.Mitre(), leanDegrees))
            .Keel!.Layers[0]
            .Stations[0]
            .WantedHalfWidthMm;
        BottomPlan plan = WholeBottomTests.Planned(
            Job(new KeelHalfWidth.Tapered(wanted + Narrow, wanted + Wide), leanDegrees)
        );
        double tp = Math.Tan(Slope * Math.PI / 180),
            lean = Math.Tan(leanDegrees * Math.PI / 180);

        // A side at the mitre: its edge runs straight aft along the keel's slope, and it leans outward.
        Vec3 mitred = new(-lean * tp, 1, lean);
        int held = 0;
        foreach (KeelPlankEnd told in plan.Keel!.Layers[0].PlankEnds)
        {
            Plank plank = plan.Find(told.PlankId)!;
            PlankEnd end = plank.Ends.First(e => e.At == PanelEdge.Lower);
            if (plank.Kind is not (PlankKind.Full or PlankKind.Master))
            {
                continue;
            }

            bool port = plank.Side == Side.Port;
            Vec3 There(Vec3 p) => port ? p.MirroredInY() : p;
            Vec3 a = There(end.Outline[0]),
                b = There(end.Outline[^1]),
                middle = 0.5 * (a + b);
            Vec3 grain = (
                There(plank.ForwardEdge.Seam[^1]) - There(plank.ForwardEdge.Seam[0])
            ).Unit();
            double part = (middle.X - 0) / 6000;
            double wide = Narrow + (part * (Wide - Narrow));
            Assert.Equal(-wide / grain.Dot(mitred), told.LengthChangeMm, 0.005);

            // The cut against one parallel to the keel: both chords seen square to the bottom.
            Vec3 chord = b.X > a.X ? b - a : a - b,
                straight = new(1, 0, tp);
            double turned =
                Math.Acos(Math.Min(1, chord.Unit().Dot(straight.Unit()))) * 180 / Math.PI;
            Assert.Equal(turned, Math.Abs(told.CutChangeDegrees), 0.0005);

            // Wider aft: seen from outside to starboard the chord, pointing aft, turns outboard, clockwise towards +s.
            Assert.Equal(port ? 1 : -1, Math.Sign(told.CutChangeDegrees));
            held++;
        }

        Assert.True(held > 40, $"{held} planks");
    }

    [Fact]
    public void AKeelAtItsMitreChangesNothing() =>
        Assert.All(
            WholeBottomTests
                .Planned(Job(new KeelHalfWidth.Mitre(), 0))
                .Keel!.Layers.SelectMany(l => l.PlankEnds),
            e =>
            {
                Assert.Equal(0, e.LengthChangeMm, 1e-9);
                Assert.Equal(0, e.CutChangeDegrees, 1e-9);
            }
        );

    private static Job Job(KeelHalfWidth width, double lean) =>
        PlaneBottom.Job(20, Slope, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9) with
                    {
                        HalfWidth = width,
                        Side =
                            lean == 0 ? new KeelLayerSide.Plumb() : new KeelLayerSide.Leaning(lean),
                    },
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
}
