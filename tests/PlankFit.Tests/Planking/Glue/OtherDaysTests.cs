using PlankFit.Export.Glue;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>How a plan shifts with temperature is what comes of the same job on a warmer and a cooler day.</summary>
public sealed class OtherDaysTests
{
    [Fact]
    public void TheyAreThePlansOfThoseDays()
    {
        Job job = GluedLaunch.Plan.Job;
        GluePlan planned = GluedLaunch.Plan.Glue!;
        Assert.Equal([3.0, -3.0], planned.OtherDays.All.Select(d => d.Degrees));
        foreach (OtherDay day in planned.OtherDays.All)
        {
            ClockSpec clock = job.Glue!.Clock!;
            GluePlan anew = GluedLaunch
                .Of(
                    job with
                    {
                        Glue = job.Glue with
                        {
                            Clock = clock with
                            {
                                Temperature = new([
                                    .. clock.Temperature.At.Select(p =>
                                        (p.Minute, p.Celsius + day.Degrees)
                                    ),
                                ]),
                            },
                        },
                    }
                )
                .Glue!;
            Assert.Equal(anew.Batches.Count(), day.Batches);
            Assert.Equal(anew.Sessions.Length, day.Sessions);
            Assert.Equal(anew.Batches.Max(b => b.Clocks.DownAt), day.LastDownAt);
            Assert.Equal(anew.Batches.Max(b => b.Grams), day.MostGrams);
            Assert.Equal(anew.NotPlanned, day.NotPlanned);
        }

        // What is hotter kicks sooner.
        Assert.True(planned.OtherDays.All[0].Batches >= planned.OtherDays.All[1].Batches);
        string[] told = [.. OtherDayWords.Of(planned, job.Units)];
        Assert.StartsWith("3 degrees C WARMER all day: ", told[0], StringComparison.Ordinal);
        Assert.StartsWith(
            "5 degrees F COOLER all day: ",
            OtherDayWords.Of(GluedLaunch.Imperial.Glue!, GluedLaunch.Imperial.Job.Units).Last(),
            StringComparison.Ordinal
        );
    }

    /// <summary>Without hours there is nothing to shift.</summary>
    [Fact]
    public void WithoutAClockThereAreNone()
    {
        Job job = GluedLaunch.Plan.Job;
        Assert.Empty(
            GluedLaunch.Of(job with { Glue = job.Glue! with { Clock = null } }).Glue!.OtherDays.All
        );
    }
}
