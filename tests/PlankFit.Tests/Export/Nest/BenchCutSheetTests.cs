using System.Globalization;
using PlankFit.Export.Stock;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Cut sheets as a builder reads them who has only the sheet.</summary>
public sealed class BenchCutSheetTests
{
    /// <summary>Feet, inches and thirty-seconds are the longest figures there are, and Letter the smallest paper.</summary>
    [Theory]
    [InlineData(LengthUnit.FeetInchesEighths)]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.Millimetre)]
    public void NoLengthIsBrokenInATableOfASheet(LengthUnit unit)
    {
        foreach (
            BottomPlan plan in new[] { NestedPlans.Launch, NestedPlans.Skiff, NestedPlans.Ply }
        )
        {
            BottomPlan shown = In(plan, unit);
            string[] broken = [.. CutSheets.Of(shown, shown.Nest!).SelectMany(BrokenFigures.In)];
            Assert.True(broken.Length == 0, string.Join("\n", broken));
        }
    }

    /// <summary>The wood of what a cut makes lies on the other side of its line.</summary>
    [Fact]
    public void EveryCutAcrossSaysOnWhichSideItsKerfLies()
    {
        BottomPlan plan = NestedPlans.Launch;
        int right = 0,
            left = 0;
        foreach (SawnBoard board in plan.Nest!.Boards)
        {
            BoardCutList cuts = BoardCuts.Of(board, plan.Nest.Spec);
            foreach (SawCut cut in cuts.Cuts.Where(c => c.Kind == CutKind.Crosscut))
            {
                LaidPiece made = board.Pieces.Single(p => p.Piece.Id == (cut.EndOf ?? cut.BeginOf));
                double middle = cuts.Frame.Of(made).Average(p => p.X);
                bool isRight = middle < cut.MiddleMm;
                Assert.Contains(
                    isRight ? ", kerf right" : ", kerf left",
                    BoardCutWords.Kind(cuts, cut, LengthUnit.Foot),
                    StringComparison.Ordinal
                );
                right += isRight ? 1 : 0;
                left += isRight ? 0 : 1;
            }
        }

        Assert.True(right > 10 && left > 10);
    }

    /// <summary>Short pieces at the end of a long board: it is drawn larger, stretch by stretch, and nothing of it is ripped.</summary>
    private static readonly Lazy<BottomPlan> Stretched = new(() =>
    {
        StockBoard board = SawPieces.Board("B-01", 5000, 60);
        SawPiece Triangle(int number, double at, bool up) =>
            up
                ? SawPieces.Of($"S1-0{number}", new(at, 0), new(at + 90, 0), new(at + 45, 45))
                : SawPieces.Of($"S1-0{number}", new(at + 45, 0), new(at + 90, 45), new(at, 45));
        SawPiece[] shapes =
        [
            .. Enumerable.Range(0, 6).Select(i => Triangle(i + 1, 40 + (52 * i), i % 2 == 1)),
            SawPieces.Of("S1-07", new(400, 0), new(2300, 0), new(2240, 60), new(400, 60)),
            SawPieces.Of("S1-08", new(2310, 0), new(4900, 0), new(4840, 60), new(2250, 60)),
        ];
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards =
            [
                new(
                    "B-01",
                    board,
                    [],
                    [.. shapes.Select(p => new LaidPiece(p, false, false, 0, new(0, 0)))]
                ),
            ],
        };
        return PrismaticPlan.Build(new()) with { Nest = nest };
    });

    [Fact]
    public void CutsAreListedInTheOrderOfTheirNumbersWhateverTheStripsShow()
    {
        BottomPlan drawn = In(Stretched.Value, LengthUnit.Foot);
        Assert.True(
            CutSheets.OnBoard(drawn, drawn.Nest!.Spec, drawn.Nest.Boards[0]).Length > 2,
            "no stretches"
        );
        foreach (BottomPlan plan in new[] { drawn, NestedPlans.Launch, NestedPlans.Ply })
        {
            foreach (SawnBoard board in plan.Nest!.Boards)
            {
                int[] numbers =
                [
                    .. CutSheets
                        .Board(plan, plan.Nest.Spec, board)
                        .Shapes.OfType<Lettering>()
                        .Where(l =>
                            l is { Bold: true, Anchor: Anchor.BaselineLeft }
                            && l.Text.All(char.IsAsciiDigit)
                        )
                        .OrderByDescending(l => l.At.Y)
                        .Select(l => int.Parse(l.Text, CultureInfo.InvariantCulture)),
                ];
                Assert.Equal(Enumerable.Range(1, numbers.Length), numbers);
                Assert.Equal(BoardCuts.Of(board, plan.Nest.Spec).Cuts.Length, numbers.Length);
            }
        }
    }

    [Fact]
    public void ABoardThatIsNotRippedHasNoLanes()
    {
        BottomPlan plan = In(Stretched.Value, LengthUnit.Foot);
        string words = string.Join(
            ' ',
            CutSheets
                .Of(plan, plan.Nest!)
                .SelectMany(s => s.Shapes.OfType<Lettering>())
                .Select(l => l.Text)
        );
        Assert.DoesNotContain("ripped into", words, StringComparison.Ordinal);
        Assert.DoesNotContain("lane 1", words, StringComparison.Ordinal);
        Assert.Contains("follows, larger", words, StringComparison.Ordinal);
    }

    private static BottomPlan In(BottomPlan plan, LengthUnit unit) =>
        plan with
        {
            Job = plan.Job with
            {
                Units = unit,
                Output = plan.Job.Output with { Paper = PaperSize.Letter },
            },
        };
}
