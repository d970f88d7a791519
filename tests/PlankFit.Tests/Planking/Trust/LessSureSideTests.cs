using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Trust;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>Of two sides that are not known alike each number is told of the one on which it is less sure, and not of the side that is less sure on the whole.</summary>
public sealed class LessSureSideTests
{
    [Fact]
    public void EachNumberIsTakenByItself()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        var slopes = Sensitivities.Of(
            DemoPlans.Of("tender").Planked,
            stop: TestContext.Current.CancellationToken
        );
        TrustSpec spec = TrustSpec.Default;
        Matrix<double> prior = TablePrior.Of(spec, slopes.Cells);
        int n = prior.RowCount;
        // One side knows its forward stations better, the other its after ones.
        Matrix<double> Known(Func<int, bool> sure) =>
            Matrix<double>.Build.Dense(
                n,
                n,
                (i, j) => prior[i, j] * (sure(i) ? 0.2 : 1) * (sure(j) ? 0.2 : 1)
            );
        int middle = slopes.Cells.Cells.Max(c => c.Station) / 2;
        Matrix<double> starboard = Known(i => slopes.Cells.Cells[i].Station <= middle),
            port = Known(i => slopes.Cells.Cells[i].Station > middle);
        Sureness both = Sureness.OfSides(spec, slopes, new(starboard, port)),
            one = Sureness.Of(spec, slopes, starboard),
            other = Sureness.Of(spec, slopes, port);
        SureNumber[] lengths =
        [
            .. slopes.Numbers.Where(s => s.Kind == NumberKind.Length && one.SigmaOf(s) is not null),
        ];
        Assert.All(
            lengths,
            s =>
                Assert.Equal(
                    Math.Max(one.SigmaOf(s)!.Value, other.SigmaOf(s)!.Value),
                    both.SigmaOf(s)!.Value,
                    1e-12
                )
        );
        Assert.Contains(lengths, s => one.SigmaOf(s) > other.SigmaOf(s) + 0.1);
        Assert.Contains(lengths, s => other.SigmaOf(s) > one.SigmaOf(s) + 0.1);
    }
}
