using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Stock;

/// <summary>
/// The cut sheets: every board a strip to scale with its pieces as they lie, its cuts numbered in a good order, and beside it where each cut is and how it leans.
/// </summary>
public static class CutSheets
{
    private const double GapMm = 5;
    private const double BoardWidthMm = 380;
    private const double BoardMarginMm = 8;

    public static ImmutableArray<Drawing> Of(BottomPlan plan, NestPlan nest)
    {
        var format = SheetFormat.Bench(plan.Job);
        Box inside = Frame.Inside(format).Within(3);
        var block = new TitleBlock(
            "Cut sheets",
            "boards with the marked face up; bold lines are their marked end and marked edge",
            SheetWords.Unit(plan.Job.Units),
            null,
            Cautions.Boards
        )
        {
            Arrow = "forward: the arrow on each piece",
        };
        var pages = new List<SheetPage>();
        var open = new List<(BoardPart Part, double Top)>();
        string[] first =
        [
            .. NestWords.Missing(nest, plan.Job.Units),
            .. nest.Boards.IsEmpty ? (string[])[] : [NestWords.Settings(nest)],
        ];
        double top = inside.Top - first.Append(Intro(plan)).Sum(p => IntroMm(p, inside.Width));
        void Close()
        {
            ImmutableArray<(BoardPart Part, double Top)> parts = [.. open];
            bool isFirst = pages.Count == 0;
            pages.Add(
                new(
                    format,
                    block,
                    (pad, _) =>
                    {
                        if (isFirst)
                        {
                            double y = inside.Top;
                            foreach (string words in first.Append(Intro(plan)))
                            {
                                pad.Paragraph(inside.Left, y, inside.Width, words, Letters.Bench);
                                y -= IntroMm(words, inside.Width);
                            }
                        }

                        foreach ((BoardPart part, double at) in parts)
                        {
                            part.Draw(pad, inside, at);
                        }
                    }
                )
                {
                    FoundBy =
                    [
                        string.Join(", ", parts.Select(p => p.Part.View.List.Board.Id).Distinct()),
                    ],
                }
            );
            open.Clear();
            top = inside.Top;
        }

        foreach (
            BoardPart begun in nest.Boards.SelectMany(b =>
                BoardPart.Begun(plan, nest.Spec, b, inside.Width)
            )
        )
        {
            BoardPart part = begun;
            while (true)
            {
                BoardPart fitting = part.Within(top - inside.Bottom);
                // A strip is begun where it fits with all its tables, or at the head of a page; below what the first page begins with only where it fits itself.
                if (
                    (!fitting.IsComplete && open.Count > 0)
                    || (!fitting.HoldsStrip && top < inside.Top)
                )
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

    /// <summary>What the strips of <see cref="Board"/> show, from the uppermost.</summary>
    internal static ImmutableArray<StripView> OnBoard(
        BottomPlan plan,
        NestSpec spec,
        SawnBoard board
    ) =>
        [
            .. BoardPart
                .Begun(plan, spec, board, BoardWidthMm - (2 * BoardMarginMm))
                .Select(p => p.View),
        ];

    /// <summary>One board by itself, its strips as wide as the sheet, one below the other.</summary>
    public static Drawing Board(BottomPlan plan, NestSpec spec, SawnBoard board)
    {
        const double Margin = BoardMarginMm,
            Caution = 12;
        BoardPart[] parts =
        [
            .. BoardPart
                .Begun(plan, spec, board, BoardWidthMm - (2 * Margin))
                .Select(p => p.Within(double.PositiveInfinity)),
        ];
        double height =
            parts.Sum(p => p.HeightMm) + (GapMm * (parts.Length - 1)) + Caution + (2 * Margin);
        SheetCanvas pad = new();
        var inside = new Box(Margin, Margin, BoardWidthMm - Margin, height - Margin);
        double top = inside.Top;
        foreach (BoardPart part in parts)
        {
            part.Draw(pad, inside, top);
            top -= part.HeightMm + GapMm;
        }

        pad.Paragraph(
            inside.Left,
            inside.Bottom + Caution - 4,
            inside.Width,
            Cautions.Boards,
            Letters.Small
        );
        return pad.Done($"{plan.Job.Name}: board {board.Id}", BoardWidthMm, height);
    }

    private static string Intro(BottomPlan plan) =>
        "Lengths along a board are from its left end as drawn; a rip is so far \"up\" from the board's lower edge, a point of another cut from its lane's. These are the marked end and the marked edge, except in a sheet that says it lies turned. Mark every rip before the first is made, and every cut of a lane before that lane is cut. Rip first, then make the cuts in the "
        + "order of their numbers: both sides of each can rest on something, short ends come last, and within that the saw is set anew as seldom as can be. Angles are from square, to the right or left going up the sheet. A cut that ends one piece and begins the "
        + $"next makes both; the kerf lies between them. Figures are of the line that stays on the piece, and the kerf lies right or left of it as each cut says. The thick bar is the end towards the keel{(plan.Others.IsEmpty ? "" : ", of another panel than the bottom its lower end")}, the arrow points forward. Outer faces look towards you unless a piece says that its is away. Saw bevels after the piece is free, "
        + "from its card or pattern.";

    private static double IntroMm(string words, double width) =>
        (Letters.Wrap(words, Letters.Bench, width).Count * Letters.Bench * Letters.Leading) + 3;
}
