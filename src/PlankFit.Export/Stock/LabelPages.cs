using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using QRCoder;

namespace PlankFit.Export.Stock;

/// <summary>
/// Labels to cut out and stick on the outer faces of pieces, in the order in which they come off the boards: the number, an arrow forward, which end goes to the
/// keel, the board, and the number as a QR square (ISO/IEC 18004).
/// </summary>
public static class LabelPages
{
    private const int Across = 3;
    private const int Down = 7;
    private const double SquareMm = 17;
    private const double InMm = 2.5;

    /// <summary>Closer than on sheets: seven labels stand below one another on any paper.</summary>
    private const double Leading = 1.55;

    public static ImmutableArray<Drawing> Of(BottomPlan plan, NestPlan nest)
    {
        var format = SheetFormat.BenchStanding(plan.Job);
        (SawnBoard Board, LaidPiece Piece)[] all =
        [
            .. nest.Boards.SelectMany(b =>
                b.Lanes.SelectMany(l => l.PieceIds)
                    .Select(id => (b, b.Pieces.First(p => p.Piece.Id == id)))
            ),
        ];
        var block = new TitleBlock(
            "Labels",
            "for the outer face of each piece, in the order of the boards",
            "full size",
            null,
            Cautions.Boards
        )
        {
            Arrow = "forward: the arrow on each label",
        };
        return SheetPage.Numbered(
            plan.Job,
            [
                .. all.Chunk(Across * Down)
                    .Select(page => new SheetPage(
                        format,
                        block,
                        (pad, inside) => Page(pad, inside.Within(3), plan, page)
                    )),
            ]
        );
    }

    private static void Page(
        SheetCanvas pad,
        Box box,
        BottomPlan plan,
        (SawnBoard Board, LaidPiece Piece)[] labels
    )
    {
        for (int i = 0; i < labels.Length; i++)
        {
            Box row = box.Row(i / Across, Down);
            double width = row.Width / Across;
            Box label = row with
            {
                Left = row.Left + (i % Across * width),
                Right = row.Left + ((i % Across + 1) * width),
            };
            pad.Rectangle(label, Pens.Measure);
            Label(pad, label.Within(InMm), plan, labels[i].Board, labels[i].Piece);
        }
    }

    /// <summary>The label lies along the plank, its left to the inboard end, as the plank's own flat shape does with the outer face up.</summary>
    private static void Label(
        SheetCanvas pad,
        Box box,
        BottomPlan plan,
        SawnBoard board,
        LaidPiece laid
    )
    {
        Plank plank = plan.Find(laid.Piece.PlankId)!;
        Square(pad, laid.Piece.Id.ToString(), new(box.Right - SquareMm, box.Top - SquareMm));
        pad.Text(box.Left, box.Top - 5.6, laid.Piece.Id.ToString(), 5.6, Anchor.BaselineLeft, true);
        double top = box.Top - 7.4;
        double width = box.Width - SquareMm - 2;
        foreach (
            string line in new[]
            {
                "outer face",
                $"{PlankWords.Of(laid.Piece.Side)}, layer {laid.Piece.PlankId.Panel}{laid.Piece.Layer}",
                $"board {board.Id}",
                Size(plan, laid.Piece),
            }
        )
        {
            foreach (string part in Letters.Wrap(line, Letters.Bench, width))
            {
                pad.Text(box.Left, top - Letters.Bench, part, Letters.Bench);
                top -= Letters.Bench * Leading;
            }
        }

        Vec2 forward = ForwardArrow.OnFlat(plank);
        double foot = box.Bottom + 3.4;
        ForwardArrow.Draw(pad, new(box.Right - (SquareMm / 2), foot + 1.2), forward, 8);
        pad.Text(
            box.Right - (SquareMm / 2) - 6.5,
            box.Bottom,
            "forward",
            Letters.Small,
            Anchor.BaselineRight
        );
        ForwardArrow.Draw(pad, new(box.Left + 4, foot), new(-1, 0), 8);
        string to = $"to the {plan.LayerOf(plank.Id).Panel.WordOf(PanelEdge.Lower)}";
        double room = box.Width - (SquareMm / 2) - 30;
        double size = Letters.Width(to, Letters.Bench) <= room ? Letters.Bench : Letters.Small;
        IReadOnlyList<string> lines = Letters.Wrap(LetterWidths.Drawable(to), size, room);
        for (int i = 0; i < lines.Count; i++)
        {
            pad.Text(
                box.Left + 9.5,
                foot - 0.9 + ((((lines.Count - 1) / 2.0) - i) * size * Letters.Leading),
                lines[i],
                size
            );
        }
    }

    /// <summary>Corner to corner along the plank, and across it: by which a piece is told from its neighbours in the stack.</summary>
    private static string Size(BottomPlan plan, SawPiece piece)
    {
        var box = Box.Around(piece.Outline);
        LengthUnit unit = plan.Job.Units;
        return LengthUnits.IsMetric(unit)
            ? $"{LengthText.PaperNumber(box.Width, unit, RoundTo.Up)} × {PlankWords.Small(box.Height, unit)}"
            : $"{LengthText.ForPaper(box.Width, unit, RoundTo.Up)} × {PlankWords.Small(box.Height, unit)}";
    }

    private static void Square(SheetCanvas pad, string text, Vec2 corner)
    {
        using QRCodeData code = new QRCodeGenerator().CreateQrCode(
            text,
            QRCodeGenerator.ECCLevel.M
        );
        int n = code.ModuleMatrix.Count;
        double side = SquareMm / n;
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c < n; )
            {
                int from = c;
                while (c < n && code.ModuleMatrix[r][c])
                {
                    c++;
                }

                if (c > from)
                {
                    double y = corner.Y + ((n - r - 1) * side);
                    pad.Rectangle(
                        new(corner.X + (from * side), y, corner.X + (c * side), y + side),
                        Pens.None,
                        0
                    );
                }

                c = Math.Max(c, from + 1);
            }
        }
    }
}
