using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Two cloths whose laps at the keel end on one line are told, and those that are staggered are not.</summary>
public sealed class LapsTogetherTests
{
    /// <summary>Nothing is sought.</summary>
    private static readonly FirstLine Middle = new FirstLine.Straight(0.5, 0);

    [Theory]
    [InlineData(35, 35, LengthUnit.Millimetre, "25 mm")]
    [InlineData(35, 49, LengthUnit.Millimetre, "25 mm")]
    [InlineData(35, 49, LengthUnit.FeetInchesEighths, "1\"")]
    [InlineData(35, 51, LengthUnit.Millimetre, null)]
    [InlineData(35, 0, LengthUnit.Millimetre, null)]
    public void LapsOnOneLineAreTold(double first, double second, LengthUnit unit, string? more)
    {
        Job job = GluedLaunch.Plan.Job;
        string core = job.Layers.OfType<ClothLayerSpec>().Single().Name;
        BottomPlan plan = GluedLaunch.Of(
            job with
            {
                Planking = job.Planking with
                {
                    Units = unit,
                    Layers = [.. job.Layers, new ClothLayerSpec("outside cloth", 0.5)],
                },
                Sheathing =
                [
                    job.Sheathing[0] with
                    {
                        Layer = core,
                        Keel = new ClothAtKeel.PastCentreLine(first),
                        FirstAlong = Middle,
                    },
                    job.Sheathing[0] with
                    {
                        Layer = "outside cloth",
                        Keel = new ClothAtKeel.PastCentreLine(second),
                        FirstAlong = Middle,
                    },
                ],
                Glue = null,
                Joints = null,
                Fastenings = null,
                SettingUp = null,
                Structure = null,
            }
        );
        Finding[] found =
        [
            .. plan.Findings.Where(f =>
                f.Message.Contains("its lap at the keel ends where", StringComparison.Ordinal)
            ),
        ];
        Assert.Equal(more is null ? 0 : 1, found.Length);
        Assert.All(found, f => Assert.Equal("sheathing.keel", f.About.Key));
        Assert.All(
            found,
            f =>
                Assert.Contains(
                    $"give one of them {more} more past the centre line",
                    f.Message,
                    StringComparison.Ordinal
                )
        );
    }
}
