using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>Lengths along a keel layer's face, which a builder steps off with a tape: on a straight keel the plan length over the cosine of its slope.</summary>
public sealed class KeelLengthTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(6)]
    [InlineData(15)]
    public void AlongTheFaceIsLongerThanInPlanByTheCosine(double slope)
    {
        Job job = PlaneBottom.Job(20, slope, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9),
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
        foreach (KeelLayerPlan layer in WholeBottomTests.Planned(job).Keel!.Layers)
        {
            KeelStation[] rows = [.. layer.Stations.Where(s => s.Side == Side.Starboard)];
            Assert.True(rows.Length > 5);
            Assert.All(
                rows,
                r =>
                    Assert.Equal(
                        (r.PositionMm - rows[0].PositionMm) / Math.Cos(slope * Math.PI / 180),
                        r.AlongMm - rows[0].AlongMm,
                        0.001
                    )
            );
        }
    }
}
