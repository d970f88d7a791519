using PlankFit.Export.Glue;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Export.Glue;

/// <summary>Marks on a cup are given only where both parts can be read by them.</summary>
public sealed class CupMarkTests
{
    /// <summary>In a straight cup of 80 mm: 2 to 1 with 60 and 30 ml stands at 11.9 and 17.9 mm: the hardener's 6 mm are no measure, however high the resin stands.</summary>
    [Theory]
    [InlineData(2, 0.060, false, false)]
    [InlineData(2, 0.120, true, false)]
    [InlineData(2, 0.300, true, true)]
    [InlineData(5, 0.200, false, false)]
    [InlineData(5, 0.300, true, false)]
    [InlineData(5, 0.700, true, true)]
    public void TheHardenersStepIsWhatCounts(
        double resinPerHardener,
        double resinLitres,
        bool inMillimetres,
        bool inInches
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
        Assert.Equal(inMillimetres, BatchCards.Marked(cup, batch, LengthUnit.Millimetre));
        Assert.Equal(inInches, BatchCards.Marked(cup, batch, LengthUnit.Foot));
    }
}
