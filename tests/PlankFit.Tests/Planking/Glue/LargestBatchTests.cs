using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>
/// Three hands, 4 minutes to mix, 3 to spread a plank and 12 for two hands to fit and fasten it, one spread while another is fastened: of a film of which 42 minutes may be
/// used two planks are down in 31; a third would be in 43, for which the shop has to be 0.34 degrees cooler, or 0.717 of the hour be used.
/// </summary>
public sealed class LargestBatchTests
{
    private static ClockLaw Law(double minutes) =>
        ClockLaw.Through([new(20, minutes), new(19.66, minutes * Math.Pow(2, 0.034))])!;

    [Theory]
    [InlineData(20, 0.7, 2, 31)]
    [InlineData(20, 0.717, 3, 43)]
    [InlineData(20, 0.7166, 2, 31)]
    [InlineData(19.66, 0.7, 3, 43)]
    [InlineData(19.67, 0.7, 2, 31)]
    public void AsManyPlanksAsTheFilmHolds(double celsius, double part, int planks, double minutes)
    {
        Job job = GluedLaunch.Plan.Job;
        GlueBatch first = GluedLaunch
            .Of(
                job with
                {
                    Glue = new(
                        new Mix(
                            "resin",
                            new(2, 1.15, 0.97),
                            new(
                                ClockLaw.Through([
                                    new(10, 900, 100),
                                    new(30, 600, 100),
                                    new(20, 600, 1000),
                                ])!,
                                Law(60)
                            )
                            {
                                Sandable = Law(1200),
                            }
                        )
                        {
                            UsePart = part,
                        },
                        null
                    )
                    {
                        Crew = new(3)
                        {
                            MixMinutes = 4,
                            SpreadMinutes = 3,
                            FastenMinutes = 12,
                            WaitMinutes = 10,
                        },
                        Clock = new([(0, 1440)], new([(0, celsius)])),
                    },
                }
            )
            .Glue!.Batches.MinBy(b => b.MixAt)!;
        Assert.Equal((0, planks), (first.MixAt, first.Planks.Length));
        Assert.Equal(minutes, first.Clocks.DownAt, 1e-9);
    }
}
