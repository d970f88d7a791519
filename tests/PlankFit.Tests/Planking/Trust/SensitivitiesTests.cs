using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Trust;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>A hull moved bodily has the same planks: the slopes of a length over all half-breadths, all heights and all positions add up to nothing.</summary>
public sealed class SensitivitiesTests
{
    /// <summary>Planks next to the forward corner, short and steep, are the least linear.</summary>
    private const int Nearest = 2;

    [Theory]
    [InlineData("survey-launch", 0.004)]
    [InlineData("pilot-skiff", 0.01)]
    public void AHullMovedBodilyHasTheSamePlanks(string hull, double most)
    {
        Sensitivities j = Slopes.Of(hull);
        foreach (CellKind kind in Enum.GetValues<CellKind>())
        {
            Vector<double> all = Vector<double>.Build.Dense(
                j.Cells.Count,
                i => j.Cells.Cells[i].Kind == kind ? 1 : 0
            );
            (double sum, SureNumber of) = j
                .Numbers.Select((n, i) => (Row: i, Number: n))
                .Where(n =>
                    n.Number.Kind == NumberKind.Length
                    && j.Has(n.Row)
                    && n.Number.Plank!.Value.Number > Nearest
                )
                .Select(n => (Math.Abs(j.J.Row(n.Row) * all), n.Number))
                .MaxBy(n => n.Item1);
            Assert.True(
                sum < most,
                string.Create(CultureInfo.InvariantCulture, $"{kind}: {of.Plank} {sum:0.0000}")
            );
        }
    }
}
