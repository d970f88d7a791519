using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Solids;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.App.Comparing;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Solids;

/// <summary>Where the master plank is asked for and laid, on a bottom that is a plane: all of it is straight lines.</summary>
public sealed class MasterPlaceTests : IDisposable
{
    private readonly TempFolder folder = new();

    /// <summary>
    /// The prism of <see cref="ComparedJobs"/>: keel 25.4 out and 10.16 up, chine 1016 out and 406.4 up, the table to the outside of the skin. The middle is the line halfway
    /// between, as the skin's outer face has it; the master's own line lies at 45 degrees through it at the place told, straight on the plane.
    /// </summary>
    [Theory]
    [InlineData(3000, "aft", 1)]
    [InlineData(3000, "forward", -1)]
    [InlineData(1234.5, "aft", 1)]
    public void OnAPlaneItIsAStraightLineThroughThePlaceTold(double asked, string heads, int sense)
    {
        string job = ComparedJobs.Prism(
            folder,
            layer: FormattableString.Invariant($"master = {asked}")
        );
        File.WriteAllText(
            job,
            File.ReadAllText(job)
                .Replace("heads = \"aft\"", $"heads = \"{heads}\"", StringComparison.Ordinal)
        );
        BottomPlan plan = PlannedJob
            .From(
                job,
                new Progress<PlanProgress>(),
                new Timings(),
                TestContext.Current.CancellationToken
            )
            .Plan!;
        PlankLayerPlan layer = plan.PlankLayers.Single();
        MasterPlace place = MasterPlace.Of(plan, layer, LengthUnit.Millimetre)!;
        Assert.Equal(asked, place.AskedMm, 1e-6);
        Assert.Equal(Math.Abs(place.LaidMm - asked) >= 0.05, place.Why.Length > 0);
        double y = (25.4 + 1016) / 2,
            z = (10.16 + 406.4) / 2,
            slope = Math.Atan2(406.4 - 10.16, 1016 - 25.4);
        Assert.All(
            place.Middle,
            p =>
            {
                Assert.Equal(y, p[1], 0.06);
                Assert.Equal(z, p[2], 0.06);
            }
        );
        Assert.Equal(0, place.Middle[0][0], 0.06);
        Assert.Equal(6096, place.Middle[^1][0], 0.06);
        // On the middle of the skin, half a thickness within: from there it stands straight out to the face.
        foreach (IReadOnlyList<double> p in place.Across)
        {
            double out_ = (p[1] - y) / Math.Cos(slope);
            Assert.Equal(z + (out_ * Math.Sin(slope)), p[2], 0.15);
            Assert.Equal(place.LaidMm + (sense * out_), p[0], 0.2);
        }

        // From the keel's plumb side to the chine, laid on the skin's middle and half its thickness out from there.
        double outward = 9.525 / 2 * Math.Sin(slope);
        Assert.Equal(1016, place.Across.Max(p => p[1]), 0.2);
        Assert.Equal(25.4 + outward, place.Across.Min(p => p[1]), 0.2);
        // Nothing but the corners moves it, and never by half a plank.
        Assert.InRange(Math.Abs(place.LaidMm - asked), 0, 152.4 * Math.Sqrt(2) / 2);
    }

    public void Dispose() => folder.Dispose();
}
