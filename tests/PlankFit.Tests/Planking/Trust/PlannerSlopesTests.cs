using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>Slopes against differences of the whole planner, which knows nothing of them: lengths, angles, bevels and what a tape reads.</summary>
public sealed class PlannerSlopesTests
{
    /// <summary>Cells of the launch that are looked at where not all are: half-breadths, heights and a position, at keel and chine, before, at and after the master.</summary>
    private static readonly (string Line, int Station, CellKind Kind)[] Few =
    [
        ("keel edge", 6, CellKind.HalfBreadth),
        ("chine", 3, CellKind.Height),
        ("chine", 8, CellKind.Position),
    ];

    [Fact]
    public void TheyAreThoseOfTheWholePlanner()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        BottomPlan plan = DemoPlans.Of("survey-launch");
        Sensitivities j = Slopes.Of("survey-launch");
        int[] cells = LongRuns.Asked
            ? [.. Enumerable.Range(0, j.Cells.Count)]
            : [.. Few.Select(c => j.Cells.IndexOf(c.Line, c.Station, c.Kind)!.Value)];
        int judged = 0;
        foreach (int cell in cells)
        {
            const double by = 1;
            PlankLayerPlan? more = Moved(plan, j, cell, by),
                less = Moved(plan, j, cell, -by);
            if (
                more is null
                || less is null
                || Math.Abs(MarkedPlan.Widest(more) - MarkedPlan.Widest(less)) > SameWidthMm
            )
            {
                continue;
            }

            judged++;

            Dictionary<SureNumber, double> above = Numbers(more),
                below = Numbers(less);
            foreach ((SureNumber number, double high) in above)
            {
                if (
                    j.IndexOf(number) is not { } row
                    || !below.TryGetValue(number, out double low)
                    || !MarkedPlan.IsWhole(plan.Find(number.Plank!.Value)!)
                )
                {
                    continue;
                }

                double slope = (high - low) / (2 * by),
                    off = Math.Abs(slope - j.J[row, cell]),
                    most = number.Kind switch
                    {
                        NumberKind.InboardAngle or NumberKind.OutboardAngle => 0.004,
                        NumberKind.Bevel => 0.004,
                        _ => 0.012,
                    };
                Assert.True(
                    off < most,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{number} by {j.Cells.Cells[cell]}: {j.J[row, cell]:0.0000}, the planner {slope:0.0000}"
                    )
                );
            }
        }

        Assert.True(judged * 2 > cells.Length, $"{judged} of {cells.Length} cells");
    }

    private const double SameWidthMm = 0.004;

    private static PlankLayerPlan? Moved(BottomPlan plan, Sensitivities j, int cell, double by) =>
        MarkedPlan.On(
            plan,
            1,
            j.Cells.Moved(Vector<double>.Build.Dense(j.Cells.Count, i => i == cell ? by : 0))
        );

    private static Dictionary<SureNumber, double> Numbers(PlankLayerPlan layer)
    {
        var numbers = new Dictionary<SureNumber, double>();
        foreach (Plank plank in layer.Starboard)
        {
            numbers.Add(new(plank.Id, NumberKind.Length), plank.NetLengthMm);
            if (plank.Ends.SingleOrDefault(e => e.At == PanelEdge.Lower) is { } keel)
            {
                numbers.Add(new(plank.Id, NumberKind.Bevel), keel.BevelDegrees);
                numbers.Add(new(plank.Id, NumberKind.InboardAngle), keel.CutDegrees);
            }

            if (plank.Ends.SingleOrDefault(e => e.At == PanelEdge.Upper) is { } chine)
            {
                numbers.Add(new(plank.Id, NumberKind.OutboardAngle), chine.CutDegrees);
            }
        }

        foreach (SeamCheck check in layer.Checks.Where(c => c.Side == Side.Starboard))
        {
            void Add(NumberKind kind, double? value)
            {
                if (value is { } mm)
                {
                    numbers.Add(new(check.PlankId, kind), mm);
                }
            }

            double? Mark(TapedEnd? end, PanelEdge edge) => end?.At == edge ? end.AlongMm : null;
            Add(NumberKind.ForwardKeelMark, Mark(check.Forward?.Inboard, PanelEdge.Lower));
            Add(NumberKind.ForwardChineMark, Mark(check.Forward?.Outboard, PanelEdge.Upper));
            Add(NumberKind.ForwardSeam, check.Forward?.LengthMm);
            Add(NumberKind.AfterKeelMark, Mark(check.After?.Inboard, PanelEdge.Lower));
            Add(NumberKind.AfterChineMark, Mark(check.After?.Outboard, PanelEdge.Upper));
            Add(NumberKind.AfterSeam, check.After?.LengthMm);
            Add(NumberKind.Diagonal, check.DiagonalMm);
        }

        return numbers;
    }
}
