using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Where not one plank can be glued down in time every rule in the way is told with its least relief: all of it together does, and less of it does not.</summary>
public sealed class GivingWayOfPlanksTests
{
    /// <summary>Halved by ten degrees.</summary>
    private static ClockLaw Law(double minutes) =>
        ClockLaw.Through([new(20, minutes), new(10, 2 * minutes)])!;

    private static GluePlan Planned(double celsius, double shiftMinutes)
    {
        Job job = GluedLaunch.Plan.Job;
        return GluedLaunch
            .Of(
                job with
                {
                    Glue = new(
                        new Mix(
                            "resin",
                            new(2, 1.15, 0.97),
                            new(
                                ClockLaw.Through([
                                    new(20, 8, 100),
                                    new(10, 16, 100),
                                    new(20, 8, 500),
                                ])!,
                                Law(20)
                            )
                            {
                                Sandable = Law(1200),
                            }
                        ),
                        null
                    )
                    {
                        // 4 to mix and 3 to spread out of the pot's 5.6, 12 more to fasten out of the film's 14.
                        Crew = new(2)
                        {
                            MixMinutes = 4,
                            SpreadMinutes = 3,
                            FastenMinutes = 12,
                        },
                        Clock = new([(480, 480 + shiftMinutes)], new([(0, celsius)])),
                    },
                }
            )
            .Glue!;
    }

    private static string? Told(GluePlan plan) =>
        plan
            .Findings.SingleOrDefault(f =>
                f.Message.StartsWith("not one plank can be glued", StringComparison.Ordinal)
            )
            ?.Message;

    [Fact]
    public void PotAndFilmAreToldAndTheCoolerOfTheTwoDoes()
    {
        string told = Told(Planned(20, 480))!;
        double[] cooler =
        [
            .. Regex
                .Matches(told, @"(\d+(?:\.\d)?) degrees C cooler would do")
                .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)),
        ];
        Assert.Equal(2, cooler.Length);
        Assert.Contains("the pot gives", told, StringComparison.Ordinal);
        Assert.Contains("the film gives", told, StringComparison.Ordinal);
        Assert.True(cooler[0] < cooler[1]);
        // One of the two by itself is not enough, nor half a degree less.
        Assert.NotNull(Told(Planned(20 - cooler[0], 480)));
        Assert.NotNull(Told(Planned(20 - cooler[1] + 0.5, 480)));
        GluePlan does = Planned(20 - cooler[1], 480);
        Assert.Null(Told(does));
        Assert.NotEmpty(does.Stages.First(s => s.Layer == "inner").Batches);
    }

    /// <summary>A shift of 15 minutes for 19 of work: with 4 more it does, with 3 it does not.</summary>
    [Fact]
    public void AShiftIsToldByHowMuchItIsTooShort()
    {
        string told = Told(Planned(10, 15))!;
        Assert.Contains("4 minutes are wanting", told, StringComparison.Ordinal);
        Assert.NotNull(Told(Planned(10, 18)));
        Assert.Null(Told(Planned(10, 19)));
    }
}
