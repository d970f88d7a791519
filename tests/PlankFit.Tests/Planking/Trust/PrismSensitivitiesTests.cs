using MathNet.Numerics.LinearAlgebra;
using PlankFit.Geometry.Splines;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>
/// Slopes of a prism's planks in closed form. Unrolled, its planks are straight; the loft's splines say how far keel and chine move where a plank crosses them, and
/// the master goes by its seams' marks.
/// </summary>
public sealed class PrismSensitivitiesTests
{
    private static readonly double Girth = Math.Sqrt((960.0 * 960) + (320 * 320));

    /// <summary>Of the direction across, square to the keel on the bottom.</summary>
    private static readonly double Cb = 960 / Girth,
        Sb = 320 / Girth;

    private static readonly double Root = Math.Sqrt(0.5);

    private static readonly Lazy<(BottomPlan Plan, Sensitivities J)> Worked = new(() =>
    {
        BottomPlan plan = BottomPlanner.Plan(new Job(PrismTable.Job)).Plan!;
        return (plan, Sensitivities.Of(plan.Planked));
    });

    private static Sensitivities J => Worked.Value.J;

    private static PlankLayerPlan Layer => Worked.Value.Plan.PlankLayers.Single();

    private static Plank Master => Layer.Starboard.Single(p => p.Kind == PlankKind.Master);

    /// <summary>Of all offsets alike, g out by a and L by a √2 / 2, since the marks hold the rest: for 1.5 mm in each of four offsets 2.121320 and 1.5.</summary>
    [Fact]
    public void ABottomAllTheWiderIsLongerByTheMarks()
    {
        Assert.Equal(1011.928851, Girth, 1e-6);
        // The plank's middle lies 0.005 mm outside the table's surface, and its keel end so much further down the keel's plumb side.
        Assert.Equal((Girth + (0.005 * Sb / Cb)) / Root, Master.NetLengthMm, 1e-5);
        Vector<double> row = Row(Master, NumberKind.Length);
        double b = Over(row, "chine", CellKind.HalfBreadth),
            h = Over(row, "chine", CellKind.Height),
            kb = Over(row, "keel", CellKind.HalfBreadth),
            kh = Over(row, "keel", CellKind.Height);
        Assert.Equal(0.707107 * Cb, b, 1e-4);
        Assert.Equal(0.707107 * Sb, h, 1e-4);
        Assert.Equal(-b, kb, 1e-4);
        Assert.Equal(-h, kh, 1e-4);
        Assert.Equal(1.5, 1.5 * Math.Sqrt((b * b) + (h * h) + (kb * kb) + (kh * kh)), 5e-4);
    }

    /// <summary>
    /// dL/d(chine b_i) = cb [c_i(c) / sin - (cos² / sin) c_i(r)], c_i the spline's i-th cardinal function, c the landing and r the chine's mark of the master's seam on
    /// the plank's side; at the keel minus, with its foot and marks. Of the master r is the mean of both.
    /// </summary>
    [Fact]
    public void EveryPlankMovesByTheLoftsOwnSplines()
    {
        PlankMarks marks = new(Layer);
        Assert.Equal(4387.9679, marks.X(false, true), 2e-4);
        Assert.Equal(5399.8984, marks.X(true, true), 2e-4);
        Assert.Equal(4600.0999, marks.X(false, false), 2e-4);
        Assert.Equal(5612.0304, marks.X(true, false), 2e-4);
        double worst = 0;
        foreach (Plank plank in Layer.Starboard.Where(Whole))
        {
            (double keel, double chine) = (
                Middle(plank, PanelEdge.Lower),
                Middle(plank, PanelEdge.Upper)
            );
            for (int i = 0; i < 11; i++)
            {
                double held(bool atChine) =>
                    plank.Number == Master.Number
                        ? (marks.At(atChine, true, i) + marks.At(atChine, false, i)) / 2
                        : marks.At(atChine, plank.Number < Master.Number, i);
                double atChine = (Cardinal(i, chine) / Root) - (Root * held(true)),
                    atKeel = -((Cardinal(i, keel) / Root) - (Root * held(false)));
                Vector<double> row = Row(plank, NumberKind.Length);
                double[] off =
                [
                    row[At("chine", i, CellKind.HalfBreadth)] - (Cb * atChine),
                    row[At("chine", i, CellKind.Height)] - (Sb * atChine),
                    row[At("keel", i, CellKind.HalfBreadth)] - (Cb * atKeel),
                    row[At("keel", i, CellKind.Height)] - (Sb * atKeel),
                ];
                worst = Math.Max(worst, off.Max(Math.Abs));
            }
        }

        Assert.InRange(worst, 0, 1e-4);
    }

    [Theory]
    [InlineData(4, -0.08864)]
    [InlineData(5, 0.40048)]
    [InlineData(6, 0.41109)]
    public void TheMastersOwnSlopesAreAsWorkedByHand(int station, double slope) =>
        Assert.Equal(
            slope,
            Row(Master, NumberKind.Length)[At("chine", station, CellKind.HalfBreadth)],
            1e-4
        );

    /// <summary>A frame heeled about the keel's edge moves its chine along the bottom's own normal: no plank is the longer for it. Athwart by 3 mm the master is, by 1.2014.</summary>
    [Fact]
    public void AHeelLengthensNoPlankAndAStepAthwartDoes()
    {
        SharedCause heel = Cause(CauseKind.Heel),
            athwart = Cause(CauseKind.Athwart);
        foreach (Plank plank in Layer.Starboard.Where(Whole))
        {
            Assert.Equal(0, Row(plank, NumberKind.Length) * (2 * heel.Effect), 5e-4);
        }

        Assert.Equal(1.2014, Row(Master, NumberKind.Length) * (3 * athwart.Effect), 5e-4);
    }

    private static double Cardinal(int i, double x)
    {
        double[] at = [.. Enumerable.Range(0, 11).Select(k => 1000.0 * k)];
        return CubicSpline.Through(at, [.. at.Select((_, k) => k == i ? 1.0 : 0)]).At(x);
    }

    /// <summary>Where the plank's own line ends, on the prism unrolled.</summary>
    private static double Middle(Plank plank, PanelEdge edge)
    {
        PlankEnd end = plank.Ends.Single(e => e.At == edge);
        return (end.Outline[0].X + end.Outline[^1].X) / 2;
    }

    private static bool Whole(Plank p) =>
        p.Kind != PlankKind.Corner
        && p.Ends.Length == 2
        && p.Ends.Any(e => e.At == PanelEdge.Lower)
        && p.Ends.Any(e => e.At == PanelEdge.Upper);

    private static double Over(Vector<double> row, string line, CellKind kind) =>
        Enumerable.Range(0, 11).Sum(i => row[At(line, i, kind)]);

    private static Vector<double> Row(Plank plank, NumberKind kind) =>
        J.J.Row(J.IndexOf(new(plank.Id, kind))!.Value);

    private static int At(string line, int station, CellKind kind) =>
        J.Cells.IndexOf(line, station, kind)!.Value;

    private static SharedCause Cause(CauseKind kind) =>
        SharedCause.Of(TrustSpec.Default, J.Cells).Single(c => c.Kind == kind && c.Station == 5);

    /// <summary>The marks of the master's two seams, by the plank's own edges.</summary>
    private sealed class PlankMarks(PlankLayerPlan layer)
    {
        private readonly Plank master = layer.Starboard.Single(p => p.Kind == PlankKind.Master);

        public double At(bool chine, bool forward, int i) => Cardinal(i, X(chine, forward));

        public double X(bool chine, bool forward)
        {
            PlankEdge edge = forward ? master.ForwardEdge : master.AfterEdge;
            return (chine ? edge.Seam[^1] : edge.Seam[0]).X;
        }
    }
}
