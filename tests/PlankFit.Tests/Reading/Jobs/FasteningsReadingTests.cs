using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[fastenings] as a builder writes it, and its faults.</summary>
public sealed class FasteningsReadingTests
{
    private static string With(string table) => Texts.Job + "\n" + table;

    [Fact]
    public void EveryKeyIsRead()
    {
        FasteningSpec spec = Texts
            .Sound(
                With(
                    """
                    [fastenings]
                    kind = "left in"
                    what = "nail"
                    name = "copper boat nail"
                    spacing = "3 in"
                    nearest = 20
                    clear-of-seams = 15
                    lengths = [50, "40 mm", 45]
                    backing-depth = 40
                    spare = 5
                    pull-down = "none"
                    [[fastenings.layer]]
                    layer = "inner"
                    kind = "staple through strap"
                    strap = 1.5
                    pull-down = { spacing = 90, across = 45, lengths = [12] }
                    [[fastenings.backing]]
                    name = "floor"
                    depth = 30
                    """
                )
            )
            .Fastenings!;
        Assert.Equal(FasteningKind.LeftIn, spec.Usual.Kind);
        Assert.Equal(FastenerShape.Nail, spec.Usual.Shape);
        Assert.Equal(76.2, spec.Usual.SpacingMm!.Value, 1e-9);
        Assert.Equal([40.0, 45, 50], spec.Usual.LengthsMm!.Value);
        Assert.Equal(
            (5, 30, 40),
            (spec.SparePercent, spec.DepthOf("floor"), spec.DepthOf("frame"))
        );
        Assert.True(spec.Usual.PullDown!.Off);
        FasteningSettings own = spec.Of("inner");
        Assert.Equal((15, 1.5, 90), (own.EdgeMm, own.PadMm, own.PullDown!.SpacingMm));
        // Of another kind, it takes over neither the nails' lengths nor their name.
        Assert.Null(own.LengthsMm);
        Assert.Null(own.Name);
        Assert.Null(Texts.Sound().Fastenings);
    }

    [Theory]
    [InlineData("kind = \"screws\"", 18, "\"screw and pad\"", "\"staple through strap\"")]
    [InlineData("spacing = 3", 18, "at least 10 mm")]
    [InlineData("spacing = 50\nnearest = 60", 19, "not be more than the spacing")]
    [InlineData("clear-of-seams = -1", 18, "not be negative")]
    [InlineData("bite = 0", 18, "greater than 0")]
    [InlineData("lengths = 40", 18, "list of lengths")]
    [InlineData("spare = 101", 18, "0 to 100")]
    [InlineData("pad = 9\nstrap = 1", 19, "not both")]
    [InlineData("pull-down = \"some\"", 18, "\"none\"")]
    [InlineData("spacin = 50", 18, "did you mean \"spacing\"")]
    [InlineData(
        "[[fastenings.layer]]\nlayer = \"outer\"",
        19,
        "no layer of planks has that name",
        "inner"
    )]
    [InlineData(
        "[[fastenings.layer]]\nlayer = \"inner\"\n[[fastenings.layer]]\nlayer = \"inner\"",
        21,
        "already"
    )]
    [InlineData("[[fastenings.backing]]\nname = \"x\"", 18, "no \"depth\"")]
    public void AFaultIsFoundAtItsLine(string lines, int line, params string[] words)
    {
        PlankFit.Reading.Jobs.ReadResult result = Texts.Read(With("[fastenings]\n" + lines));
        Assert.Contains(
            result.Findings,
            f =>
                f.Severity == Severity.Error
                && f.Where.StartsWith($"job.toml, line {line},", StringComparison.Ordinal)
                && words.All(w => f.Message.Contains(w, StringComparison.Ordinal))
        );
    }
}
