using System.Collections.Immutable;

namespace PlankFit.Export.Cards;

/// <summary>
/// Where the words of a card go: those of the plank itself stand in a column beside its figures; those of the later parts follow there while they have room, and
/// go on in lines across the foot of the card where they have not. What has room in neither stands in its own list, and the card says so.
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
    private const int MostFootLines = 3;
    private const string More = "More in the lists.";

    /// <param name="own">Of the plank itself: none of them is left out, a figure to cut to may be among them.</param>
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
            if (HighMm(narrow) > left)
            {
                return false;
            }

            column.Add(narrow);
            left -= HighMm(narrow);
            return true;
        }

        // A plank with three ends has a narrow column: what its own notes lack there they have across the card, before those of any part.
        string[] beyond = [.. own.Where(n => !Stands(n))];
        List<string> foot =
            beyond.Length == 0 ? [] : [.. Letters.Wrap(Sentences(beyond), Size, cardMm)];
        bool all = true;
        foreach (string note in ofParts.Where(n => !Stands(n)))
        {
            IReadOnlyList<string> across = Letters.Wrap(note, Size, cardMm);
            if (foot.Count + across.Count <= MostFootLines)
            {
                foot.AddRange(across);
            }
            else
            {
                all = false;
            }
        }

        if (!all && LineMm + GapMm <= left)
        {
            column.Add([More]);
        }
        else if (
            !all
            && foot.Count > 0
            && Letters.Wrap($"{foot[^1]} {More}", Size, cardMm).Count == 1
        )
        {
            foot[^1] = $"{foot[^1]} {More}";
        }

        return new([.. column], [.. foot]);
    }

    /// <summary>Notes one after the other, each with its full stop.</summary>
    private static string Sentences(IEnumerable<string> notes) =>
        string.Join(' ', notes.Select(n => n.EndsWith('.') ? n : n + "."));

    /// <summary>What the lines across the card take of its height.</summary>
    public double FootMm => Foot.IsEmpty ? 0 : (Foot.Length * LineMm) + GapMm;

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
