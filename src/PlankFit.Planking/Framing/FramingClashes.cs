using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Framing;

/// <summary>Things behind that stand in one another's way.</summary>
internal static class FramingClashes
{
    private const int MostPlanksNamed = 4;

    /// <summary>Stringers, or frames, or floors, that run beside one another nearer than half of both their widths.</summary>
    public static IEnumerable<Finding> TooClose(
        Planked planked,
        Side side,
        SectionFace face,
        IReadOnlyList<FramingStrip> strips,
        string onSide
    )
    {
        FramingStrip[] timbers =
        [
            .. strips.Where(s =>
                (s.Of.Only is null || s.Of.Only == side)
                && s.Of.Kind is FramingKind.Stringer or FramingKind.Frame or FramingKind.Floor
            ),
        ];
        for (int i = 0; i < timbers.Length; i++)
        {
            for (int k = i + 1; k < timbers.Length; k++)
            {
                (FramingStrip a, FramingStrip b) = (timbers[i], timbers[k]);
                if (
                    a.Of == b.Of
                    || a.Of.IsAcross != b.Of.IsAcross
                    || (a.Of.IsAcross && a.Of.Kind != b.Of.Kind)
                )
                {
                    continue;
                }

                double asked = (a.Of.WidthMm + b.Of.WidthMm) / 2;
                if (Nearest(face, a, b, asked) is { } near && near.Mm < asked - 0.5)
                {
                    LengthUnit unit = planked.Job.Units;
                    var place = FromStation.Of(planked.HullOf(side).Stations, near.X);
                    yield return new(
                        Severity.Warning,
                        FramingFindings.Where(a.Of, onSide),
                        $"its centre comes within {LengthText.ForPaper(near.Mm, unit)} of that of {b.Of.Name} {place.Words(unit)}, and half of both their widths is {LengthText.ForPaper(asked, unit)}: move or end one of them"
                    )
                    {
                        Rank = Rank.Know,
                    };
                }
            }
        }
    }

    /// <summary>A place kept open that something else covers.</summary>
    /// <param name="mirrored">The other side has told of all that is on both.</param>
    public static IEnumerable<Finding> Open(
        Planked planked,
        Side side,
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>> byPlank,
        string onSide,
        bool mirrored
    )
    {
        Plank[] inner = [.. planked.PlankLayers.First().On(side)];
        IEnumerable<
            IGrouping<
                (FramingSpec Open, FramingSpec Other),
                (FramingSpec Open, FramingSpec Other, PlankId Id)
            >
        > pairs = (
            from plank in inner
            from open in byPlank[plank.Id].Where(c => c.Of.Kind == FramingKind.Open)
            from other in byPlank[plank.Id].Where(c => c.Of.Kind != FramingKind.Open)
            where !mirrored || open.Of.Only is not null || other.Of.Only is not null
            where Overlap(open.Cover, other.Cover)
            select (Open: open.Of, Other: other.Of, plank.Id)
        ).GroupBy(p => (p.Open, p.Other));
        foreach (
            IGrouping<
                (FramingSpec Open, FramingSpec Other),
                (FramingSpec Open, FramingSpec Other, PlankId Id)
            > pair in pairs
        )
        {
            PlankId[] ids = [.. pair.Select(p => p.Id).Distinct()];
            yield return new(
                Severity.Warning,
                FramingFindings.Where(pair.Key.Open, onSide),
                $"it is to be kept open, and {pair.Key.Other.Name} crosses it (under {string.Join(", ", ids.Take(MostPlanksNamed))}{(ids.Length > MostPlanksNamed ? " and others" : "")}): move one of them"
            )
            {
                Rank = Rank.Know,
            };
        }
    }

    private static (double Mm, double X)? Nearest(
        SectionFace face,
        FramingStrip a,
        FramingStrip b,
        double askedMm
    )
    {
        (double Mm, double X)? least = null;
        for (int i = 0; i < a.Points.Length; i++)
        {
            Vec3 p = a.Points[i];
            if (FramingFindings.IsOff(face, a.Centre.At(a.Nodes[i])))
            {
                continue;
            }

            for (int k = 0; k + 1 < b.Points.Length; k++)
            {
                Vec3 q = b.Points[k],
                    side = b.Points[k + 1] - q;
                if (
                    Math.Min(q.X, q.X + side.X) > p.X + askedMm
                    || Math.Max(q.X, q.X + side.X) < p.X - askedMm
                )
                {
                    continue;
                }

                double part = Math.Clamp((p - q).Dot(side) / side.NormSquared, 0, 1),
                    mm = p.ChordTo(q + (part * side));
                if (
                    (least is null || mm < least.Value.Mm)
                    && !FramingFindings.IsOff(
                        face,
                        b.Centre.At(b.Nodes[k] + (part * (b.Nodes[k + 1] - b.Nodes[k])))
                    )
                )
                {
                    least = (mm, p.X);
                }
            }
        }

        return least;
    }

    private static bool Overlap(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        if (a.Any(p => FlatPolygon.Holds(b, p)) || b.Any(p => FlatPolygon.Holds(a, p)))
        {
            return true;
        }

        // Two strips that cross like the arms of a cross have no corner in one another.
        Vec2 Side(ImmutableArray<Vec2> c, int i) => c[(i + 1) % c.Length] - c[i];
        for (int i = 0; i < a.Length; i++)
        {
            for (int k = 0; k < b.Length; k++)
            {
                Vec2 s = Side(a, i),
                    t = Side(b, k);
                double across = s.Cross(t),
                    p = (b[k] - a[i]).Cross(t) / across,
                    q = (b[k] - a[i]).Cross(s) / across;
                if (p is > 0 and < 1 && q is > 0 and < 1)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
