using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// The cut sheets: every board a strip to scale with its pieces as they lie, its cuts numbered in a good order, and beside it where each cut is and how it leans.
/// </summary>
public static class CutSheets
{
    private const double HeadMm = 8.5;
    private const double IdHeight = 4;
    private const double AboveMm = StripMarks.AboveMm + 0.5;
    private const double BelowMm = 6;
    private const double GapMm = 5;
    private const double TablesGapMm = 6;

    /// <summary>Of a strip on paper, at the most; more where a board has many lanes, so that names and numbers find room in each.</summary>
    private const double StripMm = 42;
    private const double LaneMm = 13;
    private const double MostStripMm = 112;

    public static ImmutableArray<Drawing> Of(BottomPlan plan, NestPlan nest)
    {
        SheetFormat format = SheetFormat.Bench(plan.Job);
        Box inside = Frame.Inside(format).Within(3);
        var block = new TitleBlock(
            "Cut sheets",
            "boards with the marked face up; bold lines are their marked end and marked edge",
            SheetWords.Unit(plan.Job.Units),
            null,
            Cautions.Boards
        );
        var pages = new List<SheetPage>();
        var open = new List<(Part Part, double Top)>();
        double top = inside.Top - IntroMm(inside.Width);
        void Close()
        {
            ImmutableArray<(Part Part, double Top)> parts = [.. open];
            bool first = pages.Count == 0;
            pages.Add(
                new(
                    format,
                    block,
                    (pad, _) =>
                    {
                        if (first)
                        {
                            pad.Paragraph(
                                inside.Left,
                                inside.Top,
                                inside.Width,
                                Intro,
                                Letters.Bench
                            );
                        }

                        foreach ((Part part, double at) in parts)
                        {
                            part.Draw(pad, plan, inside, at);
                        }
                    }
                )
            );
            open.Clear();
            top = inside.Top;
        }

        foreach (BoardCutList list in NestCuts.Of(plan))
        {
            var part = new Part(list, plan.Nest!.Spec, plan.Job.Units, 0, 0, inside.Width);
            while (true)
            {
                Part fitting = part.Within(top - inside.Bottom);
                // A board is begun where it fits as a whole, or at the head of a page.
                if (!fitting.IsWhole && open.Count > 0)
                {
                    Close();
                    continue;
                }

                open.Add((fitting, top));
                top -= fitting.HeightMm + GapMm;
                if (fitting.IsLast)
                {
                    break;
                }

                part = fitting.Next();
                Close();
            }
        }

        if (open.Count > 0)
        {
            Close();
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>One board by itself, its strip as wide as the sheet.</summary>
    public static Drawing Board(BottomPlan plan, SawnBoard board)
    {
        BoardCutList list = NestCuts.Of(plan, board);
        const double Width = 380,
            Margin = 8;
        var part = new Part(
            list,
            plan.Nest!.Spec,
            plan.Job.Units,
            0,
            0,
            Width - (2 * Margin)
        ).Within(double.PositiveInfinity);
        double caution = 12,
            height = part.HeightMm + caution + (2 * Margin);
        Pad pad = new();
        var inside = new Box(Margin, Margin, Width - Margin, height - Margin);
        part.Draw(pad, plan, inside, inside.Top);
        pad.Paragraph(
            inside.Left,
            inside.Bottom + caution - 4,
            inside.Width,
            Cautions.Boards,
            Letters.Small
        );
        return pad.Done($"{plan.Job.Name}: board {board.Id}", Width, height);
    }

    private const string Intro =
        "Lengths along a board are from its left end as drawn, figures \"up\" from its lower edge: its marked end and its marked edge, except in a sheet that says it lies turned. Rip first, then make the cuts in the "
        + "order of their numbers: each parts what is left so that both sides can rest on something, and short ends come last. Angles are from square, to the right or left going up the sheet. A cut that ends one piece and begins the "
        + "next makes both; the kerf lies between them. The thick bar is the end towards the keel, the arrow points forward. Outer faces look towards you unless a piece says that its is away. Saw bevels after the piece is free, "
        + "from its card or pattern.";

    private static double IntroMm(double width) =>
        (Letters.Wrap(Intro, Letters.Bench, width).Count * Letters.Bench * Letters.Leading) + 3;

    /// <summary>A board, or what follows of its tables on a further page.</summary>
    private sealed record Part(
        BoardCutList List,
        NestSpec Spec,
        LengthUnit Unit,
        int FromCut,
        int FromPiece,
        double WidthMm
    )
    {
        private int Cuts { get; init; }

        private int Pieces { get; init; }

        /// <summary>Both tables side by side fill the sheet, whatever its paper.</summary>
        private CutTable CutTable { get; } =
            BoardTables.Cuts(List, Unit).Scaled(Fill(List, Unit, WidthMm));

        private CutTable PieceTable { get; } =
            BoardTables.Pieces(List, Unit).Scaled(Fill(List, Unit, WidthMm));

        private static double Fill(BoardCutList list, LengthUnit unit, double widthMm) =>
            Math.Min(
                1.1,
                (widthMm - TablesGapMm)
                    / (
                        BoardTables.Cuts(list, unit).WidthMm
                        + BoardTables.Pieces(list, unit).WidthMm
                    )
            );

        private bool IsFirst => FromCut == 0 && FromPiece == 0;

        public bool IsLast =>
            FromCut + Cuts == CutTable.Rows.Length && FromPiece + Pieces == PieceTable.Rows.Length;

        public bool IsWhole => IsFirst && IsLast;

        private double Factor =>
            Math.Min(
                (WidthMm - 4) / List.Frame.LengthMm,
                Math.Clamp(LaneMm * List.Lanes.Length, StripMm, MostStripMm) / List.Frame.WidthMm
            );

        private double IdMm => Letters.Width(List.Board.Id, IdHeight, true) + 4;

        private double WordsMm =>
            Math.Max(
                HeadMm,
                3.5
                    + (
                        Letters.Wrap(Words, Letters.Bench, WidthMm - IdMm).Count
                        * Letters.Bench
                        * Letters.Leading
                    )
            );

        private double AboveTables =>
            WordsMm + (IsFirst ? AboveMm + (Factor * List.Frame.WidthMm) + BelowMm : 0);

        public double HeightMm =>
            AboveTables
            + Math.Max(CutTable.HeightMm(FromCut, Cuts), PieceTable.HeightMm(FromPiece, Pieces));

        public Part Within(double heightMm)
        {
            double room = heightMm - AboveTables;
            return this with
            {
                Cuts = CutTable.Fitting(FromCut, room),
                Pieces = PieceTable.Fitting(FromPiece, room),
            };
        }

        public Part Next() => new(List, Spec, Unit, FromCut + Cuts, FromPiece + Pieces, WidthMm);

        public void Draw(Pad pad, BottomPlan plan, Box inside, double top)
        {
            pad.Text(inside.Left, top - 4, List.Board.Id, IdHeight, Anchor.BaselineLeft, true);
            pad.Paragraph(inside.Left + IdMm, top - 1.4, WidthMm - IdMm, Words, Letters.Bench);
            double y = top - WordsMm;
            if (IsFirst)
            {
                y -= AboveMm + (Factor * List.Frame.WidthMm);
                BoardStrip.Draw(pad, plan, List, new Vec2(inside.Left + 2, y), Factor);
                y -= BelowMm;
            }

            CutTable.Draw(pad, inside.Left, y, FromCut, Cuts);
            PieceTable.Draw(
                pad,
                inside.Left + CutTable.WidthMm + TablesGapMm,
                y,
                FromPiece,
                Pieces
            );
        }

        private string Words
        {
            get
            {
                if (!IsFirst)
                {
                    return "continued";
                }

                StockBoard stock = List.Board.Stock;
                string wood = BoardCutWords.Wood(stock),
                    named = wood.Length > 0 ? ", " + wood : "",
                    pieces = PlanWords.Count(List.Board.Pieces.Length, "piece"),
                    filled = NumberText.Trimmed(100 * PieceInBoard.Filled(List.Board), 0),
                    scale = NumberText.Trimmed(1 / Factor, 1);
                return $"{NestWords.Size(stock, Unit)}{named}, {BoardCutWords.From(stock)}; {pieces}, {filled} % of it in planks; drawn 1:{scale}{Turned(stock)}{Kept()}";
            }
        }

        private static string Turned(StockBoard stock) =>
            stock.GrainAcross
                ? "; turned, grain from left to right: lengths are from the edge that is not marked, \"up\" from the marked end"
                : "";

        private string Kept()
        {
            ImmutableArray<Offcut> kept = Offcuts.Of(Spec, List.Board);
            return kept.IsEmpty
                ? ""
                : "; kept: "
                    + string.Join(
                        ", ",
                        kept.Select(o =>
                            $"{o.Id} {LengthText.PaperNumber(o.LengthMm, Unit)} × {LengthText.ForPaper(o.WidthMm, Unit)}"
                        )
                    );
        }
    }
}
