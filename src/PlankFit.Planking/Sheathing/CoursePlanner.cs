using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Sheathing;

/// <summary>Divides an outline into courses no wider than the roll, each lapping the next.</summary>
public static class CoursePlanner
{
    /// <summary>Course lines are tried so far apart, mm. A proposal, no source.</summary>
    private const double SlideMm = 20;

    /// <summary>What an outline leaves of a strip beyond this is dust of computing, mm².</summary>
    private const double LeastPartMm2 = 1;

    /// <summary>More courses than this are no way to lay cloth; the roll's width is mistaken.</summary>
    private const int MostCourses = 400;

    /// <param name="outline">With its excess, p along the first line and q across.</param>
    /// <param name="lapMm">Of one course over the next.</param>
    /// <param name="before">Joins that those found are to lie <paramref name="staggerMm"/> off, along and across.</param>
    /// <returns>Null where the roll is too narrow for that lap.</returns>
    public static ClothCourses? Of(
        ImmutableArray<Vec2> outline,
        double rollMm,
        double lapMm,
        CourseRule rule,
        (ImmutableArray<double> Along, ImmutableArray<double> Across) before,
        double staggerMm
    )
    {
        ClothCourses? along = rule == CourseRule.Across
                ? null
                : OneWay(outline, rollMm, lapMm, true, before.Along, staggerMm),
            across = rule == CourseRule.Along
                ? null
                : OneWay(outline, rollMm, lapMm, false, before.Across, staggerMm);
        ClothCourses[] both = [.. new[] { along, across }.OfType<ClothCourses>()];
        return rule == CourseRule.FewestMetres
            ? both.MinBy(c => c.MetresMm)
            : both.OrderBy(c => c.JoinsMm.Length).ThenBy(c => c.MetresMm).FirstOrDefault();
    }

    /// <summary>How many courses a width takes: n = ⌈(G − a)/(W − a)⌉, one at least.</summary>
    public static int Count(double widthMm, double rollMm, double lapMm) =>
        rollMm <= lapMm
            ? int.MaxValue
            : Math.Max(1, (int)Math.Ceiling((widthMm - lapMm) / (rollMm - lapMm) - 1e-9));

    private static ClothCourses? OneWay(
        ImmutableArray<Vec2> outline,
        double rollMm,
        double lapMm,
        bool along,
        ImmutableArray<double> before,
        double staggerMm
    )
    {
        double Across(Vec2 p) => along ? p.Y : p.X;
        double low = outline.Min(Across),
            high = outline.Max(Across);
        int n = Count(high - low, rollMm, lapMm);
        if (n > MostCourses)
        {
            return null;
        }

        double pitch = rollMm - lapMm,
            slack = (n * pitch) + lapMm - (high - low);
        ClothCourses? best = null;
        double bestMiss = double.PositiveInfinity;
        (double Low, double High)[] bestStrips = [];
        for (double slide = 0; slide <= Math.Max(0, n == 1 ? 0 : slack); slide += SlideMm)
        {
            double[] joins =
            [
                .. Enumerable.Range(1, n - 1).Select(i => low - slide + (i * pitch) + (lapMm / 2)),
            ];
            double miss = joins
                .SelectMany(j => before.Select(b => Math.Max(0, staggerMm - Math.Abs(j - b))))
                .Sum();
            (double Low, double High)[] strips =
            [
                .. Enumerable
                    .Range(0, n)
                    .Select(i =>
                        (
                            i == 0 ? low - 1 : low - slide + (i * pitch),
                            i == n - 1 ? high + 1 : low - slide + (i * pitch) + rollMm
                        )
                    ),
            ];
            ImmutableArray<Vec2>[] parts =
            [
                .. strips.Select(s => Strip(outline, along, s.Low, s.High)),
            ];
            if (parts.Any(p => p.Length < 3))
            {
                continue;
            }

            double metres = parts.Sum(p => Extent(p, along));
            if (
                best is null
                || miss < bestMiss - 1e-6
                || (miss <= bestMiss + 1e-6 && metres < best.MetresMm - 1e-6)
            )
            {
                (best, bestMiss, bestStrips) = (new(along, [.. joins], [], metres), miss, strips);
            }
        }

        return best is null
            ? null
            : best with
            {
                Parts =
                [
                    .. bestStrips.SelectMany(
                        (s, i) => Parts(outline, along, s).Select(p => new CoursePart(i, [.. p]))
                    ),
                ],
            };
    }

    /// <summary>What lies in a strip: of an outline that bends away from it there may be several parts.</summary>
    private static IReadOnlyList<IReadOnlyList<Vec2>> Parts(
        ImmutableArray<Vec2> outline,
        bool along,
        (double Low, double High) strip
    )
    {
        const double pastMm = 1;
        double from = outline.Min(p => along ? p.X : p.Y) - pastMm,
            to = outline.Max(p => along ? p.X : p.Y) + pastMm;
        Vec2 At(double run, double across) => along ? new(run, across) : new(across, run);
        return PlanarShapes.Common(
            outline,
            [At(from, strip.Low), At(to, strip.Low), At(to, strip.High), At(from, strip.High)],
            LeastPartMm2
        );
    }

    private static double Extent(ImmutableArray<Vec2> part, bool along) =>
        along ? part.Max(p => p.X) - part.Min(p => p.X) : part.Max(p => p.Y) - part.Min(p => p.Y);

    /// <summary>The part of an outline between two lines along or across, by clipping it with each (Sutherland and Hodgman 1974, from memory).</summary>
    private static ImmutableArray<Vec2> Strip(
        ImmutableArray<Vec2> outline,
        bool along,
        double low,
        double high
    )
    {
        double Across(Vec2 p) => along ? p.Y : p.X;
        return Clipped(Clipped(outline, p => Across(p) - low), p => high - Across(p));
    }

    internal static ImmutableArray<Vec2> Clipped(
        ImmutableArray<Vec2> outline,
        Func<Vec2, double> inside
    )
    {
        ImmutableArray<Vec2>.Builder kept = ImmutableArray.CreateBuilder<Vec2>(outline.Length + 4);
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 a = outline[i],
                b = outline[(i + 1) % outline.Length];
            double atA = inside(a),
                atB = inside(b);
            if (atA >= 0)
            {
                kept.Add(a);
            }

            if (atA * atB < 0)
            {
                kept.Add(a + (atA / (atA - atB) * (b - a)));
            }
        }

        return kept.ToImmutable();
    }
}
