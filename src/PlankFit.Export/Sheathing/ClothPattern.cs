using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>A piece of cloth to full size for a plotter or a cutting table: what is cut, where it is trimmed, its name and the way to the bow.</summary>
public static class ClothPattern
{
    private const double LettersMm = 30;

    /// <summary>As it lies on the boat, seen from outside; x along the roll.</summary>
    public static Drawing Of(BottomPlan plan, ClothPiece piece)
    {
        SheetCanvas pad = new();
        pad.Closed(piece.Outline, Pens.Cut, Layers.Cut);
        pad.Closed(piece.Trim, Pens.Net, Layers.Net);
        Vec2 along = piece.FirstAlongRoll ? new(1, 0) : new(0, 1);
        if (FlatPolygon.Holds(piece.Outline, piece.Cross))
        {
            foreach (Vec2 arm in new[] { along, along.Left() })
            {
                pad.Line(
                    piece.Cross - (LettersMm * arm),
                    piece.Cross + (LettersMm * arm),
                    Pens.Tick,
                    Layers.Marks
                );
            }
        }

        foreach ((ClothDart dart, int number) in piece.Darts.Select((d, i) => (d, i + 1)))
        {
            pad.Open([dart.Mouth, dart.Tip], Pens.Cut, Layers.Cut);
            pad.Text(
                dart.Crosses ? 0.5 * (dart.Tip + dart.Mouth) : dart.Tip,
                $"{DartSheets.Name(number)} {DartSheets.Does(dart, plan.Job.Units)}",
                LettersMm / 2,
                Anchor.BaselineCentre
            );
        }

        Vec2 at = Interior.DeepestPoint(piece.Outline, out _);
        pad.Text(at, $"{piece.Id} {piece.Cloth}", LettersMm, Anchor.MiddleCentre);
        ForwardArrow.Draw(pad, at - new Vec2(0, 2 * LettersMm), piece.Bow, 3 * LettersMm);
        return pad.Done(
            $"{plan.Job.Name}: cloth {piece.Id}, full size",
            piece.LengthMm,
            piece.WidthMm
        );
    }
}
