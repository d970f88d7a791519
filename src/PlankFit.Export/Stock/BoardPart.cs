using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>A strip of a board with its tables, or what follows of them on a further page.</summary>
/// <param name="FromCut">The first row of the table of cuts here; <paramref name="FromPiece"/> that of the pieces.</param>
internal sealed record BoardPart(
    NestSpec Spec,
    LengthUnit Unit,
    double WidthMm,
    StripDrawing Strip,
    int FromCut = 0,
    int FromPiece = 0
)
{
    private const double HeadMm = 8.5;
    private const double IdHeight = 4;
    private const double BelowMm = 2.85;
    private int Cuts { get; init; }

    private int Pieces { get; init; }

    private bool Holds { get; init; }

    /// <summary>All strips of a board, one after the other.</summary>
    public static IEnumerable<BoardPart> Begun(
        BottomPlan plan,
        NestSpec spec,
        SawnBoard board,
        double widthMm
    ) =>
        StripViews
            .Of(plan, BoardCuts.Of(board, spec), widthMm)
            .Select(strip => new BoardPart(spec, plan.Job.Units, widthMm, strip));

    public StripView View => Strip.View;

    /// <summary>Both tables side by side fill the sheet, whatever its paper.</summary>
    private CutTable CutTable { get; } =
        Strip.View.IsOverview
            ? BoardTables.Rips(Strip.View, Unit)
            : BoardTables.Cuts(Strip.View, Unit).Scaled(Fill(Strip.View, Unit, WidthMm));

    private CutTable PieceTable { get; } =
        BoardTables.Pieces(Strip.View, Unit).Scaled(Fill(Strip.View, Unit, WidthMm));

    private static double Fill(StripView view, LengthUnit unit, double widthMm) =>
        Math.Min(
            1.1,
            (widthMm - StripScale.TablesGapMm)
                / (BoardTables.Cuts(view, unit).WidthMm + BoardTables.Pieces(view, unit).WidthMm)
        );

    private bool IsFirst => FromCut == 0 && FromPiece == 0;

    public bool IsLast =>
        FromCut + Cuts == CutTable.Rows.Length && FromPiece + Pieces == PieceTable.Rows.Length;

    /// <summary>The strip and all its rows.</summary>
    public bool IsComplete => IsFirst && IsLast && Holds;

    /// <summary>The strip itself has room, whatever of its tables follows.</summary>
    public bool HoldsStrip => !IsFirst || Holds;

    private double Factor => Strip.Factor;

    private double AboveMm => Strip.AboveMm + 0.5;

    /// <summary>What the bold line and the words under a strip take.</summary>
    private double UnderMm =>
        BelowMm + (Math.Max(1, SideWords.Length) * Letters.Small * Letters.Leading);

    private ImmutableArray<string> SideWords => BoardStrip.SideWords(View, Factor);

    private string Id => View.List.Board.Id;

    private double IdMm => Letters.Width(Id, IdHeight, true) + 4;

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

    private double OnPaperMm => IsFirst ? AboveMm + (Factor * View.HeightMm) + UnderMm : 0;

    private double AboveTables => WordsMm + (View.IsOverview ? (IsFirst ? AboveMm : 0) : OnPaperMm);

    public double HeightMm =>
        Math.Max(
            WordsMm + OnPaperMm,
            AboveTables
                + Math.Max(CutTable.HeightMm(FromCut, Cuts), PieceTable.HeightMm(FromPiece, Pieces))
        );

    /// <summary>As many rows as so much height has room for.</summary>
    public BoardPart Within(double heightMm)
    {
        double room = heightMm - AboveTables;
        return this with
        {
            Cuts = CutTable.Fitting(FromCut, room),
            Pieces = PieceTable.Fitting(FromPiece, room),
            Holds = WordsMm + OnPaperMm <= heightMm,
        };
    }

    public BoardPart Next() => new(Spec, Unit, WidthMm, Strip, FromCut + Cuts, FromPiece + Pieces);

    public void Draw(SheetCanvas pad, Box inside, double top)
    {
        pad.Text(inside.Left, top - 4, Id, IdHeight, Anchor.BaselineLeft, true);
        pad.Paragraph(inside.Left + IdMm, top - 1.4, WidthMm - IdMm, Words, Letters.Bench);
        double y = top - AboveTables,
            left = inside.Left;
        if (IsFirst)
        {
            double lower = top - WordsMm - OnPaperMm + UnderMm;
            var corner = new Vec2(inside.Left + StripScale.AsideMm, lower);
            pad.Add(Strip.Shapes.Select(s => s.MovedBy(corner)));
            left += View.IsOverview
                ? (2 * StripScale.AsideMm)
                    + Math.Max(
                        Factor * View.LengthMm,
                        SideWords.Max(w => Letters.Width(w, Letters.Small))
                    )
                    + StripScale.TablesGapMm
                : 0;
        }

        CutTable.Draw(pad, left, y, FromCut, Cuts);
        PieceTable.Draw(
            pad,
            inside.Left + CutTable.WidthMm + StripScale.TablesGapMm,
            y,
            FromPiece,
            Pieces
        );
    }

    private string Words
    {
        get
        {
            string lanes = View.IsWhole ? "" : Lanes() + "; ",
                scale = $"drawn 1:{NumberText.Trimmed(1 / Factor, 1)}" + Without();
            if (!IsFirst)
            {
                return lanes + "continued";
            }

            StockBoard stock = View.List.Board.Stock;
            string turned = stock.GrainAcross
                ? "; turned, grain from left to right: lengths are from the edge that is not marked"
                : "";
            if (!View.IsWhole)
            {
                return lanes + scale + turned;
            }

            turned += stock.GrainAcross ? ", rips \"up\" from the marked end" : "";
            string wood = BoardCutWords.Wood(stock),
                named = wood.Length > 0 ? ", " + wood : "",
                pieces = PlanWords.Count(View.List.Board.Pieces.Length, "piece"),
                filled = NumberText.Trimmed(100 * PieceInBoard.Filled(View.List.Board), 0),
                ripped = View.IsOverview
                    ? $"; ripped into {View.List.Lanes.Length} lanes, which follow, larger"
                    : "";
            return $"{NestWords.Size(stock, Unit)}{named}, {BoardCutWords.From(stock)}; {pieces}, {filled} % of it in planks; {BoardCutWords.Settings(View.List)}{scale}{turned}{ripped}{Kept()}";
        }
    }

    /// <summary>Lanes 5 to 8 of 16, 620 to 1075.5 mm from the marked edge, 0 to 910 mm along them.</summary>
    private string Lanes()
    {
        int all = View.List.Lanes.Length;
        string which = View.LaneCount == 1
                ? $"lane {View.ToLane} of {all}"
                : $"lanes {View.FromLane + 1} to {View.ToLane} of {all}",
            across =
                $"{Span(View.LowMm, View.HighMm)} from the marked {(View.List.Frame.Stock.GrainAcross ? "end" : "edge")}",
            along = View.FromMm > 0 || View.ToMm < View.LanesEndMm
                ? $", shown from {Span(View.FromMm, View.ToMm)} from the left end"
                : "";
        return which + ", " + across + along;
    }

    private string Span(double fromMm, double toMm) =>
        $"{LengthText.PaperNumber(fromMm, Unit)} to {LengthText.ForPaper(toMm, Unit)}";

    /// <summary>What found no place in the strip is in the list.</summary>
    private string Without() =>
        Strip.IsComplete
            ? ""
            : "; NOT MARKED below for want of room, find by the list: "
                + string.Join(
                    ", ",
                    Strip
                        .WithoutNumber.Select(n => $"cut {NumberText.Trimmed(n, 0)}")
                        .Concat(Strip.WithoutName)
                );

    private string Kept()
    {
        ImmutableArray<Offcut> kept = Offcuts.Of(Spec, View.List);
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
