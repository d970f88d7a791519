using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>A strip of a board with its tables, or what follows of them on a further page.</summary>
/// <param name="Listed">The strips whose cuts and pieces its tables have: its own, or with it those before, or none where they stand under one that follows.</param>
/// <param name="FromCut">The first row of the table of cuts here; <paramref name="FromPiece"/> that of the pieces.</param>
internal sealed record BoardPart(
    NestSpec Spec,
    LengthUnit Unit,
    double WidthMm,
    StripDrawing Strip,
    ImmutableArray<StripView> Listed,
    int FromCut = 0,
    int FromPiece = 0
)
{
    private const double HeadMm = 8.5;
    private const double IdHeight = 4;
    private const double BelowMm = 2.85;

    /// <summary>Tables grow by no more than this where the sheet is wide.</summary>
    private const double MostGrowth = 1.1;
    private int Cuts { get; init; }

    private int Pieces { get; init; }

    private bool Holds { get; init; }

    /// <summary>All strips of a board, one after the other. Those whose cuts' numbers run among each other have one list, under the last of them, so that it is in the order of cutting.</summary>
    public static IEnumerable<BoardPart> Begun(
        BottomPlan plan,
        NestSpec spec,
        SawnBoard board,
        double widthMm
    )
    {
        ImmutableArray<StripDrawing> strips = StripViews.Of(
            plan,
            BoardCuts.Of(board, spec),
            widthMm
        );
        for (int from = 0; from < strips.Length; )
        {
            int to = from + 1;
            for (int i = to; i < strips.Length; i++)
            {
                to = strips[from..to].Max(LastNumber) > FirstNumber(strips[i]) ? i + 1 : to;
            }

            for (int i = from; i < to; i++)
            {
                yield return new(
                    spec,
                    plan.Job.Units,
                    widthMm,
                    strips[i],
                    i + 1 < to ? [] : [.. strips[from..to].Select(s => s.View)]
                );
            }

            from = to;
        }
    }

    private static int FirstNumber(StripDrawing strip) =>
        strip.View.Cuts.Select(c => c.Number).DefaultIfEmpty(int.MaxValue).Min();

    private static int LastNumber(StripDrawing strip) =>
        strip.View.Cuts.Select(c => c.Number).DefaultIfEmpty(0).Max();

    public StripView View => Strip.View;

    /// <summary>Both tables side by side fill the sheet, whatever its paper.</summary>
    private readonly (CutTable Cuts, CutTable Pieces) tables = Tables(Listed, Unit, WidthMm);

    private CutTable CutTable => tables.Cuts;

    private CutTable PieceTable => tables.Pieces;

    private static (CutTable Cuts, CutTable Pieces) Tables(
        ImmutableArray<StripView> listed,
        LengthUnit unit,
        double widthMm
    ) =>
        listed is [{ IsOverview: true } overview]
            ? (BoardTables.Rips(overview, unit), BoardTables.Pieces(listed, unit))
            : CutTable.Beside(
                BoardTables.Cuts(listed, unit),
                BoardTables.Pieces(listed, unit),
                widthMm - StripScale.TablesGapMm,
                MostGrowth
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

    public BoardPart Next() =>
        new(Spec, Unit, WidthMm, Strip, Listed, FromCut + Cuts, FromPiece + Pieces);

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
                return lanes
                    + scale
                    + turned
                    + (Listed.IsEmpty ? "; its cuts and pieces are listed further on" : "");
            }

            turned += stock.GrainAcross ? ", rips \"up\" from the marked end" : "";
            string wood = BoardCutWords.Wood(stock),
                named = wood.Length > 0 ? ", " + wood : "",
                pieces = PlanWords.Count(View.List.Board.Pieces.Length, "piece"),
                filled = NumberText.Trimmed(100 * PieceInBoard.Filled(View.List.Board), 0),
                ripped = View.IsOverview ? "; " + Larger() : "";
            return $"{NestWords.Size(stock, Unit)}{named}, {BoardCutWords.From(stock)}; {pieces}, {filled} % of it in planks; {BoardCutWords.Settings(View.List)}{scale}{turned}{ripped}{Kept()}";
        }
    }

    private bool IsRipped => View.List.Cuts.Any(c => c.Kind == CutKind.Rip);

    private string Larger()
    {
        int lanes = View.List.Lanes.Length;
        return !IsRipped ? "follows, larger"
            : lanes == 1 ? "ripped into 1 lane, which follows, larger"
            : $"ripped into {lanes} lanes, which follow, larger";
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
                ? $"shown from {Span(View.FromMm, View.ToMm)} from the left end"
                : "";
        return !IsRipped
            ? along.Length > 0
                ? along
                : "larger"
            : which + ", " + across + (along.Length > 0 ? ", " + along : "");
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
