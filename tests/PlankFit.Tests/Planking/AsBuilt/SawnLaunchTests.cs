using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What <see cref="SawnThenChangedTests"/> holds of small hulls, of the launch with everything: some ten seconds a draw, for the long run.</summary>
public sealed class SawnLaunchTests
{
    [Fact]
    public void TheLaunchIsPlannedWhateverChanges() =>
        SawnThenChangedTests.HoldTheLaunch(LongRuns.Of(0, 2));
}
