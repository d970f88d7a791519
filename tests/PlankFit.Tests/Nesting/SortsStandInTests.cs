using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Where boards of one grade stand in for those of another in what bounds their rows, the bound reaches as far as the longer of them.</summary>
public sealed class SortsStandInTests
{
    /// <summary>Clear boards of 1300 take all seven pieces of 601 to 607, sound ones of 3700 all but the first: two boards hold all, 500,000 mm².</summary>
    [Fact]
    public void ALongBoardOfTheLesserGradeIsBoundedByItsOwnLength()
    {
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("C", 1300, 100) with
            {
                Grade = "clear",
                Count = 7,
            },
            SawPieces.Board("S", 3700, 100) with
            {
                Grade = "sound",
                Count = 7,
            }
        ) with
        {
            KerfMm = 3,
            Grades = ["clear", "sound"],
        };
        NestPlan plan = Planned.Lawful(
            spec,
            [
                .. Enumerable
                    .Range(1, 7)
                    .Select(i =>
                        SawPieces.Rectangle($"S1-0{i}", 600 + i, 100) with
                        {
                            LeastGrade = i == 1 ? "clear" : "sound",
                        }
                    ),
            ]
        );
        Assert.Empty(plan.Unplaced);
        Assert.Equal(500_000, plan.Value, 1e-3);
    }
}
