using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>What is told of planks that hang on the table by no slope, against the whole planner on tables by chance.</summary>
public sealed class SampledLengthsTests
{
    private const double CellMm = 1.5;

    public static TheoryData<string> Demos => LongRuns.FirstOf("survey-launch", "pilot-skiff");

    /// <summary>Of corner pieces and those at stem and transom 19 in 20 are within it; the sample itself is good to a sixth.</summary>
    [Theory]
    [MemberData(nameof(Demos))]
    public void CornerPiecesAreWithinIt(string demo)
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        BottomPlan plan = DemoPlans.Of(demo);
        Sensitivities j = Slopes.Of(demo);
        Matrix<double> table = Matrix<double>.Build.DenseOfDiagonalVector(
            Vector<double>.Build.Dense(
                j.Cells.Count,
                i => j.Cells.Cells[i].Kind == CellKind.Position ? 0 : CellMm * CellMm
            )
        );
        SampledLengths sampled = Sampled(plan, j, table);
        Plank[] corners =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.Where(p =>
                    p.Kind == PlankKind.Corner && sampled.WithinOf(p.Id) is not null
                ),
        ];
        Assert.NotEmpty(corners);
        Assert.All(corners, p => Assert.InRange(sampled.WithinOf(p.Id)!.Value, 1, 150));
        var chance = new Random(31);
        int draws = LongRuns.Of(1, 40),
            told = 0,
            held = 0;
        for (int draw = 0; draw < draws; draw++)
        {
            Vector<double> p = Vector<double>.Build.Dense(
                j.Cells.Count,
                i => Math.Sqrt(table[i, i]) * Normal.Sample(chance, 0, 1)
            );
            foreach (Plank plank in MarkedPlan.On(plan, 1, j.Cells.Moved(p))?.Starboard ?? [])
            {
                if (corners.FirstOrDefault(c => c.Id == plank.Id) is not { } drawn)
                {
                    continue;
                }

                told++;
                double off = Math.Abs(plank.NetLengthMm - drawn.NetLengthMm),
                    within = sampled.WithinOf(plank.Id)!.Value;
                held += off <= within ? 1 : 0;
                Assert.True(off < 4 * within, $"{plank.Id}: {off} for {within}");
            }
        }

        if (draws >= 40)
        {
            TestContext.Current.TestOutputHelper?.WriteLine($"{demo}: {held} of {told}");
            Assert.InRange(100.0 * held / told, 86, 100);
        }
    }

    /// <summary>A table that is out by twice as much makes them twice as unsure, near enough; one that is right makes them sure.</summary>
    [Fact]
    public void ItGoesWithTheTable()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        BottomPlan plan = DemoPlans.Of("tender");
        var j = Sensitivities.Of(plan.Planked, null, TestContext.Current.CancellationToken);
        Matrix<double> one = Matrix<double>.Build.DenseIdentity(j.Cells.Count);
        SampledLengths none = Sampled(plan, j, 0 * one),
            half = Sampled(plan, j, 0.0025 * one),
            whole = Sampled(plan, j, 0.01 * one);
        PlankId[] all = [.. plan.PlankLayers.SelectMany(l => l.Starboard).Select(p => p.Id)];
        Assert.All(
            all.Where(id => none.WithinOf(id) is not null),
            id => Assert.Equal(0, none.WithinOf(id)!.Value, 1e-9)
        );
        double[] parts =
        [
            .. all.Where(id => half.WithinOf(id) is > 0.05 && whole.WithinOf(id) is not null)
                .Select(id => whole.WithinOf(id)!.Value / half.WithinOf(id)!.Value),
        ];
        Assert.NotEmpty(parts);
        Assert.InRange(parts.Order().ElementAt(parts.Length / 2), 1.9, 2.1);
    }

    private static SampledLengths Sampled(BottomPlan plan, Sensitivities j, Matrix<double> table) =>
        SampledLengths.Of(
            plan.Planked,
            j.Cells,
            table,
            _ => true,
            TestContext.Current.CancellationToken
        );
}
