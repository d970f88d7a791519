using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>
/// Where the words of a card go: those of the plank itself stand in a column beside its figures; those of the later parts follow there while they have room, and
/// go on in lines across the foot of the card where they have not. What has room in neither stands in its own list, and the card says so.
/// </summary>
internal sealed record CardNotes(ImmutableArray<string> Column, ImmutableArray<string> Foot)
{
    private const double Size = Letters.Small;
    private const double LineMm = Size * Letters.Leading;
    private const double GapMm = 1;
    private const int MostFootLines = 3;
    private const string More = "More in the lists.";

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
        int lines = MostFootLines;
        bool all = true;
        foreach (string note in ofParts)
        {
            double high = HighMm(note, columnMm);
            int across = Lines(note, cardMm);
            if (high <= left)
            {
                column.Add(note);
                left -= high;
            }
            else if (across <= lines)
            {
                foot.Add(note);
                lines -= across;
            }
            else
            {
                all = false;
            }
        }

        if (!all && HighMm(More, columnMm) <= left)
        {
            column.Add(More);
        }

        return new([.. column], [.. foot]);
    }

    public double FootMm(double cardMm) =>
        Foot.IsEmpty ? 0 : Foot.Sum(n => Lines(n, cardMm) * LineMm) + GapMm;

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

    private static double HighMm(string note, double width) =>
        (Lines(note, width) * LineMm) + GapMm;

    private static int Lines(string note, double width) => Letters.Wrap(note, Size, width).Count;
}
