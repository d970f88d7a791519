using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Export.Sheathing;

/// <summary>What is drawn on a piece as it lies on its roll: the line that is laid first, its name, the arrow to the bow.</summary>
internal static class PieceMarks
{
    /// <summary>A piece with less room has its name alone.</summary>
    private const double RoomyMm = 8;

    /// <summary>The first line over the piece, and its cross.</summary>
    public static void First(SheetCanvas pad, PieceOnRoll piece, double rollMm, Func<Vec2, Vec2> at)
    {
        const double armMm = 60;
        Vec2 cross = piece.OnRoll(piece.Piece.Cross),
            along = piece.Piece.FirstAlongRoll ? new(1, 0) : new(0, 1);
        if (Inside(piece.Outline, cross, along) is not { } run)
        {
            return;
        }

        pad.Open(
            [at(cross + (run.From * along)), at(cross + (run.To * along))],
            Pens.BehindCentre,
            Layers.Behind
        );
        if (run.From < 0 && run.To > 0)
        {
            Vec2 arm = armMm * along.Left();
            // Not past the roll's edges, below which figures stand.
            pad.Open(
                new[] { cross - arm, cross + arm }.Select(p =>
                    at(new(p.X, Math.Clamp(p.Y, 0, rollMm)))
                ),
                Pens.Tick,
                Layers.Behind
            );
        }
    }

    /// <summary>From where to where a line lies in an outline, from its first crossing to its last; null where it does not come in.</summary>
    private static (double From, double To)? Inside(
        ImmutableArray<Vec2> outline,
        Vec2 through,
        Vec2 along
    )
    {
        double from = double.PositiveInfinity,
            to = double.NegativeInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 a = outline[i] - through,
                b = outline[(i + 1) % outline.Length] - through;
            double offA = along.Cross(a),
                offB = along.Cross(b);
            if (offA * offB < 0)
            {
                double at = along.Dot(a + (offA / (offA - offB) * (b - a)));
                from = Math.Min(from, at);
                to = Math.Max(to, at);
            }
        }

        return to > from ? (from, to) : null;
    }

    public static void Name(SheetCanvas pad, PieceOnRoll piece, Vec2[] outline, Box inside)
    {
        Vec2 middle = Interior.DeepestPoint([.. outline], out double room);
        string lies = SheathingWords.Lies(piece),
            name = lies == "as drawn" ? piece.Piece.Id : $"{piece.Piece.Id}, {lies}";
        if (room <= RoomyMm)
        {
            // No room for an arrow: it is said.
            name += $", bow {SheathingWords.Bow(piece)}";
        }

        double size = Math.Clamp(room / 2, Letters.Small, Letters.Name);
        pad.TextAtFirst(
            from text in new[] { name, piece.Piece.Id }
            from height in new[] { size, Letters.Small }
            select new Lettering(
                Layers.Text,
                Pen.Thin,
                middle,
                text,
                height,
                Anchor.MiddleCentre,
                0,
                true
            ),
            inside
        );
    }

    /// <summary>Below the name, upright or lying; where another's name would be struck, none: the list of pieces has it.</summary>
    public static void Arrow(SheetCanvas pad, PieceOnRoll piece, Vec2[] outline)
    {
        const double head = 0.13;
        Vec2 middle = Interior.DeepestPoint([.. outline], out double room);
        if (room <= RoomyMm)
        {
            return;
        }

        Vec2 bow = SheathingWords.BowOnRoll(piece);
        double size = Math.Clamp(room / 2, Letters.Small, Letters.Name),
            length = Math.Min(12, 0.7 * room),
            down =
                // What hangs below the line is kept clear as well.
                (0.8 * size)
                + 1
                + (Math.Abs(bow.Y) * length / 2)
                + (Math.Abs(bow.X) * head * length);
        Vec2 at = middle - new Vec2(0, down);
        CircleShape[] taken =
        [
            .. new[] { -0.4, -0.2, 0, 0.2, 0.4 }.Select(part => new CircleShape(
                Layers.Marks,
                Pens.None,
                at + (part * length * bow),
                head * length,
                0
            )),
        ];
        if (pad.Letterings.All(l => FreePlace.IsFree(l, taken)))
        {
            ForwardArrow.Draw(pad, at, bow, length);
        }
    }
}
