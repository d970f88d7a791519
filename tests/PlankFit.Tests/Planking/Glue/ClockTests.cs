using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Pot life and open time: the law through two points, over a day, and what a batch may hold.</summary>
public sealed class ClockTests
{
    private static readonly ClockLaw TwoPoints = ClockLaw.Through([new(20, 60), new(30, 32)])!;

    [Fact]
    public void TheLawThroughTwoPoints()
    {
        Assert.Equal(46447.46, TwoPoints.ActivationJPerMol, 5e-3);
        Assert.Equal(83.514, TwoPoints.Minutes(15), 5e-4);
        Assert.Equal(43.587, TwoPoints.Minutes(25), 5e-4);
        Assert.Equal(23.730, TwoPoints.Minutes(35), 5e-4);
        Assert.Null(ClockLaw.Through([new(20, 60), new(20, 61)]));
    }

    /// <summary>53 kJ/mol from 25 °C: the factors of the ten-degree rule, within what Arrhenius departs from it.</summary>
    [Theory]
    [InlineData(10, 3.1038)]
    [InlineData(15, 2.1001)]
    [InlineData(20, 1.4400)]
    [InlineData(30, 0.7028)]
    [InlineData(35, 0.4997)]
    public void FiftyThreeKilojoules(double celsius, double factor)
    {
        double at35 = Math.Exp(53000 / ClockLaw.GasConstant * ((1 / 308.15) - (1 / 298.15)));
        ClockLaw law = ClockLaw.Through([new(25, 100), new(35, 100 * at35)])!;
        Assert.Equal(53000, law.ActivationJPerMol, 1e-6);
        Assert.Equal(factor, law.Minutes(celsius) / 100, 5e-5);
    }

    [Fact]
    public void OnAWarmingDayItEndsWhereTheIntegralComesToOne()
    {
        DayTemperature ramp = new([(0, 20), (60, 30)]);
        Assert.Equal(46.402, ClockRun.Minutes(TwoPoints, null, ramp, 0), 5e-4);
        // Neither the life at the start nor at the end of the stretch.
        Assert.Equal(60, TwoPoints.Minutes(20), 1e-9);
        DayTemperature steady = new([(0, 20)]);
        Assert.Equal(60, ClockRun.Minutes(TwoPoints, null, steady, 123), 1e-6);
        Assert.Equal(42, ClockRun.Minutes(TwoPoints, null, steady, 123, 0.7), 1e-6);
    }

    /// <summary>The doubling law has a closed form on a ramp: (10/(r ln 2)) ln(1 + t r ln 2/10) of the life t at the start.</summary>
    [Fact]
    public void TheDoublingLawOnARampInClosedForm()
    {
        const double R = 1.0 / 6;
        double closed = 10 / (R * Math.Log(2)) * Math.Log(1 + (60 * R * Math.Log(2) / 10));
        Assert.Equal(45.582443, closed, 5e-7);
        // Arrhenius near enough to the doubling law: the same integral by small steps.
        DayTemperature ramp = new([(0, 20), (60, 30)]);
        double used = 0,
            at = 0;
        while (used < 1)
        {
            used += 0.001 / TwoPoints.Minutes(ramp.Celsius(at + 0.0005));
            at += 0.001;
        }

        Assert.Equal(at, ClockRun.Minutes(TwoPoints, null, ramp, 0), 2e-3);
    }

    [Fact]
    public void ADayGoesStraightBetweenItsTimesAndOverMidnight()
    {
        DayTemperature day = new([(480, 16), (840, 24)]);
        Assert.Equal(20, day.Celsius(660), 1e-12);
        Assert.Equal(20, day.Celsius(660 + (3 * 1440)), 1e-9);
        Assert.Equal(24 - (8 * 600.0 / 1080), day.Celsius(0), 1e-9);
        Assert.Equal(840, day.NextTurn(480));
        Assert.Equal(1440 + 480, day.NextTurn(900));
    }

    [Fact]
    public void MassShortensThePot()
    {
        ClockLaw pot = ClockLaw.Through([new(20, 40, 100), new(20, 25, 500), new(30, 20, 100)])!;
        Assert.Equal(0.292030, pot.MassPower, 5e-7);
        Assert.Equal(30.609, pot.Minutes(20, 250), 5e-4);
        Assert.Equal(20, pot.Minutes(30, 100), 1e-9);
        Assert.Equal(500, pot.MostGrams);
        // Less than the least that is given counts as that one.
        Assert.Equal(40, pot.Minutes(20, 30), 1e-9);
    }

    [Fact]
    public void MoreReadingsThanUnknownsAreFittedByTheirLogarithms()
    {
        ImmutableArray<ClockReading> five =
        [
            new(15, 70, 100),
            new(20, 48, 100),
            new(30, 22, 100),
            new(20, 30, 400),
            new(30, 15, 400),
        ];
        ClockLaw law = ClockLaw.Through(five)!;
        // Least squares: no law near it lies nearer.
        double best = Squares(law);
        foreach (double by in new[] { 0.99, 1.01 })
        {
            Assert.True(
                five.Sum(r =>
                    Math.Pow(Math.Log(law.Minutes(r.Celsius, r.Grams) * by / r.Minutes), 2)
                ) > best
            );
        }

        double Squares(ClockLaw l) =>
            five.Sum(r => Math.Pow(Math.Log(l.Minutes(r.Celsius, r.Grams) / r.Minutes), 2));
    }

    [Fact]
    public void TheLargestBatchByBothClocks()
    {
        ClockLaw pot = ClockLaw.Through([new(20, 40, 100), new(20, 25, 500), new(30, 20, 100)])!;
        BatchShare[] planks = [.. Enumerable.Repeat(new BatchShare(110, 3, 9), 8)];
        double Pot(double grams) => 0.7 * pot.Minutes(20, grams);
        Assert.Equal(3, BatchClocks.Largest(planks, 4, Pot, 0.7 * 70, 500));
        var three = BatchClocks.Of([.. planks.Take(3)], 4, Pot, 49);
        Assert.Equal(13, three.PotUsed, 1e-12);
        Assert.Equal(19.76, three.PotAllowed, 5e-3);
        Assert.Equal(40, three.FilmUsed, 1e-12);
        Assert.Equal(52, BatchClocks.Of([.. planks.Take(4)], 4, Pot, 49).FilmUsed, 1e-12);
        // Nothing above the largest mass that is known.
        Assert.Equal(2, BatchClocks.Largest(planks, 4, Pot, 49, 220));
    }

    /// <summary>45 min at 25 °C, halved by 10 degrees, a shop of 30 °C: 22.27 of 31.82 min may be used; 4 to mix, 5 a plank and nothing after.</summary>
    [Fact]
    public void ThreePlanksInAWarmShop()
    {
        double life = 45 * Math.Pow(2, (25 - 30) / 10.0);
        Assert.Equal(22.27, 0.7 * life, 5e-3);
        BatchShare[] planks = [.. Enumerable.Repeat(new BatchShare(100, 0, 5), 8)];
        Assert.Equal(3, BatchClocks.Largest(planks, 4, _ => 1e9, 0.7 * life, 1e9));
    }
}
