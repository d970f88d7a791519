using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Nesting;

/// <summary>
/// What lies in a row, in one pose: its least x and y are nought. Only the two sides that look along the row are kept for pitches.
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

    /// <param name="outlines">Counter-clockwise, of all that moves as one.</param>
    public static RowShape Of(IReadOnlyList<ImmutableArray<Vec2>> outlines)
    {
        double x0 = outlines.Min(o => o.Min(p => p.X)),
            y0 = outlines.Min(o => o.Min(p => p.Y)),
            x1 = outlines.Max(o => o.Max(p => p.X)),
            y1 = outlines.Max(o => o.Max(p => p.Y));
        var right = ImmutableArray.CreateBuilder<RowEdge>();
        var left = ImmutableArray.CreateBuilder<RowEdge>();
        double thinned = 0;
        foreach (ImmutableArray<Vec2> outline in outlines)
        {
            ThinOutline thin = ThinOutline.Of(outline, ThinWithinMm);
            thinned = Math.Max(thinned, thin.WithinMm);
            for (int i = 0; i < thin.Points.Length; i++)
            {
                var corner = new Vec2(x0, y0);
                Vec2 a = thin.Points[i] - corner,
                    b = thin.Points[(i + 1) % thin.Points.Length] - corner;
                // Counter-clockwise, so an edge that rises has the wood on its left and looks to the right.
                (b.Y > a.Y ? right : left).Add(new(a, b));
                if (b.Y == a.Y)
                {
                    right.Add(new(a, b));
                }
            }
        }

        return new(x1 - x0, y1 - y0, right.ToImmutable(), left.ToImmutable(), thinned);
    }

    /// <summary>The same end for end: a half turn.</summary>
    public RowShape Turned()
    {
        RowEdge Turn(RowEdge e) => new(Corner(e.A), Corner(e.B));
        Vec2 Corner(Vec2 p) => new(LengthMm - p.X, HeightMm - p.Y);
        return this with
        {
            RightSide = [.. LeftSide.Select(Turn)],
            LeftSide = [.. RightSide.Select(Turn)],
        };
    }
}

/// <summary>A straight piece of an outline.</summary>
internal readonly record struct RowEdge(Vec2 A, Vec2 B);
