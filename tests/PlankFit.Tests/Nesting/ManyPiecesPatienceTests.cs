using System.Collections.Immutable;
using System.Diagnostics;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Nesting;

/// <summary>Very many pieces: a plan stands before all that could be known of them is worked out, and nothing long is begun once time is over. No clock is in it.</summary>
public sealed class ManyPiecesPatienceTests
{
    private const int Pieces = 800;
    private const double BoardMm = 3700;
    private const double WidthMm = 150;

    /// <summary>Eight hundred slanting pieces, no two alike, are 2.6 million pitches; the plan is there before anything has asked whether there is time for them.</summary>
    [Fact]
    public void APlanStandsBeforeTheFirstLook()
    {
        using var patience = new CountedPatience(1);
        var told = new FirstTold(patience);
        NestPlan plan = Of(Slanting(), Rack(260), patience, told);
        Assert.Equal(0, told.LooksBefore);
        Assert.Equal(0, told.Unplaced);
        Assert.Empty(plan.Unplaced);
    }

    /// <summary>Once time is over no pose of a piece is asked for by itself: so many would be some looks each, and work behind each look.</summary>
    [Fact]
    public void OnceTimeIsOverFewLooksFollow()
    {
        ImmutableArray<SawPiece> pieces = Slanting();
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(pieces, Rack(260), patience, new ClassicalCases.Nowhere());
        Assert.InRange(patience.Looks, 1, Pieces / 4);
        Assert.Empty(CutLaws.Broken(plan, pieces));
    }

    /// <summary>Without time slants lie against each other all the same: as boxes they would fill more boards than there are.</summary>
    [Fact]
    public void WithoutTimeSlantsInterlockAllTheSame()
    {
        ImmutableArray<SawPiece> pieces = Slanting();
        const double KerfMm = 3;
        int asBoxes = (int)
            Math.Ceiling(
                pieces.Sum(p => Length(p) + KerfMm)
                    / (BoardMm - (2 * NestSpec.Usual.EndMm) + KerfMm)
            );
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(pieces, Rack(260), patience, new ClassicalCases.Nowhere());
        Assert.Empty(plan.Unplaced);
        Assert.True(
            plan.Boards.Length < asBoxes,
            $"{plan.Boards.Length} boards, {asBoxes} as boxes"
        );
    }

    /// <summary>A rack that is too short by a tenth: what is left out is told, and that it is much asks for no more looks.</summary>
    [Fact]
    public void AShortRackIsToldInAsFewLooks()
    {
        ImmutableArray<SawPiece> pieces = Slanting();
        using var patience = new CountedPatience(1);
        NestPlan plan = Of(pieces, Rack(180), patience, new ClassicalCases.Nowhere());
        Assert.InRange(patience.Looks, 1, Pieces / 4);
        Assert.InRange(plan.Unplaced.Length, 1, Pieces / 4);
        Assert.Equal(plan.Unplaced.Length, Assert.Single(plan.Short).PieceIds.Length);
    }

    /// <summary>
    /// Ninety boards of a piece each, and a longer one to be had: there are 117,000 threes of them, and two and a half millions of fours, of which none makes it up. Each board is
    /// a look, and time may be over at any of them.
    /// </summary>
    [Fact]
    public void ItIsAskedForEachOfManyBoardsThatMayBeJoined()
    {
        const int Many = 90;
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, Many)
                .Select(i =>
                    SawPieces.Rectangle(FormattableString.Invariant($"S1-{i:00}"), 900 + i, 100)
                ),
        ];
        ImmutableArray<StockBoard> boards =
        [
            .. Enumerable
                .Range(1, Many)
                .Select(i =>
                    SawPieces.Board(FormattableString.Invariant($"B-{i:000}"), 1000.5 + i, 100)
                ),
        ];
        // Too narrow for any piece.
        StockBoard narrow = SawPieces.Board("C-01", 90_000.25, 99);
        var patience = new AskedBy("JoinedBoards");
        NestPlan plan = Of(pieces, boards.Add(narrow), patience, new ClassicalCases.Nowhere());
        Assert.Equal(Many, plan.Boards.Length);
        Assert.Empty(plan.Unplaced);
        Assert.True(patience.Looks >= Many, $"{patience.Looks} looks");
    }

    /// <summary>A piece that goes into no board, and a board that goes into no plan: there is nothing to join.</summary>
    [Fact]
    public void APlanWithoutABoardHasNoneToJoin()
    {
        NestPlan plan = Of(
            [SawPieces.Rectangle("S1-01", 2000, 100)],
            [SawPieces.Board("B-01", 1000, 100)],
            new(CancellationToken.None),
            new ClassicalCases.Nowhere()
        );
        Assert.Empty(plan.Boards);
        Assert.Single(plan.Unplaced);
    }

    /// <summary>Time without end, and how often a class of the program has asked for it.</summary>
    private sealed class AskedBy(string name) : Patience(CancellationToken.None)
    {
        private int looks;

        public int Looks => looks;

        public override bool IsOver
        {
            get
            {
                bool its =
                    new StackFrame(1)
                        .GetMethod()
                        ?.DeclaringType?.FullName?.Contains(name, StringComparison.Ordinal) == true;
                Interlocked.Add(ref looks, its ? 1 : 0);
                return false;
            }
        }
    }

    private sealed class FirstTold(CountedPatience patience) : IProgress<NestProgress>
    {
        public int LooksBefore { get; private set; } = -1;

        public int Unplaced { get; private set; }

        public void Report(NestProgress value)
        {
            if (LooksBefore < 0)
            {
                (LooksBefore, Unplaced) = (patience.Looks, value.Unplaced);
            }
        }
    }

    private static double Length(SawPiece piece) =>
        piece.Outline.Max(p => p.X) - piece.Outline.Min(p => p.X);

    private static ImmutableArray<StockBoard> Rack(int boards) =>
        [SawPieces.Board("B-01", BoardMm, WidthMm + 5) with { Count = boards }];

    private static ImmutableArray<SawPiece> Slanting() =>
        SawPieces.Slanting(3, Pieces, WidthMm, (40, 15), (500, 700));

    private static NestPlan Of(
        ImmutableArray<SawPiece> pieces,
        ImmutableArray<StockBoard> boards,
        Patience patience,
        IProgress<NestProgress> progress
    ) =>
        NestPlanner.Until(
            SawPieces.Spec([.. boards]) with
            {
                Rounds = 0,
            },
            pieces,
            LengthUnit.Millimetre,
            progress,
            patience
        );
}
