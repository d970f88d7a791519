using PlankFit.Planking.Fastenings;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>Lengths worked by hand.</summary>
public sealed class FasteningLengthTests
{
    /// <summary>1 penny for each 1/8 in of planking (a small-craft association's list, read; pennies to inches by the trade's own measure, from memory): 1 in takes 8d, 2 1/2 in long; 3/4 in takes 6d, 2 in; 1/2 in takes 4d, 1 1/2 in.</summary>
    [Theory]
    [InlineData(1, 2.5)]
    [InlineData(0.75, 2)]
    [InlineData(0.5, 1.5)]
    public void TheNailRuleGivesTheTradesLengths(double plankIn, double nailIn) =>
        Assert.Equal(
            nailIn * 25.4,
            (plankIn * 25.4) + FasteningRule.NailBiteMm(plankIn * 25.4),
            1e-9
        );

    /// <summary>A pad of 9 on a skin of 9 into a stringer: 18 to the timber.</summary>
    [Theory]
    [InlineData(null, 45.0, "25 30 35 40 45", 40.0, 22.0)] // 18 + 21.7 by the nail rule = 39.7
    [InlineData(null, 20.0, "25 30 35 40 45", 35.0, 17.0)] // 3 left before the point: 35 at most
    [InlineData(25.0, 28.0, "25 30 35 40 45", 40.0, 22.0)] // 43 asked, 45 would leave 1
    [InlineData(12.0, null, "25 30 35 40 45", 30.0, 12.0)]
    [InlineData(12.0, null, "", 30.0, 12.0)]
    [InlineData(13.0, null, "", 35.0, 17.0)]
    [InlineData(13.0, 18.0, "", 30.0, 12.0)] // 31 asked, 33 at most, steps of 5
    [InlineData(12.0, 20.0, "50 60", null, 0.0)]
    [InlineData(12.0, 20.0, "10 18", null, 0.0)]
    public void IntoTimber(double? bite, double? depth, string had, double? length, double bites)
    {
        var rule = FasteningRule.Of(
            new()
            {
                BiteMm = bite,
                LengthsMm =
                    had.Length == 0
                        ? null
                        :
                        [
                            .. had.Split(' ')
                                .Select(l =>
                                    double.Parse(
                                        l,
                                        System.Globalization.CultureInfo.InvariantCulture
                                    )
                                ),
                        ],
            },
            9,
            true
        );
        ChosenLength chosen = FasteningLengths.IntoBacking(rule, "stringer", 9, depth, 5);
        Assert.Equal(length, chosen.LengthMm);
        Assert.Equal(bites, chosen.BiteMm, 1e-9);
    }

    /// <summary>Second skin of 9 over a cloth of 1 and a skin of 9. A staple through a strap of 1: 11 to the skin below, of 9, of which 6 are wanted and 8 allowed. A screw through a pad of 9 and all 19, into a block of 18: 12 wanted, 15 allowed.</summary>
    [Fact]
    public void BetweenTheTimbers()
    {
        var staples = FasteningRule.Of(new() { Kind = FasteningKind.StapleThroughStrap }, 9, false);
        ChosenLength staple = FasteningLengths.PullDown(
            staples.PullDown! with
            {
                LengthsMm = [16, 18, 22],
            },
            19,
            10,
            5
        );
        Assert.Equal(
            (11, 6, 18, 7),
            (staple.PadMm + staple.PassedMm, staple.WantedBiteMm, staple.LengthMm, staple.BiteMm)
        );

        var screws = FasteningRule.Of(new(), 9, false);
        ChosenLength screw = FasteningLengths.PullDown(screws.PullDown!, 19, 10, 5);
        Assert.Equal(
            (28, 12, 40, 12),
            (screw.PadMm + screw.PassedMm, screw.WantedBiteMm, screw.LengthMm, screw.BiteMm)
        );
        Assert.Null(FasteningRule.Of(new(), 9, true).PullDown);
    }

    [Theory]
    [InlineData(579, 10, 637)]
    [InlineData(100, 10, 110)]
    [InlineData(1, 10, 2)]
    [InlineData(30, 0, 30)]
    [InlineData(0, 10, 0)]
    public void SpareIsRoundedUpToWholeOnes(int count, double percent, int bought) =>
        Assert.Equal(bought, FasteningTotals.WithSpare(count, percent));
}
