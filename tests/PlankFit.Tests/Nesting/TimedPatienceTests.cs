using PlankFit.Nesting.Effort;

namespace PlankFit.Tests.Nesting;

/// <summary>A search asks the clock itself. Nothing here waits: time is over at once, or not for days.</summary>
public sealed class TimedPatienceTests
{
    [Fact]
    public void NoTimeIsOverAtOnce() =>
        Assert.True(new TimedPatience(TimeSpan.Zero, CancellationToken.None).IsOver);

    [Fact]
    public void MuchTimeIsNotOver() =>
        Assert.False(new TimedPatience(TimeSpan.FromDays(9), CancellationToken.None).IsOver);

    [Fact]
    public void WhoHasEnoughEndsItSooner() =>
        Assert.True(new TimedPatience(TimeSpan.FromDays(9), new(canceled: true)).IsOver);

    [Fact]
    public void NoPatienceIsOverFromTheBeginning() => Assert.True(Patience.None.IsOver);
}
