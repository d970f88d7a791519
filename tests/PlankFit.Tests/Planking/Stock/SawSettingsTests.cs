using System.Collections.Immutable;
using System.Text.RegularExpressions;
using PlankFit.Export.Stock;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>How often the saw is set: cuts that may come in any order come by its setting, and the sheets say how often that makes it.</summary>
public sealed class SawSettingsTests
{
    /// <summary>
    /// Two lanes of three pieces of 900, one of slants at 45 degrees, one square, from 400 on in a board of 3900: whatever is parted leaves 300 to rest on, so the saw
    /// is set twice for eight cuts. From end to end of the board, both lanes at once, it would be set for each.
    /// </summary>
    [Fact]
    public void CutsThatMayComeInAnyOrderComeBySetting()
    {
        BoardCutList list = Two("B-01");
        SawCut[] across = [.. list.Cuts.Where(c => c.Kind == CutKind.Crosscut)];
        Assert.Equal(8, across.Length);
        Assert.Equal(
            [0, 0, 0, 0, 45, 45, 45, 45],
            across.Select(c => Math.Round(c.DegreesFromSquare))
        );
        Assert.Equal(2, list.Settings);
        Assert.Equal(2, Counted(list.Cuts));
        Assert.Equal(8, Counted([.. across.OrderBy(c => c.MiddleMm)]));
    }

    /// <summary>Three boards one by one are six settings, as one job two; every cut once, each board's in their own order.</summary>
    [Fact]
    public void AsOneJobTheSawIsSetLessOften()
    {
        BoardCutList[] boards = [Two("B-01"), Two("B-02"), Two("B-03")];
        Assert.Equal(6, boards.Sum(b => b.Settings));
        Lawful(boards);
        Assert.Equal(2, Counted(SawSettings.OneJob(boards).Select(c => c.Cut)));
    }

    public static TheoryData<string> Hulls => ["launch", "skiff", "plywood"];

    /// <summary>On cut sheets of planks of boats: what is said of every board and of all of them, counted anew.</summary>
    [Theory]
    [MemberData(nameof(Hulls))]
    public void TheSheetsSayHowOftenTheSawIsSet(string hull)
    {
        BottomPlan plan = hull switch
        {
            "launch" => NestedPlans.Launch,
            "skiff" => NestedPlans.Skiff,
            _ => NestedPlans.Ply,
        };
        NestPlan nest = plan.Nest!;
        BoardCutList[] boards = [.. nest.Boards.Select(b => BoardCuts.Of(b, nest.Spec))];
        Lawful(boards);
        int each = boards.Sum(b => Counted(b.Cuts)),
            together = Counted(SawSettings.OneJob(boards).Select(c => c.Cut));
        Assert.True(together < each, $"{together} settings for {each}");
        // What each board would take from end to end.
        int along = boards.Sum(b =>
            Counted([.. b.Cuts.OrderBy(c => c.Lane).ThenBy(c => c.MiddleMm)])
        );
        // Of few boards each may be done with as few anyhow.
        Assert.True(
            hull == "launch" ? each < along : each <= along,
            $"{each} settings for {along}"
        );
        Assert.Contains(
            $"the saw is set {each} times if it is done board by board, and {together} times if",
            Words(CutSheets.Of(plan, nest)[0]),
            StringComparison.Ordinal
        );
        foreach (BoardCutList board in boards)
        {
            int set = Counted(board.Cuts);
            string words = Words(CutSheets.Board(plan, nest.Spec, board.Board));
            Assert.Contains(
                set == 1 ? "the saw is set once;" : $"the saw is set {set} times;",
                words,
                StringComparison.Ordinal
            );
        }

        // The table that the sheet names, line by line.
        ImmutableArray<(BoardCutList Board, SawCut Cut)> job = SawSettings.OneJob(boards);
        string[] rows =
        [
            .. NestTables
                .CutsBySetting(nest, plan.Job.Units)
                .Rows.Select(r => $"{r[1].Text} {r[2].Number}"),
        ];
        Assert.Equal(job.Select(c => $"{c.Board.Board.Id} {c.Cut.Number}"), rows);
    }

    /// <summary>Every cut across is there once, and each board's are in their own order, but for empty ends, which come off all boards first.</summary>
    private static void Lawful(IReadOnlyList<BoardCutList> boards)
    {
        ImmutableArray<(BoardCutList Board, SawCut Cut)> job = SawSettings.OneJob(boards);
        int rest = job.TakeWhile(c => c.Cut.Kind == CutKind.EndOff).Count();
        foreach (BoardCutList board in boards)
        {
            Assert.Equal(
                board
                    .Cuts.Where(Across)
                    .OrderBy(c => c.Kind != CutKind.EndOff)
                    .Select(c => c.Number),
                job.Where(c => c.Board == board).Select(c => c.Cut.Number)
            );
        }

        Assert.DoesNotContain(job.Skip(rest), c => c.Cut.Kind == CutKind.EndOff);
    }

    private static bool Across(SawCut cut) =>
        cut.Kind is CutKind.EndOff or CutKind.Crosscut or CutKind.Parting or CutKind.Stopped
        && !cut.IsPlaned;

    /// <summary>How often another angle stands on the saw, which is set to half a degree.</summary>
    private static int Counted(IEnumerable<SawCut> cuts)
    {
        double[] degrees =
        [
            .. cuts.Where(Across)
                .Select(c =>
                    Math.Round(
                        2
                            * double.RadiansToDegrees(
                                Math.Atan((c.To.X - c.From.X) / (c.To.Y - c.From.Y))
                            )
                    ) / 2
                ),
        ];
        return degrees.Where((d, i) => i == 0 || d != degrees[i - 1]).Count();
    }

    private static BoardCutList Two(string id)
    {
        const double From = 400,
            Wide = 150,
            Kerf = 3;
        StockBoard board = SawPieces.Board(id, 3900, (2 * Wide) + Kerf);
        double slant = 900 + (Kerf * Math.Sqrt(2));
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, 3)
                .Select(i => SawPieces.Parallelogram($"S1-0{i}", 900, Wide, 45)),
            .. Enumerable.Range(4, 3).Select(i => SawPieces.Rectangle($"S1-0{i}", 900, Wide)),
        ];
        PieceId[] ids = [.. pieces.Select(p => p.Id)];
        return BoardCuts.Of(
            new(
                id,
                board,
                [new(0, Wide, [.. ids[..3]]), new(Wide + Kerf, (2 * Wide) + Kerf, [.. ids[3..]])],
                [
                    .. pieces.Select(
                        (p, i) =>
                            new LaidPiece(
                                p,
                                Turned: false,
                                FaceDown: false,
                                0,
                                i < 3
                                    ? new(From + (i * slant), 0)
                                    : new(From + ((i - 3) * (900 + Kerf)), Wide + Kerf)
                            )
                    ),
                ]
            ),
            SawPieces.Spec(board) with
            {
                KerfMm = Kerf,
                // No end is worth keeping, so none comes off by itself.
                LeastOffcutMm = 2000,
            }
        );
    }

    private static string Words(Drawing sheet) =>
        Regex.Replace(
            string.Join(' ', sheet.Shapes.OfType<Lettering>().Select(l => l.Text)),
            @"\s+",
            " "
        );
}
