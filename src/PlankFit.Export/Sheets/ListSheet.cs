using System.Collections.Immutable;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>One column of a list on paper.</summary>
/// <param name="Share">Of the page's width, in parts; the shares of all columns are set against each other.</param>
/// <param name="Figures">Figures stand to the right of their column, words to the left.</param>
internal sealed record ListColumn(string Head, double Share, bool Figures = true);

/// <summary>
/// A list for paper: what it is in a few lines, then rows under their heads, as many pages as it takes, the heads on each. Words too long for their column
/// go on in the next line; nothing is dropped.
/// </summary>
/// <param name="Bold">Whether the first column is bold: the name by which a row is found.</param>
internal sealed record ListSheet(
    TitleBlock Block,
    ImmutableArray<string> Intro,
    ImmutableArray<ListColumn> Columns,
    ImmutableArray<ImmutableArray<string>> Rows,
    bool Bold = true
)
{
    private const double GapMm = 3;
    private const double UsualGapMm = 1.4;
    private const double TightGapMm = 0.9;

    /// <summary>No page is turned for so few rows, where the list fits without it set a little tighter.</summary>
    private const int FewRows = 6;

    /// <summary>So that a word which just fits is not broken for the last digit of a double.</summary>
    private const double RoundingMm = 0.01;

    /// <summary>A rule stands midway between the letters above and below it.</summary>
    private const double RuleMm = 1.5;

    /// <summary>What each row speaks of, as many as there are rows; none where that is not known.</summary>
    public ImmutableArray<string> About { get; init; } = [];

    private double RowGapMm { get; init; } = UsualGapMm;

    /// <summary>Of the letters in its rows.</summary>
    private double Size { get; init; } = Letters.Bench;

    private double LineMm => Size * Letters.Leading;

    public IReadOnlyList<SheetPage> Pages(Job job)
    {
        var format = SheetFormat.Bench(job);
        Box inside = Frame.Inside(format).Within(3);
        if (Fitted(inside) is var fitted && fitted.Size < Size)
        {
            return fitted.Pages(job);
        }

        List<(int From, int To)> runs = Runs(inside);
        ListSheet tight = this with { RowGapMm = TightGapMm };
        if (
            runs.Count > 1
            && runs[^1].To - runs[^1].From <= FewRows
            && tight.Runs(inside) is { } fewer
            && fewer.Count < runs.Count
        )
        {
            return tight.Pages(format, inside, fewer);
        }

        return Pages(format, inside, runs);
    }

    /// <summary>Figures that have no room beside each other are written smaller, and not broken.</summary>
    public ListSheet Fitted(Box inside) =>
        Size > Letters.Small && WordsMm().Sum() > inside.Width
            ? this with
            {
                Size = Letters.Small,
            }
            : this;

    /// <summary>Of all of it in one piece, mm.</summary>
    public double HeightMm(Box inside)
    {
        ImmutableArray<double> widths = Widths(inside.Width);
        return IntroMm(inside.Width) + HeadMm(widths) + Rows.Sum(r => RowMm(r, widths));
    }

    private SheetPage[] Pages(SheetFormat format, Box inside, List<(int From, int To)> runs)
    {
        TitleBlock block = Block with { Arrow = "" };
        ImmutableArray<double> widths = Widths(inside.Width);
        return
        [
            .. runs.Select(r => new SheetPage(
                format,
                block,
                (pad, box) => Draw(pad, box.Within(3), widths, r.From, r.To)
            )),
        ];
    }

    /// <summary>Which rows come on which page.</summary>
    private List<(int From, int To)> Runs(Box inside)
    {
        ImmutableArray<double> widths = Widths(inside.Width);
        List<(int From, int To)> runs = [];
        int at = 0;
        do
        {
            bool first = at == 0;
            double room = inside.Height - (first ? IntroMm(inside.Width) : 0) - HeadMm(widths);
            int from = at;
            while (at < Rows.Length && (room -= RowMm(Rows[at], widths)) >= 0)
            {
                at++;
            }

            // A row taller than a page is drawn all the same.
            at = Math.Max(at, Math.Min(from + 1, Rows.Length));
            runs.Add((from, at));
        } while (at < Rows.Length);

        return runs;
    }

    /// <summary>All of it from the top of a box that has room for it.</summary>
    /// <returns>Where it ends, below its last row.</returns>
    public double Draw(SheetCanvas pad, Box box) =>
        Draw(pad, box, Widths(box.Width), 0, Rows.Length);

    private double Draw(SheetCanvas pad, Box box, ImmutableArray<double> widths, int from, int to)
    {
        double top = box.Top;
        if (from == 0)
        {
            foreach (string line in Intro)
            {
                top = pad.Paragraph(box.Left, top, box.Width, line, Size);
            }

            top -= Intro.IsEmpty ? 0 : GapMm;
        }

        double head = HeadMm(widths);
        Box Place(int column)
        {
            double left = box.Left + widths.Take(column).Sum();
            return box with { Left = left, Right = left + widths[column] - GapMm, Top = top };
        }

        for (int c = 0; c < Columns.Length; c++)
        {
            Cell(pad, Place(c), Columns[c], Columns[c].Head, Letters.Small, true);
        }

        top -= head;
        pad.Line(box.Left, top + RuleMm, box.Right, top + RuleMm, Pens.Frame);
        for (int i = from; i < to; i++)
        {
            pad.SpeakOf(About.IsEmpty ? "" : About[i]);
            for (int c = 0; c < Columns.Length; c++)
            {
                Cell(pad, Place(c), Columns[c], Rows[i][c], Size, Bold && c == 0);
            }

            top -= RowMm(Rows[i], widths);
            pad.Line(box.Left, top + RuleMm, box.Right, top + RuleMm, Pens.Rule);
        }

        pad.SpeakOf("");
        return top;
    }

    private static void Cell(
        SheetCanvas pad,
        Box cell,
        ListColumn column,
        string text,
        double size,
        bool bold
    )
    {
        double y = cell.Top - size;
        foreach (string line in Letters.Wrap(text, size, cell.Width, bold))
        {
            pad.Text(
                column.Figures ? cell.Right : cell.Left,
                y,
                line,
                size,
                column.Figures ? Anchor.BaselineRight : Anchor.BaselineLeft,
                bold
            );
            y -= size * Letters.Leading;
        }
    }

    private ImmutableArray<double> Widths(double width) =>
        ColumnWidths.Of([.. Columns.Select(c => c.Share)], WordsMm(), width);

    /// <summary>What the widest word of each column takes, mm.</summary>
    private ImmutableArray<double> WordsMm() =>
        [
            .. Columns.Select(
                (column, c) =>
                    Rows.Select(r => Letters.WidestWord(r[c], Size, Bold && c == 0))
                        .Append(Letters.WidestWord(column.Head, Letters.Small, true))
                        .Max()
                    + GapMm
                    + RoundingMm
            ),
        ];

    private double IntroMm(double width) =>
        Intro.IsEmpty ? 0 : (Intro.Sum(l => Letters.Wrap(l, Size, width).Count) * LineMm) + GapMm;

    private double HeadMm(ImmutableArray<double> widths) =>
        (
            Columns
                .Select(
                    (column, c) =>
                        Letters.Wrap(column.Head, Letters.Small, widths[c] - GapMm, true).Count
                )
                .Max()
            * Letters.Small
            * Letters.Leading
        ) + RowGapMm;

    private double RowMm(ImmutableArray<string> row, ImmutableArray<double> widths) =>
        (
            row.Select(
                    (text, c) =>
                        Math.Max(
                            1,
                            Letters.Wrap(text, Size, widths[c] - GapMm, Bold && c == 0).Count
                        )
                )
                .Max() * LineMm
        ) + RowGapMm;
}
