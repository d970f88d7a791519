using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>At which angles one set of threads crosses an edge, degrees from the edge: the least and the greatest along it.</summary>
public readonly record struct ThreadAngles(double Least, double Most)
{
    /// <summary>
    /// Both sets along an edge, as they lie. On the flat cloth the edge runs a along the first set and b along the second; on the boat these stand at 90 degrees and the shear to
    /// each other, w, and the edge at atan(b sin w, a + b cos w) to the first. Null where the bottom has no such edge or the cloth does not reach past it.
    /// </summary>
    public static (ThreadAngles First, ThreadAngles Second)? Of(SheathedSide side, PanelEdge edge)
    {
        if (side.Edges.Of(edge) is not { } line)
        {
            return null;
        }

        ClothWeave weave = side.Net.Weave;
        ThreadAngles? first = null,
            second = null;
        for (int i = 0; i + 1 < line.Flat.Length; i++)
        {
            Vec2 along = line.Flat[i + 1] - line.Flat[i];
            if (
                along.Norm < 1e-9
                || side.Net.ShearAt(0.5 * (line.Flat[i] + line.Flat[i + 1])) is not { } shear
            )
            {
                continue;
            }

            double open = (90 + shear.Degrees) * Math.PI / 180,
                a = along.Dot(weave.First),
                b = along.Dot(weave.Second),
                toFirst = Math.Atan2(b * Math.Sin(open), a + (b * Math.Cos(open)));
            first = Wider(first, toFirst);
            second = Wider(second, open - toFirst);
        }

        return first is { } f && second is { } s ? (f, s) : null;
    }

    private static ThreadAngles Wider(ThreadAngles? before, double radians)
    {
        // Between two lines, neither of which has a direction.
        double degrees = Math.Abs(Math.IEEERemainder(radians * 180 / Math.PI, 180));
        return before is { } was
            ? new(Math.Min(was.Least, degrees), Math.Max(was.Most, degrees))
            : new(degrees, degrees);
    }
}
