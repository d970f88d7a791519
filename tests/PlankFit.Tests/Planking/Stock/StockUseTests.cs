using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>What a plan uses of the stock, on two boards reckoned by hand.</summary>
public sealed class StockUseTests
{
    /// <summary>
    /// 2400 by 150 on hand with a piece of 1000: 1397 are kept and a kerf of 3 is dust. 1200 by 160 bought with a piece of 1100 by 150: the rest is too small to
    /// keep.
    /// </summary>
    [Theory]
    [InlineData(22.5)]
    [InlineData(null)]
    public void EverySquareMillimetreIsSomewhere(double? price)
    {
        StockBoard rack = SawPieces.Board("B-01", 2400, 150),
            yard =
                SawPieces.Board("Y-1", 1200, 160) with
                {
                    OnHand = false,
                    Count = null,
                    Price = (decimal?)price,
                };
        NestPlan plan = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(rack, yard) with { KerfMm = 3 },
            Boards =
            [
                new("B-01", rack, [], [At("S1-01", 1000)]),
                new("Y-1", yard, [], [At("S1-02", 1100)]),
            ],
        };
        var use = StockUse.Of(plan);
        Assert.Equal(150 * (1000 + 1100), use.PiecesMm2, 1e-6);
        Assert.Equal(1397 * 150, use.OffcutsMm2, 1e-6);
        Assert.Equal((2400 * 150) + (1200 * 160), use.BoardsMm2, 1e-6);
        Assert.Equal(1200 * 160, use.BoughtMm2, 1e-6);
        Assert.Equal((3 * 150) + (1200 * 160) - (1100 * 150), use.WastedMm2, 1e-6);
        Assert.Equal((decimal?)price, use.Cost);
    }

    private static LaidPiece At(string id, double length) =>
        new(SawPieces.Rectangle(id, length, 150), false, false, 0, default);
}
