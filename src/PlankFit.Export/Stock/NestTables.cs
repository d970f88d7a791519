using System.Collections.Immutable;
using PlankFit.Export.Lists;
using PlankFit.Export.Planks;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>The lists of a plan of cutting: pieces, boards, what to buy, what is left over.</summary>
public static class NestTables
{
    /// <summary>One row a piece, board by board, lane by lane as on its cut sheet.</summary>
    public static Table Pieces(BottomPlan plan, NestPlan nest) =>
        TableOf.Build(
            "cut list",
            [
                new("board", 12, (PieceInBoard r) => r.Board.Id),
                new("piece", 10, r => r.Piece.Piece.Id.ToString()),
                new("lane", 6, r => r.Lane + 1),
                new("side", 11, r => PlankWords.Of(r.Piece.Piece.Side)),
                new("layer", 7, r => LayerNumber.Of(r.Piece.Piece.PlankId)),
                new("how it lies", 46, r => NestWords.Lie(r.Board.Stock, r.Piece)),
                new("begins", 12, r => LengthText.ForPaper(r.From, plan.Job.Units)),
                new("ends", 12, r => LengthText.ForPaper(r.To, plan.Job.Units)),
                new("left beyond", 12, r => LengthText.ForPaper(r.Left, plan.Job.Units)),
                new("begins mm", 11, r => r.From, 2),
                new("ends mm", 11, r => r.To, 2),
                new("left beyond mm", 11, r => r.Left, 2),
                new("turned", 8, r => r.Piece.Turned ? "yes" : "no"),
                new("face down", 8, r => r.Piece.FaceDown ? "yes" : "no"),
            ],
            PieceInBoard.All(nest)
        );

    /// <summary>One row a cut, board by board in the order of cutting: where it meets the edges of its lane, and how it leans.</summary>
    public static Table Cuts(BottomPlan plan, NestPlan nest) =>
        TableOf.Build(
            "cuts",
            [
                new("board", 12, (CutInBoard r) => r.List.Board.Id),
                new("cut", 5, r => r.Cut.Number),
                new("how", 30, r => BoardCutWords.Kind(r.List, r.Cut, plan.Job.Units)),
                new(
                    "makes",
                    22,
                    r =>
                        BoardCutWords.Pieces(r.Cut)
                        + BoardCutWords.LeftLong(r.List, r.Cut, plan.Job.Units)
                ),
                new("lane", 6, r => r.Cut.Lane + 1),
                new("at lower edge", 16, r => r.Place(upper: false, plan.Job.Units)),
                new("at upper edge", 16, r => r.Place(upper: true, plan.Job.Units)),
                new("leans", 18, r => BoardCutWords.Lean(r.Cut)),
                new("from mm", 11, r => r.Cut.From.X, 2),
                new("from up mm", 11, r => r.Up(r.Cut.From), 2),
                new("to mm", 11, r => r.Cut.To.X, 2),
                new("to up mm", 11, r => r.Up(r.Cut.To), 2),
                new("degrees from square", 11, r => r.Degrees, 2),
                new("off the straight mm", 11, r => r.Cut.OffMm, 2),
                new("kerf mm", 9, r => r.Cut.KerfMm, 2),
            ],
            CutInBoard.All(nest)
        );

    /// <summary>The cuts across of all boards as one job, by the saw's setting: empty ends come off and every board is ripped first. Each board's are in their own order.</summary>
    public static Table CutsBySetting(NestPlan nest, LengthUnit unit) =>
        TableOf.Build(
            "cuts by setting",
            [
                new("saw", 18, (CutInBoard r) => BoardCutWords.Setting(r.Cut)),
                new("board", 12, r => r.List.Board.Id),
                new("cut", 5, r => r.Cut.Number),
                new("makes", 22, r => BoardCutWords.Pieces(r.Cut)),
                new("lane", 6, r => r.Cut.Lane + 1),
                new("at lower edge", 16, r => r.Place(upper: false, unit)),
                new("at upper edge", 16, r => r.Place(upper: true, unit)),
                new("leans", 18, r => BoardCutWords.Lean(r.Cut)),
                new("kerf", 18, r => BoardCutWords.Beside(r.Cut)),
            ],
            SawSettings
                .OneJob(nest.Boards.Select(b => BoardCuts.Of(b, nest.Spec)))
                .Select(c => new CutInBoard(c.Board, c.Cut))
        );

    /// <summary>One row a board that is cut into.</summary>
    public static Table Boards(BottomPlan plan, NestPlan nest) =>
        TableOf.Build(
            "boards",
            [
                new("board", 12, (SawnBoard b) => b.Id),
                new("kind", 8, b => NestWords.Of(b.Stock.Kind)),
                new("size", 26, b => NestWords.Size(b.Stock, plan.Job.Units)),
                new("species", 16, b => b.Stock.Species),
                new("grade", 10, b => b.Stock.Grade),
                new("from", 12, b => b.Stock.OnHand ? "the rack" : "to buy"),
                new("pieces", 60, b => string.Join(" ", b.Pieces.Select(p => p.Piece.Id))),
                new("length mm", 11, b => b.Stock.LengthMm, 1),
                new("width mm", 11, b => b.Stock.WidthMm, 1),
                new("in pieces %", 11, b => 100 * PieceInBoard.Filled(b), 1),
                new("price", 9, b => (double?)b.Stock.Price, 2),
            ],
            nest.Boards
        );

    /// <summary>One row a size to be bought: so many, so long, so wide, so thick; what no list has first.</summary>
    public static Table ToBuy(BottomPlan plan, NestPlan nest) =>
        TableOf.Build(
            "to buy",
            [
                new("count", 8, (Bought b) => b.Count),
                new("kind", 8, b => NestWords.Of(b.Kind)),
                new("length", 14, b => LengthText.ForPaper(b.Size.LengthMm, plan.Job.Units)),
                new("width", 12, b => PlankWords.Small(b.Size.WidthMm, plan.Job.Units)),
                new("thickness", 12, b => PlankWords.Small(b.Size.ThicknessMm, plan.Job.Units)),
                new("species", 16, b => b.Species),
                new("grade", 10, b => b.Grade),
                new("in the list", 14, b => b.Named ?? NotListed),
                new("price of one", 10, b => (double?)b.One, 2),
                new("price", 10, b => (double?)b.Price, 2),
                new("length mm", 11, b => b.Size.LengthMm, 1),
                new("width mm", 11, b => b.Size.WidthMm, 1),
                new("thickness mm", 11, b => b.Size.ThicknessMm, 2),
            ],
            Bought.All(nest)
        );

    /// <summary>Of boards that pieces without a place ask for.</summary>
    internal const string NotListed = "missing: in no list";

    /// <summary>In the very form of stock.csv, so that it can be named as stock the next time. Sizes are rounded down to what is surely there.</summary>
    public static Table OffcutsAsStock(BottomPlan plan, NestPlan nest)
    {
        string Size(double mm) => StockCells.Length(mm, plan.Job.WrittenIn);
        return TableOf.Build(
            "offcuts",
            [
                new("board", 14, (Offcut o) => o.Id),
                new("kind", 8, o => NestWords.Of(o.Stock.Kind)),
                new("count", 8, _ => "1"),
                new("length", 12, o => Size(o.LengthMm)),
                new("width", 12, o => Size(o.WidthMm)),
                new(
                    "thickness",
                    12,
                    o => StockCells.Thickness(o.Stock.ThicknessMm, plan.Job.WrittenIn)
                ),
                new("species", 16, o => o.Stock.Species),
                new("grade", 10, o => o.Stock.Grade),
                new(
                    "price",
                    9,
                    _ => nest.Spec.Objective == NestObjective.Cost ? "0" : TableCell.Empty
                ),
            ],
            Offcuts.Of(nest)
        );
    }

    public static Table Unplaced(NestPlan nest) =>
        TableOf.Build(
            "without a place",
            [
                new("piece", 10, (UnplacedPiece u) => u.Piece.Id.ToString()),
                new("what is missing", 90, u => u.Why),
            ],
            nest.Unplaced
        );

    public static ImmutableArray<Table> All(BottomPlan plan, NestPlan nest) =>
        [
            Pieces(plan, nest),
            Cuts(plan, nest),
            CutsBySetting(nest, plan.Job.Units),
            Boards(plan, nest),
            ToBuy(plan, nest),
            OffcutsAsStock(plan, nest),
            Unplaced(nest),
            PlanTables.About(plan),
        ];
}
