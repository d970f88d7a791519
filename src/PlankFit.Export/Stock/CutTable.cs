using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Stock;

/// <summary>A row of one of the two tables under a board's strip.</summary>
/// <param name="Lean">Degrees from square, for the small sketch in the last column; null for none.</param>
internal sealed record CutTableRow(ImmutableArray<string> Cells, double? Lean);

/// <summary>A small table with columns in millimetres: heads, rows of as many lines as their words take, and a sketch of the saw's angle where a row has one.</summary>
internal sealed record CutTable(
    ImmutableArray<string> Heads,
    ImmutableArray<double> WidthsMm,
    ImmutableArray<bool> Figures,
    ImmutableArray<CutTableRow> Rows
)
{
    private const double GapMm = 2;
    private const double RowGapMm = 0.8;
    public const double SketchMm = 9;

    /// <summary>So that a word which just fits is not broken for the last digit of a double.</summary>
    private const double RoundingMm = 0.01;

    /// <summary>Of the letters in its rows.</summary>
    public double Size { get; private init; } = Letters.Bench;

    private double LineMm => Size * Letters.Leading;

    /// <summary>A space at which no line is broken.</summary>
    public const char Unbroken = '\u00A0';

    public double WidthMm => WidthsMm.Sum();

    /// <summary>
    /// Two tables beside each other in so much room, filling it but growing by no more than a part: each column by its share, none narrower than its widest word, so that no length is
    /// broken. Where words have no room beside each other they are written smaller.
    /// </summary>
    public static (CutTable Left, CutTable Right) Beside(
        CutTable left,
        CutTable right,
        double roomMm,
        double mostGrowth
    )
    {
        double[] words = [.. left.WordsMm(), .. right.WordsMm()];
        if (words.Sum() > roomMm && left.Size > Letters.Small)
        {
            return Beside(left.Smaller(), right.Smaller(), roomMm, mostGrowth);
        }

        ImmutableArray<double> widths = ColumnWidths.Of(
            [.. left.WidthsMm, .. right.WidthsMm],
            words,
            Math.Min(Math.Max(mostGrowth * (left.WidthMm + right.WidthMm), words.Sum()), roomMm)
        );
        return (
            left with
            {
                WidthsMm = [.. widths.Take(left.WidthsMm.Length)],
            },
            right with
            {
                WidthsMm = [.. widths.Skip(left.WidthsMm.Length)],
            }
        );
    }

    /// <summary>No column narrower than its widest word.</summary>
    public CutTable HoldingWords() =>
        this with
        {
            WidthsMm = [.. WidthsMm.Zip(WordsMm(), Math.Max)],
        };

    private CutTable Smaller() => this with { Size = Letters.Small };

    /// <summary>What the widest word of each column takes, or its sketches, mm.</summary>
    private ImmutableArray<double> WordsMm() =>
        [
            .. Heads.Select(
                (head, c) =>
                    Rows.Select(r => Letters.WidestWord(r.Cells[c], Size, c == 0))
                        .Append(Letters.WidestWord(head, Letters.Small, true))
                        .Append(
                            c == Heads.Length - 1 && Rows.Any(r => r.Lean is not null)
                                ? SketchMm
                                : 0
                        )
                        .Max()
                    + GapMm
                    + RoundingMm
            ),
        ];

    public double HeadMm =>
        (
            Heads
                .Select((h, c) => Letters.Wrap(h, Letters.Small, WidthsMm[c] - GapMm, true).Count)
                .Max()
            * Letters.Small
            * Letters.Leading
        ) + 1;

    public double RowMm(int row) =>
        (
            Rows[row]
                .Cells.Select(
                    (text, c) =>
                        Math.Max(1, Letters.Wrap(text, Size, WidthsMm[c] - GapMm, c == 0).Count)
                )
                .Max() * LineMm
        ) + RowGapMm;

    /// <summary>How many rows from one on fit into so much height under the head.</summary>
    public int Fitting(int from, double heightMm)
    {
        double room = heightMm - HeadMm;
        int to = from;
        while (to < Rows.Length && (room -= RowMm(to)) >= 0)
        {
            to++;
        }

        return to - from;
    }

    public double HeightMm(int from, int count) =>
        count == 0 ? 0 : HeadMm + Enumerable.Range(from, count).Sum(RowMm);

    public void Draw(SheetCanvas pad, double left, double top, int from, int count)
    {
        if (count == 0)
        {
            return;
        }

        double x = left;
        for (int c = 0; c < Heads.Length; c++)
        {
            Cell(pad, x, top, c, Heads[c], Letters.Small, true);
            x += WidthsMm[c];
        }

        double y = top - HeadMm;
        pad.Line(left, y + 0.7, left + WidthMm - GapMm, y + 0.7, Pens.Tick);
        for (int r = from; r < from + count; r++)
        {
            x = left;
            for (int c = 0; c < Heads.Length; c++)
            {
                Cell(pad, x, y - RowGapMm, c, Rows[r].Cells[c], Size, c == 0);
                x += WidthsMm[c];
            }

            if (Rows[r].Lean is { } lean)
            {
                Sketch(pad, new(x - (SketchMm / 2) - GapMm, y - RowGapMm - (Size / 2)), lean);
            }

            y -= RowMm(r);
        }
    }

    private void Cell(
        SheetCanvas pad,
        double left,
        double top,
        int column,
        string text,
        double size,
        bool bold
    )
    {
        bool right = Figures[column];
        double width = WidthsMm[column] - GapMm,
            y = top - size;
        foreach (string line in Letters.Wrap(text, size, width, bold))
        {
            pad.Text(
                left + (right ? width : 0),
                y,
                line.Replace(Unbroken, ' '),
                size,
                right ? Anchor.BaselineRight : Anchor.BaselineLeft,
                bold
            );
            y -= size * Letters.Leading;
        }
    }

    /// <summary>A stub of board with the cut as it leans across it.</summary>
    private static void Sketch(SheetCanvas pad, Vec2 middle, double degrees)
    {
        const double Half = 1.4,
            Stub = 4;
        double lean = Math.Clamp(Math.Tan(degrees * Math.PI / 180), -2, 2) * Half;
        pad.Line(middle.X - Stub, middle.Y - Half, middle.X + Stub, middle.Y - Half, Pens.Outer);
        pad.Line(middle.X - Stub, middle.Y + Half, middle.X + Stub, middle.Y + Half, Pens.Outer);
        pad.Line(middle.X - lean, middle.Y - Half, middle.X + lean, middle.Y + Half, Pens.Cut);
    }
}
