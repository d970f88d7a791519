using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>What a card has below its head where the plank is not to be sawn: its shape struck through by the words, why, and no figure to saw by.</summary>
internal static class RefusedCard
{
    private const double WordsMm = 9;
    private const double BandMm = 16;

    public static void Draw(
        SheetCanvas pad,
        Box below,
        Plank plank,
        PlankLayerPlan layer,
        LengthUnit unit
    )
    {
        double words = below.Bottom + (4 * Letters.Bench * Letters.Leading) + 2;
        Box room = new(below.Left + 2, words + 2, below.Right - 2, below.Top - 2),
            cut = Box.Around(plank.FlatCut);
        double scale = Math.Min(room.Width / cut.Width, room.Height / cut.Height);
        double half = (Letters.Width(RefusedBend.Mark, WordsMm, true) / 2) + 6;
        Box band = new(
            room.Middle.X - half,
            room.Middle.Y - (BandMm / 2),
            room.Middle.X + half,
            room.Middle.Y + (BandMm / 2)
        );
        Vec2[] outline = [.. plank.FlatCut.Select(p => room.Middle + (scale * (p - cut.Middle)))];
        for (int i = 0; i < outline.Length; i++)
        {
            Beside(pad, outline[i], outline[(i + 1) % outline.Length], band);
        }

        pad.Rectangle(band, Pens.Frame);
        pad.Text(room.Middle, RefusedBend.Mark, WordsMm, Anchor.MiddleCentre, bold: true);
        double top = pad.Paragraph(
            below.Left,
            words,
            below.Width,
            RefusedBend.ToDo + ".",
            Letters.Bench,
            true
        );
        pad.Paragraph(
            below.Left,
            top,
            below.Width,
            PlankWords.Bend(plank, layer.Spec.ThicknessMm, unit),
            Letters.Bench
        );
    }

    /// <summary>What of a line lies outside the band.</summary>
    private static void Beside(SheetCanvas pad, Vec2 from, Vec2 to, Box band)
    {
        if (Segments.Clip(from, to, band) is not { } within)
        {
            pad.Line(from, to, Pens.Seam);
            return;
        }

        foreach ((Vec2 a, Vec2 b) in new[] { (from, within.From), (within.To, to) })
        {
            // Of a line that begins within the band nothing is left there but a point.
            if (a.ChordTo(b) > 1e-6)
            {
                pad.Line(a, b, Pens.Seam);
            }
        }
    }
}
