using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>All that the bench needs of one plank or one piece, in a band across the sheet: whole to scale, its two ends larger, figures and notes.</summary>
internal static class PlankCard
{
    public static void Draw(
        SheetCanvas pad,
        Box card,
        CardSubject of,
        CardLayout layout,
        LengthUnit unit
    )
    {
        Header(pad, card, of);
        Box below = card with { Top = card.Top - CardLayout.HeaderMm };
        if (of.Shape.IsRefused)
        {
            RefusedCard.Draw(pad, below, of.Shape, of.Layer, unit);
            return;
        }

        layout.Notes.DrawFoot(pad, card);
        CardStrip.Draw(pad, below with { Bottom = below.Top - layout.PictureMm }, of, unit);
        Box foot = below with
        {
            Top = below.Top - layout.PictureMm,
            Bottom = below.Bottom + layout.Notes.FootMm,
        };
        Foot(pad, foot, of, layout.Notes, unit);
    }

    /// <summary>The words across a card that has gone on to another page.</summary>
    public static void DrawRest(SheetCanvas pad, Box card, CardSubject of, CardNotes rest)
    {
        Header(pad, card, of with { Size = "continued" });
        rest.DrawFoot(pad, card with { Bottom = card.Top - CardLayout.HeaderMm - rest.FootMm });
    }

    private static void Header(SheetCanvas pad, Box card, CardSubject of)
    {
        double y = card.Top - 6.5,
            x = card.Left + Letters.Width(of.Id.ToString(), Letters.Name, true) + 3;
        pad.Text(card.Left, y, of.Id.ToString(), Letters.Name, bold: true);
        if (of.Twin is { } twin)
        {
            string and = $"and {twin}";
            pad.Text(x, y, and, Letters.Heading, bold: true);
            x += Letters.Width(and, Letters.Heading, true) + 3;
        }

        double sizeAt = card.Right - Letters.Width(of.Size, Letters.Heading, true);
        pad.Text(sizeAt, y, of.Size, Letters.Heading, bold: true);
        pad.Text(
            x + 1,
            y,
            Letters.Shortened(of.What, Letters.Bench, sizeAt - x - 4),
            Letters.Bench
        );
        pad.Line(card.Left, y - 2, card.Right, y - 2, Pens.Rule);
    }

    private static void Foot(
        SheetCanvas pad,
        Box foot,
        CardSubject of,
        CardNotes notes,
        LengthUnit unit
    )
    {
        Plank plank = of.Shape;
        double thickness = of.ThicknessMm,
            detail = CardLayout.Columns(plank).Detail;
        EndDetail.Draw(
            pad,
            foot with
            {
                Right = foot.Left + detail,
            },
            plank,
            false,
            thickness,
            unit
        );
        EndDetail.Draw(pad, foot with { Left = foot.Right - detail }, plank, true, thickness, unit);
        double x = foot.Left + detail + 3;
        foreach (PlankEnd end in plank.Ends)
        {
            double here = CardLayout.ColumnOf(plank, end);
            EndFigures.Draw(
                pad,
                foot with
                {
                    Left = x,
                    Right = x + here - 3,
                },
                plank,
                end,
                thickness,
                unit
            );
            x += here;
        }

        notes.DrawColumn(pad, foot with { Left = x, Right = foot.Right - detail - 3 });
    }
}
