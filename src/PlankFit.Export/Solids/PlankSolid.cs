using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Solids;

/// <summary>
/// A plank as a body on the hull, trimmed to its net ends: both faces at its true thickness, ends bevelled as they are sawn, edges square to the faces. Rings go
/// counter-clockwise seen from outside and belong together vertex by vertex.
/// </summary>
/// <param name="Outer">On the outer face, mm.</param>
/// <param name="Inner">On the inner face.</param>
/// <param name="Normals">Outward, of the surface under each vertex.</param>
/// <param name="Faces">Triangles of the outer face, by places in the rings; those of the inner one are the same turned round.</param>
public sealed record PlankSolid(
    PlankId Id,
    ImmutableArray<Vec3> Outer,
    ImmutableArray<Vec3> Inner,
    ImmutableArray<Vec3> Normals,
    ImmutableArray<(int A, int B, int C)> Faces
)
{
    /// <summary>Two points nearer than this are one, mm: ends and edges share theirs exactly.</summary>
    private const double SameMm = 1e-6;

    /// <param name="toleranceMm">By which the edges may be off for having fewer vertices.</param>
    public static PlankSolid Of(Plank plank, double thicknessMm, double toleranceMm)
    {
        Plank on = plank.OnHull;
        (PlankEnd End, double Part)?[] atEnd = AtEnds(on);
        int count = atEnd.Length;
        bool Corner(int i) =>
            atEnd[i] is { } here
            && (
                atEnd[(i + 1) % count]?.End != here.End
                || atEnd[(i + count - 1) % count]?.End != here.End
            );
        ImmutableArray<int> kept = SpaceThinning.Closed(on.Outline, Corner, toleranceMm);
        List<(Vec2 Net, Vec2 Outer, Vec2 Inner)> ring =
        [
            .. kept.Select(i =>
                atEnd[i] is { } end
                    ? (
                        on.FlatNet[i],
                        At(end.End.OuterLine, end.Part),
                        At(end.End.InnerLine, end.Part)
                    )
                    : (on.FlatNet[i], on.FlatNet[i], on.FlatNet[i])
            ),
        ];
        bool[] isEdge = [.. kept.Select(i => atEnd[i] is null)];
        ring = [.. ring.Where((_, i) => !isEdge[i] || IsBetween(ring, isEdge, i))];
        double half = thicknessMm / 2;
        bool port = plank.Side == Side.Port;
        (Vec3 P, Vec3 Normal) Face(Vec2 flat, double out_)
        {
            SurfacePoint under = on.Map.Under(flat);
            Vec3 p = under.P + (out_ * under.Normal);
            return port ? (p.MirroredInY(), under.Normal.MirroredInY()) : (p, under.Normal);
        }

        (Vec3 P, Vec3 Normal)[] outer = [.. ring.Select(r => Face(r.Outer, half))];
        return new(
            plank.Id,
            [.. outer.Select(o => o.P)],
            [.. ring.Select(r => Face(r.Inner, -half).P)],
            [.. outer.Select(o => o.Normal)],
            EarClipping.Of([.. ring.Select(r => r.Net)])
        );
    }

    /// <summary>Of every vertex of the net outline the end that it lies on, and how far along it, from nought to one; null on the edges.</summary>
    private static (PlankEnd End, double Part)?[] AtEnds(Plank plank)
    {
        ImmutableArray<Vec2> net = plank.FlatNet;
        var at = new (PlankEnd, double)?[net.Length];
        foreach (PlankEnd end in plank.Ends)
        {
            double length = Length(end.NetLine),
                gone = 0;
            for (int i = 0; i < end.NetLine.Length; i++)
            {
                Vec2 point = end.NetLine[i];
                gone += i == 0 ? 0 : point.ChordTo(end.NetLine[i - 1]);
                for (int j = 0; j < at.Length; j++)
                {
                    if (Math.Abs(net[j].X - point.X) < SameMm && net[j].ChordTo(point) < SameMm)
                    {
                        at[j] ??= (end, length > 0 ? gone / length : 0);
                    }
                }
            }
        }

        return at;
    }

    /// <summary>An edge's vertex stays where both faces reach past it; beyond a bevelled end's shorter face there is no wood.</summary>
    private static bool IsBetween(
        List<(Vec2 Net, Vec2 Outer, Vec2 Inner)> ring,
        bool[] isEdge,
        int i
    )
    {
        int back = i,
            on = i;
        while (isEdge[back])
        {
            back = (back + ring.Count - 1) % ring.Count;
        }

        while (isEdge[on])
        {
            on = (on + 1) % ring.Count;
        }

        (double fromOuter, double toOuter) = Sorted(ring[back].Outer.X, ring[on].Outer.X);
        (double fromInner, double toInner) = Sorted(ring[back].Inner.X, ring[on].Inner.X);
        double x = ring[i].Net.X;
        return x > Math.Max(fromOuter, fromInner) && x < Math.Min(toOuter, toInner);
    }

    private static (double From, double To) Sorted(double a, double b) => a < b ? (a, b) : (b, a);

    private static double Length(ImmutableArray<Vec2> line)
    {
        double length = 0;
        for (int i = 1; i < line.Length; i++)
        {
            length += line[i].ChordTo(line[i - 1]);
        }

        return length;
    }

    /// <summary>The point that far along a line, as a part of its length.</summary>
    private static Vec2 At(ImmutableArray<Vec2> line, double part)
    {
        double left = part * Length(line);
        for (int i = 1; i < line.Length; i++)
        {
            double step = line[i].ChordTo(line[i - 1]);
            if (left <= step && step > 0)
            {
                return line[i - 1] + (left / step * (line[i] - line[i - 1]));
            }

            left -= step;
        }

        return line[^1];
    }
}
