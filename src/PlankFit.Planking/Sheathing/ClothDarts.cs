using System.Collections.Immutable;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Sheathing;

/// <summary>
/// A cut from the edge of a cloth along a thread, whose two sides lap or open so that it lies beyond the tip. Flat places, p along the roll and q across.
/// </summary>
/// <param name="Tip">Where the cut ends.</param>
/// <param name="Mouth">Where it begins, on the outline that is cut.</param>
/// <param name="Degrees">Between its two sides as they lie on the boat.</param>
/// <param name="Laps">One side lies over the other; else it opens and is patched.</param>
public sealed record ClothDart(Vec2 Tip, Vec2 Mouth, double Degrees, bool Laps)
{
    public double LengthMm => Tip.ChordTo(Mouth);

    /// <summary>Of a stretch of a dart that begins on another course: how far the dart's own tip lies from where it comes onto this one; 0 where the tip is here.</summary>
    public double FromTipMm { get; init; }

    /// <summary>It crosses its piece from edge to edge, its tip on another.</summary>
    public bool Crosses => FromTipMm > 0;

    /// <summary>By how much it laps or opens at its mouth, mm.</summary>
    public double WidthMm => 2 * (FromTipMm + LengthMm) * Math.Tan(Degrees * Math.PI / 360);
}

/// <summary>The darts of a side, and the greatest shear that is left with them, degrees.</summary>
public sealed record ClothDarts(ImmutableArray<ClothDart> Darts, double LeftDegrees)
{
    /// <summary>More than these nobody cuts: another first line, or courses of their own.</summary>
    private const int Most = 8;

    /// <summary>A dart takes off no less, degrees: a proposal, no source.</summary>
    private const double LeastDegrees = 1;

    /// <summary>
    /// Shear at a place is the first line's turning between the feet of its two threads and the curvature of what they cut off. A dart of an angle takes its angle off every
    /// place whose two threads pass it on either side, as so much curvature at its tip would. So the tip lies where both threads of all that is sheared too much pass it, to a
    /// mesh, or of as much of that about the worst place as has such a tip between the first line and itself; one dart after the other, the worst place first.
    /// </summary>
    /// <param name="cut">The outline that is cut.</param>
    /// <param name="bears">Shear that is borne, degrees.</param>
    /// <param name="fromThreads">Laid from two threads that cross; else from a line along the roll, q = 0.</param>
    public static ClothDarts Of(
        ClothNet net,
        ImmutableArray<Vec2> cut,
        double bears,
        bool fromThreads
    )
    {
        // What is borne everywhere is not looked for in the outline.
        ClothMesh[] meshes =
        [
            .. net.OnGround.Any(m => Math.Abs(m.ShearDegrees) > bears)
                ? net.OnGround.Where(m => FlatPolygon.Holds(cut, m.Middle))
                : [],
        ];
        double[] shear = [.. meshes.Select(m => m.ShearDegrees)];
        List<ClothDart> darts = [];
        while (darts.Count < Most && meshes.Length > 0)
        {
            int worst = Worst(shear);
            double over = Math.Abs(shear[worst]) - bears;
            if (over < LeastDegrees)
            {
                break;
            }

            int sign = Math.Sign(shear[worst]);
            (Vec2 first, Vec2 second) = Outward(net.Weave, meshes[worst].Middle, fromThreads);
            Vec2[] tooMuch =
            [
                .. Enumerable
                    .Range(0, meshes.Length)
                    .Where(i => sign * shear[i] > bears)
                    .Select(i => meshes[i].Middle)
                    .Where(m => Outward(net.Weave, m, fromThreads) == (first, second)),
            ];
            if (
                Tip(tooMuch, meshes[worst].Middle, (first, second), cut, fromThreads, net.MeshMm)
                    is not { } tip
                || new[] { Exit(cut, tip, first), Exit(cut, tip, second) }
                    .OfType<Vec2>()
                    .OrderBy(m => m.ChordTo(tip))
                    .ToArray()
                    is not [var mouth, ..]
            )
            {
                break;
            }

            // Shear counts along the roll, and the ground's curvature goes into it with the sign of the quadrant: cloth is too much where both agree.
            double quadrant = first.Dot(net.Weave.First) * second.Dot(net.Weave.Second);
            // No more than turns as much the other way as is borne where there was none.
            var dart = new ClothDart(tip, mouth, Math.Min(over, bears), sign * quadrant < 0);
            darts.Add(dart);
            for (int i = 0; i < meshes.Length; i++)
            {
                Vec2 from = meshes[i].Middle - tip;
                if (from.Dot(first) >= 0 && from.Dot(second) >= 0)
                {
                    shear[i] -= sign * dart.Degrees;
                }
            }
        }

        return new([.. darts], meshes.Length == 0 ? 0 : Math.Abs(shear[Worst(shear)]));
    }

    /// <summary>Passed by both threads of all places within some reach of the worst along the roll, the widest for which it lies on the cloth and away from the first line.</summary>
    private static Vec2? Tip(
        Vec2[] places,
        Vec2 worst,
        (Vec2 First, Vec2 Second) threads,
        ImmutableArray<Vec2> cut,
        bool fromThreads,
        double meshMm
    )
    {
        // Places are the middles of meshes.
        double half = meshMm / 2,
            reach = places.Max(p => Math.Abs(p.X - worst.X));
        for (int i = 0; i < 24; i++)
        {
            Vec2[] within = [.. places.Where(p => Math.Abs(p.X - worst.X) <= reach)];
            Vec2 tip =
                ((within.Min(p => p.Dot(threads.First)) - half) * threads.First)
                + ((within.Min(p => p.Dot(threads.Second)) - half) * threads.Second);
            bool away = fromThreads
                ? tip.Dot(threads.First) > 0 && tip.Dot(threads.Second) > 0
                : tip.Y * worst.Y > 0;
            if (away && FlatPolygon.Holds(cut, tip))
            {
                return tip;
            }

            reach *= 0.8;
        }

        return null;
    }

    private static int Worst(double[] shear) =>
        Enumerable.Range(0, shear.Length).MaxBy(i => Math.Abs(shear[i]));

    /// <summary>Both sets of threads, away from where the cloth was laid first.</summary>
    private static (Vec2 First, Vec2 Second) Outward(ClothWeave weave, Vec2 at, bool fromThreads)
    {
        Vec2 away = fromThreads ? at : new(0, at.Y);
        Vec2 Turned(Vec2 thread) => thread.Dot(away) < 0 ? -1 * thread : thread;
        return (Turned(weave.First), Turned(weave.Second));
    }

    /// <summary>Where a ray first leaves an outline; null where it never does.</summary>
    internal static Vec2? Exit(IReadOnlyList<Vec2> outline, Vec2 from, Vec2 along)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < outline.Count; i++)
        {
            Vec2 a = outline[i] - from,
                side = outline[(i + 1) % outline.Count] - outline[i];
            double det = along.Cross(side);
            if (Math.Abs(det) < 1e-12)
            {
                continue;
            }

            double run = a.Cross(side) / det,
                part = a.Cross(along) / det;
            if (run > 1e-6 && part is >= 0 and <= 1)
            {
                least = Math.Min(least, run);
            }
        }

        return double.IsFinite(least) ? from + (least * along) : null;
    }
}
