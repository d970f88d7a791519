using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// Where the words of a card go: those of the plank itself stand in a column beside its figures; those of the later parts follow there while they have room, and
/// go on in lines across the foot of the card where they have not.
/// </summary>
internal sealed record CardNotes(ImmutableArray<string> Column, ImmutableArray<string> Foot)
{
    private const double Size = Letters.Small;
    private const double GapMm = 1;

    public static CardNotes Of(
        IEnumerable<string> own,
        IEnumerable<string> ofParts,
        double columnMm,
        double columnHighMm,
        double cardMm
    )
    {
        List<string> column = [.. own],
            foot = [];
        double left = columnHighMm - column.Sum(n => HighMm(n, columnMm));

        // What goes to the foot takes its height from the column: the long ones go first.
        foreach (string note in ofParts.OrderBy(n => n.Length))
        {
            double high = HighMm(note, columnMm);
            if (foot.Count == 0 && high <= left)
            {
                column.Add(note);
                left -= high;
            }
            else
            {
                foot.Add(note);
            }
        }

        double taken = foot.Sum(n => LinesMm(n, cardMm));
        while (column.Count > own.Count() && left < taken)
        {
            string moved = column[^1];
            column.RemoveAt(column.Count - 1);
            foot.Insert(0, moved);
            left += HighMm(moved, columnMm);
            taken += LinesMm(moved, cardMm);
        }

        return new([.. column], [.. foot]);
    }

    public double FootMm(double cardMm) =>
        Foot.IsEmpty ? 0 : Foot.Sum(n => LinesMm(n, cardMm)) + GapMm;

    public void DrawColumn(Pad pad, Box on)
    {
        double y = on.Top;
        foreach (string note in Column)
        {
            y = pad.Paragraph(on.Left, y, on.Width, note, Size) - GapMm;
        }
    }

    public void DrawFoot(Pad pad, Box card)
    {
        double y = card.Bottom + FootMm(card.Width) - GapMm;
        foreach (string note in Foot)
        {
            y = pad.Paragraph(card.Left, y, card.Width, note, Size);
        }
    }

    private static double HighMm(string note, double width) => LinesMm(note, width) + GapMm;

    private static double LinesMm(string note, double width) =>
        Letters.Wrap(note, Size, width).Count * Size * Letters.Leading;
}
