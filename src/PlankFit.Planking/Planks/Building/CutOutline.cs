using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The shape to saw: the edges carried straight on past the net ends until they meet the cut of each end. An end left long is cut parallel to the net end's
/// chord; an end that is fit is cut on the outermost of its lines on the two faces, or parallel to its chord where there is an allowance.
/// </summary>
internal static class CutOutline
{
    /// <summary>Sharp tips are cut blunt beyond so many overhangs.</summary>
    private const double BluntBeyond = 4;

    /// <param name="lines">Edges and ends in the order of the outline; an end with its rule and allowance, an edge without.</param>
    public static List<Vec2> Build(
        IReadOnlyList<(Vec2[] Line, EndPiece? End, double AllowanceMm)> lines
    )
    {
        Vec2[][] cut =
        [
            .. lines.Select(l => l.End is null ? l.Line : CutLine(l.End, l.AllowanceMm)),
        ];
        var points = new List<Vec2>();
        int n = cut.Length;
        var joints = new Joint[n];
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            double reach = Math.Max(Reach(lines[i]), Reach(lines[j]));
            joints[i] = Join(
                cut[i],
                lines[i].End is not null,
                cut[j],
                lines[j].End is not null,
                reach
            );
        }

        for (int i = 0; i < n; i++)
        {
            Joint before = joints[(i + n - 1) % n],
                after = joints[i];
            points.AddRange(before.Points);
            for (int k = before.NextFrom; k <= after.UpTo; k++)
            {
                points.Add(cut[i][k]);
            }
        }

        return Clean(points);
    }

    private static double Reach((Vec2[] Line, EndPiece? End, double AllowanceMm) line) =>
        line.End is null ? 0 : (BluntBeyond * (line.End.Rule.ByMm + line.AllowanceMm)) + 30;

    private static Vec2[] CutLine(EndPiece end, double allowanceMm)
    {
        Vec2 a = end.Net[0],
            b = end.Net[^1],
            outward = end.Outward;
        double Out(Vec2 p) => outward.Dot(p - a);
        double net = end.Net.Max(Out),
            outer = end.Outer.Max(Out),
            inner = end.Inner.Max(Out);
        double offset =
            end.Rule.Cut == EndCut.LeftLong ? net + end.Rule.ByMm
            : allowanceMm > 0 ? Math.Max(net, Math.Max(outer, inner)) + allowanceMm
            : 0;
        if (offset > 0)
        {
            offset = Math.Max(offset, Math.Max(outer, inner));
            return [a + (offset * outward), b + (offset * outward)];
        }

        double Mean(Vec2[] line) => line.Average(Out);
        double[] means = [Mean(end.Net), Mean(end.Outer), Mean(end.Inner)];
        return means[1] >= means[0] && means[1] >= means[2] ? end.Outer
            : means[2] >= means[0] ? end.Inner
            : end.Net;
    }

    /// <summary>Where one line gives way to the next: extra points, the last point kept of this line and the first kept of the next.</summary>
    private readonly record struct Joint(Vec2[] Points, int UpTo, int NextFrom);

    private static Joint Join(Vec2[] x, bool xIsEnd, Vec2[] y, bool yIsEnd, double reachMm)
    {
        const double far = 1e5;
        Vec2 xOn = x[^1] + (far * (x[^1] - x[^2]).Unit()),
            yBack = y[0] + (far * (y[0] - y[1]).Unit());
        int xFirst = xIsEnd ? 0 : x.Length - 2,
            yLast = yIsEnd ? y.Length - 2 : 0;
        double least = double.PositiveInfinity;
        Joint? best = null;
        for (int i = xFirst; i <= x.Length - 2; i++)
        {
            Vec2 xTo = i == x.Length - 2 ? xOn : x[i + 1];
            for (int j = 0; j <= yLast; j++)
            {
                Vec2 yFrom = j == 0 ? yBack : y[j];
                if (Meet(x[i], xTo, yFrom, y[j + 1]) is not { } p)
                {
                    continue;
                }

                double away = p.ChordTo(x[^1]) + p.ChordTo(y[0]);
                if (away < least)
                {
                    least = away;
                    bool beyondX = i == x.Length - 2 && (p - x[^1]).Dot(x[^1] - x[^2]) >= 0;
                    bool beyondY = j == 0 && (p - y[0]).Dot(y[1] - y[0]) <= 0;
                    best = new([p], beyondX ? x.Length - 1 : i, beyondY ? 0 : j + 1);
                }
            }
        }

        if (
            best is { } joint
            && (joint.Points[0].ChordTo(x[^1]) <= Math.Max(reachMm, 1) || joint.UpTo < x.Length - 1)
        )
        {
            return joint;
        }

        // A tip too sharp to be carried to its point: blunt.
        return new(
            [x[^1] + (reachMm * (x[^1] - x[^2]).Unit()), y[0] + (reachMm * (y[0] - y[1]).Unit())],
            x.Length - 1,
            0
        );
    }

    private static Vec2? Meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d)
    {
        Vec2 r = b - a,
            q = d - c;
        double det = r.Cross(q);
        if (Math.Abs(det) <= 1e-12 * r.Norm * q.Norm)
        {
            return null;
        }

        double t = (c - a).Cross(q) / det,
            v = (c - a).Cross(r) / det;
        const double hair = 1e-9;
        return t >= -hair && t <= 1 + hair && v >= -hair && v <= 1 + hair ? a + (t * r) : null;
    }

    /// <summary>Keeps what lies between two straight edges of stock, n from low to high.</summary>
    public static List<Vec2> WithinStock(List<Vec2> outline, double low, double high) =>
        Clean(Half(Half(outline, high, 1), -low, -1));

    private static List<Vec2> Half(List<Vec2> outline, double limit, int sign)
    {
        var kept = new List<Vec2>(outline.Count + 4);
        for (int i = 0; i < outline.Count; i++)
        {
            Vec2 a = outline[i],
                b = outline[(i + 1) % outline.Count];
            double da = limit - (sign * a.Y),
                db = limit - (sign * b.Y);
            if (da >= 0)
            {
                kept.Add(a);
            }

            if ((da > 0 && db < 0) || (da < 0 && db > 0))
            {
                kept.Add(a + (da / (da - db) * (b - a)));
            }
        }

        return kept;
    }

    private static List<Vec2> Clean(List<Vec2> points)
    {
        var clean = new List<Vec2>(points.Count);
        foreach (Vec2 p in points)
        {
            if (clean.Count == 0 || clean[^1].ChordTo(p) > 1e-6)
            {
                clean.Add(p);
            }
        }

        while (clean.Count > 1 && clean[^1].ChordTo(clean[0]) <= 1e-6)
        {
            clean.RemoveAt(clean.Count - 1);
        }

        return clean;
    }
}
