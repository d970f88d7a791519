using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Names of planks: one text for each name and one name for each text.</summary>
public sealed class PlankIdTests
{
    private static Gen<Side> Sides => Gen.Bool.Select(port => port ? Side.Port : Side.Starboard);

    /// <summary>Bottoms and lettered panels; numbers of every length, and those ahead of 00.</summary>
    private static Gen<PlankId> Names =>
        Gen.Select(
            Sides,
            Gen.OneOf(Gen.Const(PlankId.Bottom), Gen.Char['A', 'Z'].Select(c => $"{c}")),
            Gen.OneOf(Gen.Int[1, 9], Gen.Int[10, 999]),
            Gen.OneOf(
                Gen.Int[0, 99],
                Gen.Int[100, 999],
                Gen.Int[1000, 99999],
                Gen.Int[-99, -1],
                Gen.Int[-9999, -100]
            ),
            (side, panel, layer, number) => new PlankId(side, panel, layer, number)
        );

    /// <summary>The same by their letters and digits.</summary>
    private static Gen<string> Texts =>
        Gen.Select(
            Gen.Char["SP"],
            Gen.OneOf(Gen.Const(""), Gen.Char['A', 'Z'].Select(c => $"{c}")),
            Digits(1, 3),
            Gen.OneOf(
                Gen.String[Gen.Char['0', '9'], 2, 2],
                Digits(3, 5),
                Digits(1, 4).Select(d => "A" + d)
            ),
            (side, panel, layer, number) => $"{side}{panel}{layer}-{number}"
        );

    private static Gen<string> Digits(int least, int most) =>
        Gen.Select(
            Gen.Char['1', '9'],
            Gen.String[Gen.Char['0', '9'], least - 1, most - 1],
            (first, more) => first + more
        );

    [Fact]
    public void ANameIsReadBackAsItWasWritten() =>
        Names.Sample(id =>
        {
            Assert.Equal(id, PlankId.Parse(id.ToString()));
            Assert.Equal(id, id.Twin.Twin);
            Assert.Equal(id with { Side = id.Twin.Side }, id.Twin);
            Assert.NotEqual(id.Side, id.Twin.Side);
        });

    [Fact]
    public void ATextIsWrittenAsItWasRead() =>
        Texts.Sample(text => Assert.Equal(text, PlankId.Parse(text)?.ToString()));

    [Theory]
    [InlineData("S1-07", Side.Starboard, "", 1, 7, "7", "07")]
    [InlineData("P2-00", Side.Port, "", 2, 0, "0", "00")]
    [InlineData("S1-123", Side.Starboard, "", 1, 123, "123", "123")]
    [InlineData("P12-A1", Side.Port, "", 12, -1, "A1", "A1")]
    [InlineData("ST1-07", Side.Starboard, "T", 1, 7, "7", "07")]
    [InlineData("PA1-A12", Side.Port, "A", 1, -12, "A12", "A12")]
    public void ItsPartsAreWhatTheTextSays(
        string text,
        Side side,
        string panel,
        int layer,
        int number,
        string alone,
        string padded
    )
    {
        PlankId id = Named.Plank(text);
        Assert.Equal(new(side, panel, layer, number), id);
        Assert.Equal((alone, padded), (id.Short, id.Padded));
    }

    [Theory]
    [InlineData("")]
    [InlineData("S")]
    [InlineData("S1")]
    [InlineData("S1-7")]
    [InlineData("S1-007")]
    [InlineData("S1-100000")]
    [InlineData("S1-A0")]
    [InlineData("S1-A01")]
    [InlineData("S1-A")]
    [InlineData("S1--1")]
    [InlineData("S0-07")]
    [InlineData("S01-07")]
    [InlineData("S1000-07")]
    [InlineData("s1-07")]
    [InlineData("X1-07")]
    [InlineData("St1-07")]
    [InlineData("STT1-07")]
    [InlineData("S1-07a")]
    [InlineData(" S1-07")]
    [InlineData("S1-07 ")]
    public void AnythingElseNamesNoPlank(string text) => Assert.Null(PlankId.Parse(text));

    /// <summary>Starboard before port, layer by layer, from forward aft: A2, A1, 00, and 100 after 99.</summary>
    [Fact]
    public void TheyAreInTheOrderOfLists()
    {
        string[] order =
        [
            "S1-A2",
            "S1-A1",
            "S1-00",
            "S1-99",
            "S1-100",
            "S2-07",
            "S10-07",
            "ST1-07",
            "P1-07",
        ];
        Assert.Equal(
            order,
            order.Reverse().Select(Named.Plank).Order().Select(id => id.ToString())
        );
    }

    [Fact]
    public void PiecesJointsAndSeamsAreNamedByTheirPlanks()
    {
        PlankId plank = Named.Plank("S1-07");
        Assert.Equal("S1-07", PieceId.Whole(plank).ToString());
        Assert.Equal("S1-07a", PieceId.Of(plank, 0).ToString());
        Assert.Equal("P1-07c", PieceId.Of(plank, 2).Twin.ToString());
        Assert.Equal("S1-07a/b", new JointId(plank, 0).ToString());
        Assert.Equal("P1-07c/d", new JointId(plank, 2).Twin.ToString());
        Assert.Equal("S1-07/08", new SeamId(plank, Named.Plank("S1-08")).ToString());
        Assert.Equal(
            "P1-99/100",
            new SeamId(Named.Plank("S1-99"), Named.Plank("S1-100")).Twin.ToString()
        );
        Assert.Equal(
            "ST1-A1/00",
            new SeamId(Named.Plank("ST1-A1"), Named.Plank("ST1-00")).ToString()
        );
        Assert.Equal("S1-07", new SeamId(plank, null).ToString());
    }
}
