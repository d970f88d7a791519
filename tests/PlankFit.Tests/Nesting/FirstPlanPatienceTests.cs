using System.Collections.Immutable;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Nesting;

/// <summary>The very first plan keeps to the time as well, and so does what is told after the search. No clock is in it.</summary>
public sealed class FirstPlanPatienceTests
{
    private const int Pieces = 500;

    /// <summary>Five hundred pieces of one shape: all that lies before the first plan is a few looks, so that it is the plan which asks for each.</summary>
    [Fact]
    public void TheFirstPlanAsksForEveryPiece()
    {
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(SawPieces.Board("B-01", 3700, 100) with { Count = 200 }, patience);
        Assert.Empty(plan.Unplaced);
        Assert.True(patience.Looks > Pieces, $"{patience.Looks} looks");
    }

    /// <summary>A hundred of them too many for the rack: each is told what would serve it, the same thing.</summary>
    [Fact]
    public void ManyPiecesWithoutAPlaceAreTold()
    {
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(SawPieces.Board("B-01", 3700, 100) with { Count = 100 }, patience);
        Assert.Equal(200, plan.Unplaced.Length);
        Assert.Equal(
            "all boards that could give it are full: one more, clear for 1200 mm long and 100 mm wide, would serve",
            Assert.Single(plan.Unplaced.Select(u => u.Why).Distinct())
        );
    }

    private static NestPlan Of(StockBoard board, CountedPatience patience)
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, Pieces)
                .Select(i =>
                    SawPieces.Rectangle(FormattableString.Invariant($"S1-{i:00}"), 1200, 100)
                ),
        ];
        NestPlan plan = NestPlanner.Until(
            SawPieces.Spec(board),
            pieces,
            LengthUnit.Millimetre,
            new ClassicalCases.Nowhere(),
            patience
        );
        Assert.Empty(CutLaws.Broken(plan, pieces));
        return plan;
    }
}
