using PlankFit.Export.Sheathing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export.Glue;
using PlankFit.Tests.Planking.Sheathing;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheathing;

/// <summary>A stitched cloth whose stitching is to lie one way is cut with that face where it belongs, and its sheets say which.</summary>
public sealed class StitchSideTests
{
    private const string Second = "second cloth";

    [Theory]
    [InlineData(Facing.ToTheWood, "to the wood", "down")]
    [InlineData(Facing.Outward, "outward", "up")]
    public void NothingIsTurnedOverAndTheSheetsSayWhichFace(Facing side, string lies, string floor)
    {
        BottomPlan plan = Planned(side, null);
        RollPlan roll = Assert.Single(plan.Sheathing!.Rolls);
        Assert.All(roll.Rolls.SelectMany(r => r.Pieces), p => Assert.False(p.Over, p.Piece.Id));
        string words = Words(plan);
        Assert.Contains(
            $"stitched 600 with stitching {floor}. On the boat cloth 1 cloth outside lies with its stitching {lies}.",
            words,
            StringComparison.Ordinal
        );
        Assert.All(
            SheathingTables.Pieces(plan, plan.Sheathing).Rows,
            r => Assert.Contains(r, c => c.Text == $"stitching {lies}")
        );
    }

    /// <summary>Of a roll that lies with its stitching down, what goes on with it outward is cut as its mirror image, and no other.</summary>
    [Fact]
    public void OffOneRollTheOtherFaceIsTheMirrorImage()
    {
        BottomPlan plan = Planned(Facing.ToTheWood, Facing.Outward);
        PieceOnRoll[] pieces =
        [
            .. Assert.Single(plan.Sheathing!.Rolls).Rolls.SelectMany(r => r.Pieces),
        ];
        Assert.Equal(4, pieces.Length);
        Assert.All(pieces, p => Assert.Equal(p.Piece.Layer == 2, p.Over));
        string words = Words(plan);
        Assert.Contains("stitched 600 with stitching down.", words, StringComparison.Ordinal);
        Assert.Contains(
            "On the boat cloth 2 second cloth lies with its stitching outward.",
            words,
            StringComparison.Ordinal
        );
        Assert.Equal(
            2,
            SheathingTables
                .Pieces(plan, plan.Sheathing)
                .Rows.Count(r =>
                    r.Any(c =>
                        c.Text?.EndsWith("outer face down", StringComparison.Ordinal) == true
                    )
                )
        );
    }

    /// <summary>Where the job does not say, either face will do, and no side is told.</summary>
    [Fact]
    public void WhereItIsNotSaidNoneIsTold()
    {
        BottomPlan plan = Planned(null, null);
        Assert.Contains(
            "stitched 600 with either face up. Thick",
            Words(plan),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("stitching", Words(plan), StringComparison.Ordinal);
    }

    private static string Words(BottomPlan plan) =>
        string.Join(' ', GlueSheetsTests.Words(SheathingSheets.Of(plan, plan.Sheathing!)));

    private static BottomPlan Planned(Facing? side, Facing? second)
    {
        Job job = SheathedJobs.Outside(
            SheathedJobs.Bare(DemoPlans.Of("survey-launch").Job),
            s => s with { FirstAlong = new FirstLine.Straight(0.5, -2), StitchSide = side }
        );
        return BottomPlanner
            .Plan(
                second is null
                    ? job
                    : job with
                    {
                        Layers = job.Layers.Add(new ClothLayerSpec(Second, 1)),
                        Sheathing = job.Sheathing.Add(
                            job.Sheathing[0] with
                            {
                                Layer = Second,
                                StitchSide = second,
                                Keel = new ClothAtKeel.ShortOfEdge(10),
                            }
                        ),
                    }
            )
            .Plan!;
    }
}
