using System.Collections.Immutable;

namespace PlankFit.Export.Cards;

/// <summary>
/// Where the words of a card go: in a column beside its figures while they have room, those of the plank itself first, and in lines across the foot of the card where
/// they have not. None is left out: a card grows by what they take.
/// </summary>
/// <param name="Column">Notes broken into lines.</param>
/// <param name="Foot">Lines across the card.</param>
internal sealed record CardNotes(
    ImmutableArray<IReadOnlyList<string>> Column,
    ImmutableArray<string> Foot
)
{
    private const double Size = Letters.Small;
    private const double LineMm = Size * Letters.Leading;
    private const double GapMm = 1;

    /// <param name="own">Of the plank itself, a figure to cut to among them.</param>
    /// <param name="ofParts">Of the later parts, which have lists of their own.</param>
    public static CardNotes Of(
        IEnumerable<string> own,
        IEnumerable<string> ofParts,
        double columnMm,
        double columnHighMm,
        double cardMm
    )
    {
        List<IReadOnlyList<string>> column = [];
        double left = columnHighMm;
        bool Stands(string note)
        {
            IReadOnlyList<string> narrow = Letters.Wrap(note, Size, columnMm);
            if (HighMm(narrow) > left || Letters.WidestWord(note, Size) > columnMm)
            {
                return false;
            }

            column.Add(narrow);
            left -= HighMm(narrow);
            return true;
        }

        // A plank with three ends has a narrow column: what its own notes lack there they have across the card, before those of any part; one after the other,
        // since lines that are half empty would cost the card its half of the page.
        string[] beyond = [.. own.Concat(ofParts).Where(n => !Stands(n))];
        return new(
            [.. column],
            beyond.Length == 0 ? [] : [.. Letters.Wrap(Sentences(beyond), Size, cardMm)]
        );
    }

    /// <summary>Notes one after the other, each with its full stop.</summary>
    private static string Sentences(IEnumerable<string> notes) =>
        string.Join(' ', notes.Select(n => n.EndsWith('.') ? n : n + "."));

    /// <summary>What the notes in the column take of its height.</summary>
    public double ColumnMm => Column.Sum(HighMm);

    /// <summary>What the lines across the card take of its height.</summary>
    public double FootMm => HighOf(Foot.Length);

    /// <summary>What so many lines across the card take of its height.</summary>
    public static double HighOf(int lines) => lines == 0 ? 0 : (lines * LineMm) + GapMm;

    /// <summary>How many lines across a card have room in so much of its height.</summary>
    public static int LinesIn(double highMm) => Math.Max(0, (int)((highMm - GapMm) / LineMm));

    public void DrawColumn(SheetCanvas pad, Box on)
    {
        double y = on.Top;
        foreach (IReadOnlyList<string> note in Column)
        {
            y = Lines(pad, on.Left, y, note) - GapMm;
        }
    }

    public void DrawFoot(SheetCanvas pad, Box card) =>
        Lines(pad, card.Left, card.Bottom + FootMm - GapMm, Foot);

    private static double Lines(
        SheetCanvas pad,
        double left,
        double top,
        IReadOnlyList<string> lines
    )
    {
        foreach (string line in lines)
        {
            pad.Text(left, top - Size, line, Size);
            top -= LineMm;
        }

        return top;
    }

    private static double HighMm(IReadOnlyList<string> lines) => (lines.Count * LineMm) + GapMm;
}
