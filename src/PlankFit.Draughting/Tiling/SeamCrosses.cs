using PlankFit.Draughting.Layout;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>
/// The crosses by which pages are laid together: two on each seam, in the middle of the overlap, the same on both pages, with the pages' codes on
/// their own sides of the seam.
/// </summary>
public static class SeamCrosses
{
    public const string Layer = "register";

    private const double ArmMm = 4;
    private const double LetterMm = 2;
    private const double Off = 1;
    private const double EdgeMm = 0.4;

    /// <summary>Of the seam's length: a quarter and three quarters of it, or as near to them as there is room.</summary>
    private static readonly double[][] Parts = [Near(0.25), Near(0.75)];

    /// <summary>The crosses on one page, in the drawing's own place.</summary>
    /// <param name="drawn">What they keep clear of where they can; on both pages of a seam alike.</param>
    public static IEnumerable<Shape> Of(
        TileGrid grid,
        Tile tile,
        IReadOnlyList<Shape>? drawn = null
    )
    {
        foreach (Tile other in grid.Tiles)
        {
            (int across, int along) = (other.Column - tile.Column, other.Row - tile.Row);
            if (Math.Abs(across) + Math.Abs(along) != 1)
            {
                continue;
            }

            (Tile? first, Tile? second) = across + along > 0 ? (tile, other) : (other, tile);
            foreach (double[] parts in Parts)
            {
                Shape[][] places =
                [
                    .. parts.Select(part =>
                        Cross(
                                Centre(first.Window, second.Window, along == 0, part),
                                first.Code,
                                second.Code,
                                along == 0,
                                (grid.OverlapMm / 2) - Off - EdgeMm
                            )
                            .ToArray()
                    ),
                ];
                Shape[][] bare =
                [
                    .. places.Select(p => p.Where(s => s is not Lettering).ToArray()),
                ];
                foreach (
                    Shape shape in Array.Find(places, p => IsClear(p, drawn ?? []))
                        // Where there is no room for its letters the cross stands by itself: that of the other half has them.
                        ?? Array.Find(bare, p => IsClear(p, drawn ?? []))
                        ?? bare[0]
                )
                {
                    yield return shape;
                }
            }
        }
    }

    /// <summary>So far along the middle of what two windows share.</summary>
    private static Vec2 Centre(Window first, Window second, bool sideBySide, double part) =>
        sideBySide
            ? new((first.Most.X + second.Least.X) / 2, first.Least.Y + (part * first.Height))
            : new(first.Least.X + (part * first.Width), (first.Least.Y + second.Most.Y) / 2);

    /// <summary>Letters that no line runs through, and no word upon any of it.</summary>
    private static bool IsClear(IEnumerable<Shape> cross, IReadOnlyList<Shape> drawn)
    {
        Lettering[] codes = [.. cross.OfType<Lettering>()];
        Vec2[][] quads = [.. codes.Select(c => Quads.Around(c, 0.35))];
        var around = Box.Around(quads.SelectMany(q => q).Concat(Ends(cross)));
        return !drawn.Any(d =>
            d switch
            {
                Lettering text => Box.Around(Quads.Around(text, 0.35)).Overlaps(around),
                Polyline line => Box.Around(line.Points).Within(-0.1).Overlaps(around)
                    && Array.Exists(quads, q => Quads.Struck(line, q)),
                CircleShape circle => around.Within(-circle.RadiusMm).Holds(circle.Centre),
                _ => false,
            }
        );
    }

    private static IEnumerable<Vec2> Ends(IEnumerable<Shape> cross) =>
        cross.OfType<Polyline>().SelectMany(l => l.Points);

    private static double[] Near(double part) =>
        [
            .. Enumerable
                .Range(-20, 41)
                .Select(i => part + (i / 100.0))
                .Where(p => p is > 0.06 and < 0.94)
                .OrderBy(p => Math.Abs(p - part)),
        ];

    /// <param name="besideMm">What a code may take beside a cross and stay within the overlap.</param>
    private static IEnumerable<Shape> Cross(
        Vec2 centre,
        string first,
        string second,
        bool sideBySide,
        double besideMm
    )
    {
        (Vec2 x, Vec2 y) = (new Vec2(ArmMm, 0), new Vec2(0, ArmMm));
        yield return new Polyline(Layer, Pen.Thin, [centre - x, centre + x], false);
        yield return new Polyline(Layer, Pen.Thin, [centre - y, centre + y], false);
        yield return new CircleShape(Layer, Pen.Thin, centre, ArmMm / 4);

        // The first page lies to the left of the seam, or above it.
        (Vec2 at, Anchor anchor) = sideBySide
            ? (new Vec2(-Off, Off + 0.5), Anchor.BaselineRight)
            : (new Vec2(Off + 0.5, Off), Anchor.BaselineLeft);
        (Vec2 otherAt, Anchor otherAnchor) = sideBySide
            ? (new Vec2(Off, Off + 0.5), Anchor.BaselineLeft)
            : (new Vec2(Off + 0.5, -Off - LetterMm), Anchor.BaselineLeft);
        // Codes that would reach over the overlap's edge stand along the seam.
        double turn = 0;
        if (
            sideBySide
            && new[] { first, second }.Any(c => LetterWidths.TextWidth(c, LetterMm) > besideMm)
        )
        {
            (turn, anchor) = (90, Anchor.BaselineLeft);
            otherAt += new Vec2(LetterMm, 0);
        }

        yield return new Lettering(Layer, Pen.Thin, centre + at, first, LetterMm, anchor, turn);
        yield return new Lettering(
            Layer,
            Pen.Thin,
            centre + otherAt,
            second,
            LetterMm,
            otherAnchor,
            turn
        );
    }
}
