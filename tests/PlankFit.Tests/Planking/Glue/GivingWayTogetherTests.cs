using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Where no rule of a cloth does by giving way alone, the least two that do together are told: what is said does, and less of either does not.</summary>
public sealed class GivingWayTogetherTests
{
    private const string Pair =
        @"the least first: a crew that wets out and trims in (\d+) % of the time with a last shift (\d+) minutes longer";

    [Fact]
    public void WhatIsToldDoesAndLessDoesNot()
    {
        Finding told = Told(80)!;
        Match pair = Regex.Match(told.Message, Pair);
        Assert.True(pair.Success, told.Message);
        double longer = Number(pair.Groups[2]),
            part = Number(pair.Groups[1]) / 100;
        Assert.Null(Told(80 * part, longer));
        // The steps that are tried are half an hour and a tenth.
        Assert.NotNull(Told(80 * part, longer - 30));
        Assert.NotNull(Told(80 * (part + 0.1), longer));
        // No other pair of both is less in all, each as a part of the most that is tried.
        double Cost(double minutes, double of) => (minutes / 180) + ((1 - of) / 0.7);
        for (double minutes = 30; minutes <= 180; minutes += 30)
        {
            for (double of = 0.9; of > 0.25; of -= 0.1)
            {
                Assert.True(
                    Cost(minutes, of) > Cost(longer, part) - 1e-9
                        || Told(80 * of, minutes) is not null,
                    FormattableString.Invariant($"{minutes} minutes and {of} do as well")
                );
            }
        }

        static double Number(Group group) =>
            double.Parse(group.Value, CultureInfo.InvariantCulture);
    }

    /// <summary>Cloth that is tacky too late wants a warmer shop, a pot that goes off too soon a cooler one: what is told does, a step less does not, in the degrees of either.</summary>
    [Theory]
    [InlineData(LengthUnit.Foot, 207.0, 0.9, "a shop 8 degrees F warmer", 8, 6)]
    [InlineData(LengthUnit.Foot, null, 0.15, "a shop 6 degrees F cooler", -6, -4)]
    [InlineData(LengthUnit.Millimetre, null, 0.15, "a shop 4 degrees C cooler", -7.2, -5.4)]
    public void AnotherWarmthThatDoesIsTold(
        LengthUnit unit,
        double? tacky,
        double pot,
        string said,
        double doesF,
        double lessF
    )
    {
        // Where long runs are asked for, as in CI: with an hour to be trimmed in, every way that is tried takes a second.
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.Contains(said, Warmed(unit, tacky, pot, 0)!.Message, StringComparison.Ordinal);
        Assert.Null(Warmed(unit, tacky, pot, doesF / 1.8));
        Assert.NotNull(Warmed(unit, tacky, pot, lessF / 1.8));
    }

    /// <summary>A pot that never lasts while it is stirred wants a cooler shop, and so much cloth in an hour both hours and hands: no two of the three do.</summary>
    [Fact]
    public void WhereOnlyAllThreeDoTheyAreTold()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Finding told = Told(40, 0, 0.12)!;
        Match three = Regex.Match(
            told.Message,
            @"All three would, the least first: a shop (\d+) degrees C cooler with a crew that wets out and trims in (\d+) % of the time and a last shift (\d+) minutes longer"
        );
        Assert.True(three.Success, told.Message);
        double cooler = double.Parse(three.Groups[1].Value, CultureInfo.InvariantCulture),
            part = double.Parse(three.Groups[2].Value, CultureInfo.InvariantCulture) / 100,
            longer = double.Parse(three.Groups[3].Value, CultureInfo.InvariantCulture);
        Assert.Null(Told(40 * part, longer, 0.12, cooler));
        Assert.NotNull(Told(40 * part, longer - 30, 0.12, cooler));
        Assert.NotNull(Told(40 * (part + 0.1), longer, 0.12, cooler));
        Assert.NotNull(Told(40 * part, longer, 0.12, cooler - 1));
        // Two of them at the most that is tried.
        Assert.NotNull(Told(40 * 0.3, 180, 0.12));
        Assert.NotNull(Told(40, 180, 0.12, 10));
        Assert.NotNull(Told(40 * 0.3, 0, 0.12, 10));
    }

    [Fact]
    public void WhereNoTwoDoThatIsSaid() =>
        Assert.Contains(
            "and no two of them together",
            Told(2000)!.Message,
            StringComparison.Ordinal
        );

    /// <summary>An hour in the evening that ends three hours before midnight.</summary>
    /// <param name="pot">Of what a usual pot lasts; null for the pot of the job.</param>
    /// <returns>Why the cloth cannot be laid; null where it can.</returns>
    private static Finding? Told(
        double wetMinutesPerM2,
        double longer = 0,
        double? pot = null,
        double cooler = 0
    )
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue!;
        return GluedLaunch
            .Of(
                job with
                {
                    Glue = spec with
                    {
                        // The planks under it are down.
                        Done = new([
                            .. GluedLaunch
                                .Plan.PlankLayers.First()
                                .Starboard.Concat(GluedLaunch.Plan.PlankLayers.First().Port)
                                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
                        ]),
                        Crew = new(4) { WetMinutesPerM2 = wetMinutesPerM2 },
                        Resin = spec.Resin! with
                        {
                            UsePart = pot is null ? spec.Resin.UsePart : 0.7,
                            Clocks = spec.Resin.Clocks with
                            {
                                Pot = pot is { } p ? Pot(p) : spec.Resin.Clocks.Pot,
                                Tacky = null,
                            },
                        },
                        Clock = spec.Clock! with
                        {
                            Shifts = [(1200, 1260 + longer)],
                            Temperature = pot is null
                                ? spec.Clock.Temperature
                                : new([(480, 18 - cooler), (840, 22 - cooler)]),
                        },
                    },
                }
            )
            .Glue!.Findings.SingleOrDefault(f =>
                f.Message.Contains("cannot be laid", StringComparison.Ordinal)
            );
    }

    /// <summary>A cloth wetted out fast, four hours a day: tacky after so many minutes at 20 degrees and for as long again (null: for ever), in the pot for so many of what a usual one is.</summary>
    private static Finding? Warmed(LengthUnit unit, double? tacky, double pot, double warmer)
    {
        Job job = GluedLaunch.Job(3);
        GlueSpec spec = job.Glue!;
        return GluedLaunch
            .Of(
                job with
                {
                    Units = unit,
                    Glue = spec with
                    {
                        Done = new([
                            .. GluedLaunch
                                .Plan.PlankLayers.First()
                                .Starboard.Concat(GluedLaunch.Plan.PlankLayers.First().Port)
                                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
                        ]),
                        Crew = new(4) { WetMinutesPerM2 = 2 },
                        Resin = spec.Resin! with
                        {
                            Clocks = spec.Resin.Clocks with
                            {
                                Pot = Pot(pot),
                                Tacky = tacky is { } t
                                    ? new(
                                        ClockLaw.Through([new(15, t * 1.4), new(25, t / 1.4)])!,
                                        ClockLaw.Through([
                                            new(15, 2 * t * 1.4),
                                            new(25, 2 * t / 1.4),
                                        ])!
                                    )
                                    : null,
                            },
                        },
                        Clock = new([(480, 720)], new([(480, 18 + warmer), (840, 22 + warmer)])),
                    },
                }
            )
            .Glue!.Findings.SingleOrDefault(f =>
                f.Message.Contains("cannot be laid", StringComparison.Ordinal)
            );
    }

    private static ClockLaw Pot(double of) =>
        ClockLaw.Through([new(15, 60 * of, 100), new(25, 30 * of, 100), new(25, 18 * of, 600)])!;
}
