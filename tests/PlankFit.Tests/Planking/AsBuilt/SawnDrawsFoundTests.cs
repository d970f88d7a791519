using CsCheck;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>Draws of <see cref="SawnThenChangedTests"/> on which a fault was found once: they are the same in every run, and CI draws them in the long one.</summary>
public sealed class SawnDrawsFoundTests
{
    /// <summary>A draw of chance on which the law itself was mistaken: five millimetres of chine in a corner, beyond which the plank's own edge leaves no wood.</summary>
    [Fact]
    public void ACornerIsLeftLongAsFarAsThereIsWood() => Hold(RandomHull.Gen, "b-TsiENOzBT1");

    /// <summary>Another: a face's line at the keel ends on the chine's own curve, 0.0011 mm off the chord that is sawn there.</summary>
    [Fact]
    public void AFaceMayEndOnTheCurveOfTheNextEnd() =>
        Hold(SawnThenChangedTests.Tender, "1u9jEtJiRs51");

    /// <summary>Another: planks that were laid narrower by a ten-thousandth, for their stock; held by what is sawn they were laid as wide as it, and one came out 0.0002 mm wider.</summary>
    [Fact]
    public void ARowThatIsHeldKeepsToItsStock() => Hold(RandomHull.Gen, "4u9StSTFUNw1");

    /// <summary>
    /// Another: a corner piece of half its stock's width lay all on one side of its own line, where the surface is curved by K = 1.8e-6 a square millimetre, and its
    /// corners came out 0.17° from what they are on the hull.
    /// </summary>
    [Fact]
    public void ACornerPieceLiesAboutItsOwnLineWhereTheHullIsCurved() =>
        Hold(RandomHull.Gen, "2cEq9bvh0PA1");

    /// <summary>Another on which the law was mistaken: on so hollow a chine no flat shape of a whole plank's width has its corners within 0.05°.</summary>
    [Fact]
    public void NoFlatPlankHasAllAnglesOfACurvedHull() =>
        Hold(SawnThenChangedTests.Tender, "b7Ql1EAKbB21");

    private static void Hold(Gen<Job> jobs, string seed)
    {
        if (LongRuns.More)
        {
            SawnThenChangedTests.HoldOnce(jobs, seed);
        }
    }
}
