using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Trust;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>Single figures of taping: what one reading is out by, where a point of a station is read, what a wish should read, how sure stock makes a length.</summary>
public sealed class TapingFiguresTests
{
    [Theory]
    [InlineData(TapeKind.HalfBreadth, 3)]
    [InlineData(TapeKind.Height, 4)]
    [InlineData(TapeKind.Girth, 1.4)]
    [InlineData(TapeKind.SeamLength, 1.4)]
    public void AReadingIsOutByItsOwnKind(TapeKind kind, double within) =>
        Assert.Equal(within / 1.96, TapeSigmas.Of(TrustSpec.Default, kind), 1e-12);

    /// <summary>On a chine that flares by 60 mm a metre, with offsets to the inside of one thin layer, a point is read as the table has it: 5 mm along it would be 0.3 mm more.</summary>
    [Fact]
    public void APointIsReadAtItsStation()
    {
        PlankingJob job = PrismTable.Job with
        {
            Offsets = PrismTable.Offsets with
            {
                Lines =
                [
                    .. PrismTable.Offsets.Lines.Select(l =>
                        l.Name == "chine"
                            ? l with
                            {
                                HalfBreadthsMm =
                                [
                                    .. l.HalfBreadthsMm.Select((b, i) => b - 300 + (60 * i)),
                                ],
                            }
                            : l
                    ),
                ],
            },
        };
        var cells = TableCells.Of(job);
        var expected = new Expectations(
            job,
            cells,
            [
                TapedHulls.Point(TapeKind.HalfBreadth, "chine", "5", Side.Starboard),
                TapedHulls.Point(TapeKind.HalfBreadth, "keel", "3", Side.Starboard),
            ],
            ImmutableDictionary<TapedEdge, TapedSeamPlace>.Empty
        );
        Vector<double> read = expected.At(Vector<double>.Build.Dense(2 * cells.Count));
        Assert.Equal(1000, read[0], 0.01);
        Assert.Equal(40, read[1], 0.01);
    }

    /// <summary>Girths that are 4 mm longer than drawn move what all wishes should read, to what a tape reads on the hull as it then is.</summary>
    [Fact]
    public void AWishShouldReadWhatIsKnownByThen()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        var hulls = new TapedHulls(TapedHulls.Launch, TrustSpec.Default, 12);
        TapePlace[] girths = [.. new[] { "5", "6", "7", "8" }.Select(s => TapedHulls.Girth(s))];
        double[] drawn = hulls.Expected(girths, Vector<double>.Build.Dense(2 * hulls.Cells.Count));
        BottomPlan plan = BottomPlanner
            .Plan(
                TapedHulls.Launch with
                {
                    Trust = TrustSpec.Default,
                    Joints = null,
                    Fastenings = null,
                    SettingUp = null,
                    Framing = [],
                    AsBuilt = AsBuiltSpec.None with
                    {
                        Readings =
                        [
                            .. girths.SelectMany(
                                (g, i) => Enumerable.Repeat(new TapeReading(g, drawn[i] + 4), 2)
                            ),
                        ],
                    },
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        TapeWish[] wishes =
        [
            .. TapeAdvisor
                .Of(
                    plan.Planked,
                    TrustSpec.Default,
                    PlankSloper.Of(plan.Planked, TrustSpec.Default, plan.Trust!.Sureness.Slopes),
                    plan.Taped,
                    8
                )
                .Wishes.Where(w => w.Place.Edge is null),
        ];
        Assert.NotEmpty(wishes);
        double[] now = hulls.Expected(wishes.Select(w => w.Place), plan.Taped!.After.Values),
            was = hulls.Expected(
                wishes.Select(w => w.Place),
                Vector<double>.Build.Dense(2 * hulls.Cells.Count)
            );
        Assert.All(wishes.Zip(now), w => Assert.Equal(w.Second, w.First.ExpectedMm, 0.1));
        Assert.Contains(now.Zip(was), w => Math.Abs(w.First - w.Second) > 0.5);
    }

    /// <summary>What the stock's own size adds: the square of each slope times its sigma.</summary>
    [Fact]
    public void StockMakesALengthLessSure()
    {
        var slopes = Sensitivities.Of(
            DemoPlans.Of("tender").Planked,
            stop: TestContext.Current.CancellationToken
        );
        TrustSpec spec = TrustSpec.Default;
        Sureness with = Sureness.Of(spec, slopes),
            without = Sureness.Of(
                spec with
                {
                    StockWidthWithinMm = 0,
                    StockThicknessWithinMm = 0,
                },
                slopes
            );
        double most = 0;
        foreach (SureNumber number in slopes.Numbers.Where(n => with.SigmaOf(n) is not null))
        {
            Vector<double> stock = slopes.Stock.Row(slopes.IndexOf(number)!.Value);
            double added = Math.Pow(stock[0] * 0.2 / 1.96, 2) + Math.Pow(stock[1] * 0.3 / 1.96, 2),
                found =
                    Math.Pow(with.SigmaOf(number)!.Value, 2)
                    - Math.Pow(without.SigmaOf(number)!.Value, 2);
            Assert.Equal(added, found, 1e-6 * Math.Max(1, added));
            most = Math.Max(most, added);
        }

        Assert.True(most > 0.01);
    }
}
