using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>A key that once said less, or of which somebody remembers a part, is answered with the one that there is.</summary>
public sealed class NearestPartTests
{
    [Theory]
    [InlineData("drift", "angle-drift")]
    [InlineData("Timber", "clear-of-timber-edge")]
    [InlineData("widht", "width")]
    [InlineData("of", null)]
    public void APartOfAKeyIsNearestToIt(string written, string? near) =>
        Assert.Equal(
            near,
            NearestName.Of(written, ["width", "angle-drift", "clear-of-timber-edge"])
        );

    [Fact]
    public void TheOldKeyOfALayerIsAnsweredWithTheNew() =>
        Texts.Finds(
            Texts.Read(Texts.Job + "\ndrift = 5\n"),
            Severity.Error,
            "job.toml, line 17, column 1",
            "did you mean \"angle-drift\"?"
        );
}
