using PlankFit.Export.Glue;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Tests.Export.Glue;

/// <summary>Marks on a cup are given only where both parts can be read by them, by one limit in all units.</summary>
public sealed class CupMarkTests
{
    /// <summary>In a straight cup of 80 mm: 2 to 1 with 60 and 30 ml stands at 11.9 and 17.9 mm: the hardener's 6 mm are no measure, however high the resin stands.</summary>
    [Theory]
    [InlineData(2, 0.060, false)]
    [InlineData(2, 0.127, false)]
    [InlineData(2, 0.128, true)]
    [InlineData(5, 0.319, false)]
    [InlineData(5, 0.320, true)]
    [InlineData(0.2, 0.060, false)]
    [InlineData(0.2, 0.064, true)]
    public void TheHardenersStepIsWhatCounts(
        double resinPerHardener,
        double resinLitres,
        bool marked
    )
    {
        var ratio = new MixRatio(resinPerHardener, 1.15, 0.97);
        MixParts parts = ratio.Parts(
            (resinLitres * 1.15) + (resinLitres / resinPerHardener * 0.97)
        );
        Assert.Equal(resinLitres, parts.ResinLitres, 1e-9);
        var batch = new GlueBatch(
            "B01",
            "inner",
            Side.Starboard,
            0,
            1000 * parts.Kg,
            parts,
            default
        );
        var cup = new Cup(40, 0);
        Assert.Equal(marked, BatchCards.Marked(cup, batch));
    }
}
