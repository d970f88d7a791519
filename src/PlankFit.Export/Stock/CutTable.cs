using System.Collections.Immutable;
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
    private const double Size = Letters.Bench;
    private const double LineMm = Size * Letters.Leading;
    private const double GapMm = 2;
    private const double RowGapMm = 0.8;

    /// <summary>A word that is just as wide as its column is not broken for the sake of a last digit, mm.</summary>
    private const double RoundingMm = 1e-6;
    public const double SketchMm = 9;

    /// <summary>A space at which no line is broken.</summary>
    public const char Unbroken = '\u00A0';

    public double WidthMm => WidthsMm.Sum();

    /// <summary>All columns wider or narrower by the same part; where a figure would be broken by it, its column takes what it lacks from those that have room.</summary>
    public CutTable Scaled(double part)
    {
        double[] widths = [.. WidthsMm.Select(w => part * w)],
            asked = [.. widths.Select((w, c) => Asked(c, w))];
        double lacking = widths.Zip(asked, (w, a) => Math.Max(0, a - w)).Sum(),
            spare = widths.Zip(asked, (w, a) => Math.Max(0, w - a)).Sum(),
            moved = Math.Min(lacking, spare);
        return this with
        {
            WidthsMm =
            [
                .. widths.Zip(
                    asked,
                    (w, a) =>
                        moved == 0 ? w
                        : a > w ? w + ((a - w) * moved / lacking)
                        : w - ((w - a) * moved / spare)
                ),
            ],
        };
    }

    /// <summary>What the widest word of a column asks for; a column of sketches asks for all that it has.</summary>
    private double Asked(int column, double widthMm) =>
        Heads[column].Length == 0
            ? widthMm
            : Rows.Select(r => Letters.WidestWord(r.Cells[column], Size, column == 0))
                .Append(Letters.WidestWord(Heads[column], Letters.Small, true))
                .Max()
                + GapMm
                + RoundingMm;

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
                        Math.Max(
                            1,
                            Letters.Wrap(text, SizeOf(text, c), WidthsMm[c] - GapMm, c == 0).Count
                        )
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
                string text = Rows[r].Cells[c];
                Cell(pad, x, y - RowGapMm, c, text, SizeOf(text, c), c == 0);
                x += WidthsMm[c];
            }

            if (Rows[r].Lean is { } lean)
            {
                Sketch(pad, new(x - (SketchMm / 2) - GapMm, y - RowGapMm - (Size / 2)), lean);
            }

            y -= RowMm(r);
        }
    }

    /// <summary>Smaller where a figure is wider than its column: broken across lines it is read as another.</summary>
    private double SizeOf(string text, int column) =>
        Letters.WidestWord(text, Size, column == 0) > WidthsMm[column] - GapMm
            ? Letters.Small
            : Size;

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
