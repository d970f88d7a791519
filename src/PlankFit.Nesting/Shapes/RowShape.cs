using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Nesting.Shapes;

/// <summary>
/// What lies in a row, in one pose: its least x and y are nought. Of its convex hull, since a saw goes straight, the two sides that look along the row: edges that run
/// along it are in neither, since whatever comes upon them comes upon the end of one that does not.
/// </summary>
/// <param name="ThinnedMm">How far the sides may lie from the true ones.</param>
internal sealed record RowShape(
    double LengthMm,
    double HeightMm,
    ImmutableArray<RowEdge> RightSide,
    ImmutableArray<RowEdge> LeftSide,
    double ThinnedMm
)
{
    private const double ThinWithinMm = 0.05;

    /// <summary>The least x of the side that looks to the right, which is one of its two ends.</summary>
    public double LeastRightMm { get; } = RightSide.Min(e => Math.Min(e.A.X, e.B.X));

    /// <summary>How far it reaches back beyond where it begins with its ends as asked: not above nought.</summary>
    public double LeastMm { get; } = Math.Min(0, LeftSide.Min(e => Math.Min(e.A.X, e.B.X)));

    /// <param name="outlines">Counter-clockwise, of all that moves as one.</param>
    public static RowShape Of(IReadOnlyList<ImmutableArray<Vec2>> outlines)
    {
        ThinOutline thin = Thinned(outlines);
        return Of(
            thin.Points,
            new(outlines.Min(o => o.Min(p => p.X)), outlines.Min(o => o.Min(p => p.Y))),
            new(outlines.Max(o => o.Max(p => p.X)), outlines.Max(o => o.Max(p => p.Y))),
            thin.WithinMm
        );
    }

    /// <summary>The hull of outlines, with as many vertices as pitches need.</summary>
    public static ThinOutline Thinned(IEnumerable<ImmutableArray<Vec2>> outlines) =>
        ThinOutline.Of(ConvexHull.Of(outlines.SelectMany(o => o)), ThinWithinMm);

    /// <summary>A hull with ends sawn at other angles, where it lies: its least x may be other than nought.</summary>
    public static RowShape Sawn(ImmutableArray<Vec2> hull, double heightMm, double thinnedMm) =>
        Of(hull, default, new(hull.Max(p => p.X), heightMm), thinnedMm);

    /// <summary>Several in a row as one thing, from the least x of all.</summary>
    /// <param name="laid">Each with its least x.</param>
    public static RowShape Of(IReadOnlyList<(RowShape Shape, double FromMm)> laid)
    {
        double from = laid.Min(l => l.FromMm);
        return Of(
            ConvexHull.Of(
                laid.SelectMany(l =>
                    l.Shape.RightSide.Concat(l.Shape.LeftSide)
                        .SelectMany(e => new[] { e.A, e.B })
                        .Select(p => p + new Vec2(l.FromMm - from, 0))
                )
            ),
            default,
            new(laid.Max(l => l.FromMm + l.Shape.LengthMm) - from, laid.Max(l => l.Shape.HeightMm)),
            laid.Max(l => l.Shape.ThinnedMm)
        );
    }

    /// <param name="least">The corner of the box round it, <paramref name="most"/> the opposite one; the hull may have lost a little of it.</param>
    private static RowShape Of(ImmutableArray<Vec2> hull, Vec2 least, Vec2 most, double thinnedMm)
    {
        ImmutableArray<RowEdge>.Builder right = ImmutableArray.CreateBuilder<RowEdge>();
        ImmutableArray<RowEdge>.Builder left = ImmutableArray.CreateBuilder<RowEdge>();
        for (int i = 0; i < hull.Length; i++)
        {
            Vec2 a = hull[i] - least,
                b = hull[(i + 1) % hull.Length] - least;
            // Counter-clockwise, so an edge that rises has the wood on its left and looks to the right.
            if (b.Y != a.Y)
            {
                (b.Y > a.Y ? right : left).Add(new(a, b));
            }
        }

        return new(
            most.X - least.X,
            most.Y - least.Y,
            right.ToImmutable(),
            left.ToImmutable(),
            thinnedMm
        );
    }
}

/// <summary>A straight piece of an outline.</summary>
internal readonly record struct RowEdge(Vec2 A, Vec2 B);
