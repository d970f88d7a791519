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

    /// <summary>The crosses on one page, in the drawing's own place.</summary>
    public static IEnumerable<Shape> Of(TileGrid grid, Tile tile)
    {
        foreach (Tile other in grid.Tiles)
        {
            (int across, int along) = (other.Column - tile.Column, other.Row - tile.Row);
            if (Math.Abs(across) + Math.Abs(along) != 1)
            {
                continue;
            }

            (Tile? first, Tile? second) = across + along > 0 ? (tile, other) : (other, tile);
            foreach (Vec2 centre in Centres(first.Window, second.Window, along == 0))
            {
                foreach (Shape shape in Cross(centre, first.Code, second.Code, along == 0))
                {
                    yield return shape;
                }
            }
        }
    }

    /// <summary>A quarter and three quarters of the way along the middle of what two windows share.</summary>
    private static IEnumerable<Vec2> Centres(Window first, Window second, bool sideBySide)
    {
        foreach (double part in (double[])[0.25, 0.75])
        {
            yield return sideBySide
                ? new((first.Most.X + second.Least.X) / 2, first.Least.Y + (part * first.Height))
                : new(first.Least.X + (part * first.Width), (first.Least.Y + second.Most.Y) / 2);
        }
    }

    private static IEnumerable<Shape> Cross(
        Vec2 centre,
        string first,
        string second,
        bool sideBySide
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
        yield return new Lettering(Layer, Pen.Thin, centre + at, first, LetterMm, anchor);
        yield return new Lettering(
            Layer,
            Pen.Thin,
            centre + otherAt,
            second,
            LetterMm,
            otherAnchor
        );
    }
}
