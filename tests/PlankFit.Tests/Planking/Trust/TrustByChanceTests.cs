using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>Laws of what is told, on hulls and jobs by chance: most planks are told of, nothing is told that is no number, and a hull moved bodily has the same planks.</summary>
public sealed class TrustByChanceTests
{
    /// <summary>Planks of a row that stand next to a corner are short and steep, and not linear.</summary>
    private const int AtCorners = 3;

    /// <summary>What is left of slopes that add up to nothing, as a part of their sizes: where the widest place of a plank jumps, slopes are means of two.</summary>
    private const double PartOfAll = 0.05;

    [Fact]
    public void EveryJobIsToldHowSureItIs()
    {
        int jobs = LongRuns.Of(1, 25);
        for (int seed = 1; seed <= jobs; seed++)
        {
            using var folder = new TempFolder();
            if (JobReader.Read(ChanceJob.Write(seed, folder.Path)).Job is not { } job)
            {
                continue;
            }

            BottomPlan? plan = BottomPlanner
                .Plan(
                    new Job(job.Planking) { Trust = TrustSpec.Default },
                    null,
                    TestContext.Current.CancellationToken
                )
                .Plan;
            if (plan is not null)
            {
                Check(plan.Trust!, seed);
            }
        }
    }

    private static void Check(TrustPlan trust, int seed)
    {
        foreach (LayerTrust layer in trust.Layers)
        {
            int told = layer.Planks.Count(p => !p.InPlace);
            Assert.True(
                2 * told > layer.Planks.Length,
                $"seed {seed}, {layer.Name}: only {told} of {layer.Planks.Length} planks are told of"
            );
            foreach (PlankTrust plank in layer.Planks.Where(p => !p.InPlace))
            {
                Assert.InRange(plank.LengthMm!.Value, 0.1, 200);
                Assert.InRange(plank.InboardMm ?? 0, 0, 200);
                Assert.InRange(plank.OutboardMm ?? 0, 0, 200);
                Assert.True(plank.NoneShortMm > plank.OneInTwentyMm);
            }

            Moved(trust.Sureness.Slopes, layer, seed);
        }
    }

    private static void Moved(Sensitivities j, LayerTrust layer, int seed)
    {
        foreach (CellKind kind in new[] { CellKind.Height, CellKind.Position })
        {
            Vector<double> all = Vector<double>.Build.Dense(
                j.Cells.Count,
                i => j.Cells.Cells[i].Kind == kind ? 1 : 0
            );
            foreach (PlankTrust plank in layer.Planks[AtCorners..^AtCorners])
            {
                if (j.IndexOf(new(plank.Id, NumberKind.Length)) is { } row)
                {
                    double sum = j.J.Row(row) * all,
                        each = j.J.Row(row).PointwiseAbs() * all;
                    Assert.True(
                        Math.Abs(sum) < PartOfAll * each,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"seed {seed}: {plank.Id} is {sum:0.000} longer where all is moved, {kind}"
                        )
                    );
                }
            }
        }
    }
}
