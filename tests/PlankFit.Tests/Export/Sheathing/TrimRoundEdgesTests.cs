using PlankFit.Export.Sheathing;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Tests.Planking.Sheathing;

namespace PlankFit.Tests.Export.Sheathing;

/// <summary>Every edge that cloth goes round has a line to which it is trimmed there.</summary>
public sealed class TrimRoundEdgesTests
{
    [Theory]
    [InlineData(LengthUnit.Millimetre, "60 mm past its edge")]
    [InlineData(LengthUnit.Foot, "2 3/8\" past its edge")]
    public void RoundTransomAndStemToo(LengthUnit unit, string told)
    {
        SheathedLayer plain = SheathedJobs.Pressed.Sheathing!.Layers[0],
            round = plain with { Spec = plain.Spec with { RoundTransomMm = 60, RoundStemMm = 60 } };
        Assert.Equal(
            [("trim round the transom", told), ("trim round the stem", told)],
            MarkRow
                .Of(round, round.Sides[0], unit)
                .Where(r => r.Where == "all along" && r.Line != "trim round the chine")
                .Select(r => (r.Line, r.Note))
        );
        Assert.DoesNotContain(
            MarkRow.Of(plain, plain.Sides[0], unit),
            r => r.Line is "trim round the transom" or "trim round the stem"
        );
    }
}
