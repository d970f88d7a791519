using System.Collections.Immutable;
using CsCheck;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>A search that is ended anywhere gives a whole plan and a bound that holds. No clock is in it: time is over when it has been asked for so many times.</summary>
public sealed class PatienceTests
{
    /// <summary>After each of so many looks at the clock, whatever the search was at: first plan, pitches, prices, rows, mixes, improving.</summary>
    [Fact]
    public void WhereverItEndsThePlanIsWhole()
    {
        (NestSpec spec, ImmutableArray<SawPiece> pieces) = RackAndYard();
        using var whole = new CountedPatience(int.MaxValue);
        NestPlan best = Of(spec, pieces, whole);
        Assert.True(whole.Looks > 300, $"{whole.Looks} looks");
        int steps = Long.Runs(12, 600);
        for (int i = 0; i <= steps; i++)
        {
            // All of the first looks, and then ever fewer.
            int looks = (int)Math.Pow(whole.Looks, (double)i / steps);
            using var patience = new CountedPatience(looks);
            NestPlan plan = Of(spec, pieces, patience);
            Assert.Empty(CutLaws.Broken(plan, pieces));
            Assert.Empty(plan.Unplaced);
            Assert.True(
                plan.LowerBound >= 0 && plan.LowerBound <= best.Value * (1 + 1e-9),
                $"after {looks} looks a bound of {plan.LowerBound}, and {best.Value} is possible"
            );
        }
    }

    /// <summary>On jobs by chance, with twins, sheets, faults and all.</summary>
    [Fact]
    public void OnJobsByChanceToo() =>
        Gen.Select(RandomCutting.Gen, Gen.Int[0, 400])
            .Sample(
                t =>
                {
                    using var patience = new CountedPatience(t.Item2);
                    NestPlan plan = Of(t.Item1.Spec, t.Item1.Pieces, patience);
                    Assert.Empty(CutLaws.Broken(plan, t.Item1.Pieces));
                },
                iter: LongRuns.Of(20, 2000),
                threads: 2
            );

    /// <summary>A draw of chance: the cut along the grain between two tapered pieces was carried on beyond its lane, through what is kept beside it.</summary>
    [Fact]
    public void ACutBetweenPiecesAbreastStaysInItsLane() =>
        Gen.Select(RandomCutting.Gen, Gen.Int[0, 400])
            .Sample(
                t =>
                {
                    using var patience = new CountedPatience(t.Item2);
                    NestPlan plan = Of(t.Item1.Spec, t.Item1.Pieces, patience);
                    Assert.Empty(CutLaws.Broken(plan, t.Item1.Pieces));
                },
                seed: "5nLKGzPqMJ32",
                iter: 1,
                threads: 1
            );

    /// <summary>A hundred things in rows of thirty metres: no row is weighed in every order.</summary>
    [Fact]
    public void RowsOfALongBoardTakeAsFewLooksAsAny()
    {
        ImmutableArray<SawPiece> pieces = Slanting(100);
        NestSpec spec = SawPieces.Spec(SawPieces.Board("B-01", 30_000, 155) with { Count = 4 });
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(spec, pieces, patience);
        Assert.Empty(CutLaws.Broken(plan, pieces));
        Assert.Empty(plan.Unplaced);
        // Once it is over nothing looks long for anything.
        Assert.InRange(patience.Looks, 1, 1000);
    }

    private static (NestSpec Spec, ImmutableArray<SawPiece> Pieces) RackAndYard() =>
        (
            SawPieces.Spec(
                SawPieces.Board("B-01", 2400, 155),
                SawPieces.Board("B-02", 3100, 320) with
                {
                    Faults = [new(900, 950, 0, 60)],
                },
                SawPieces.Board("Y-1", 3600, 155) with
                {
                    OnHand = false,
                    Count = null,
                },
                SawPieces.Board("Y-2", 2700, 155) with
                {
                    OnHand = false,
                    Count = null,
                }
            ) with
            {
                Rounds = 12,
            },
            Slanting(10)
        );

    /// <summary>Planks with ends at angles of their own, always the same ones.</summary>
    private static ImmutableArray<SawPiece> Slanting(int count) =>
        SawPieces.Slanting(3, count, 150, (40, 15), (500, 700));

    private static NestPlan Of(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        CountedPatience patience
    ) =>
        NestPlanner.Until(
            spec,
            pieces,
            LengthUnit.Millimetre,
            new ClassicalCases.Nowhere(),
            patience
        );
}
