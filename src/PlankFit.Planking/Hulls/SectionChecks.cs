using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Hulls;

/// <summary>What the points of one station must be before a surface can go through them.</summary>
internal static class SectionChecks
{
    /// <summary>
    /// Points of two lines nearer than this are one point, mm: no table tells them apart, and the section between two neighbours that share one has no
    /// direction there.
    /// </summary>
    private const double SamePointMm = 0.05;

    /// <param name="station">Its name, for the fault.</param>
    /// <param name="panel">Whose lines they are.</param>
    /// <param name="lines">The lines that have a point there, from the lower edge to the upper.</param>
    /// <param name="points">Theirs, mm.</param>
    /// <param name="apexMm">Edges nearer than this are one point, in which the panel ends; nought where it may not, mm.</param>
    /// <exception cref="JobFaultException">Where the panel folds back on itself, or two of its lines run through one point.</exception>
    public static void Require(
        string station,
        Panel panel,
        IReadOnlyList<string> lines,
        IReadOnlyList<Vec3> points,
        double apexMm
    )
    {
        Func<LengthUnit, string>? fault =
            points[0].ChordTo(points[^1]) < apexMm
                ? Away(panel, lines, points, apexMm)
                : Crossed(panel, points[0], points[^1]) ?? Same(panel, lines, points);
        if (fault is not null)
        {
            throw new JobFaultException($"offsets, station {station}", fault);
        }
    }

    /// <summary>A panel folded back on itself has no outside: the chine of a bottom must not lie inboard of the keel, no other panel's upper edge below its lower one.</summary>
    private static Func<LengthUnit, string>? Crossed(Panel panel, Vec3 lower, Vec3 upper) =>
        panel.HasKeel && !(upper.Y >= lower.Y)
            ? u =>
                $"'{panel.Upper}' at half-breadth {LengthText.ForPaper(upper.Y, u)} is inboard of '{panel.Lower}' at {LengthText.ForPaper(lower.Y, u)}: the lines cross there; correct the table, or name the right lines in [hull]"
        : !panel.HasKeel && !IsUpward(lower, upper)
            ? u =>
                $"'{panel.Upper}' at height {LengthText.ForPaper(upper.Z, u)} is below '{panel.Lower}' at {LengthText.ForPaper(lower.Z, u)}: the lines cross there; correct the table, or name the right lines in [[panel]] {panel.Name}"
        : null;

    private static Func<LengthUnit, string>? Same(
        Panel panel,
        IReadOnlyList<string> lines,
        IReadOnlyList<Vec3> points
    )
    {
        int j = Enumerable
            .Range(1, points.Count - 1)
            .FirstOrDefault(k => points[k].ChordTo(points[k - 1]) < SamePointMm);
        return j == 0
            ? null
            : u =>
                $"'{lines[j - 1]}' and '{lines[j]}' are in one place, {Place(points[j], u)}: "
                + (
                    points.Count > 2
                        ? "perhaps a column was copied; correct the table, or leave the cells of the line between empty there"
                        : $"the {panel.Name} has no width there; correct the table, or end both lines before that station"
                );
    }

    /// <summary>Where both edges meet every line between must come to the same point.</summary>
    private static Func<LengthUnit, string>? Away(
        Panel panel,
        IReadOnlyList<string> lines,
        IReadOnlyList<Vec3> points,
        double apexMm
    )
    {
        int j = Enumerable
            .Range(0, points.Count)
            .FirstOrDefault(k => points[k].ChordTo(points[0]) >= apexMm);
        return j == 0
            ? null
            : u =>
                $"'{panel.Lower}' and '{panel.Upper}' meet in a point there, {Place(points[0], u)}, and '{lines[j]}' is away from it, {Place(points[j], u)}; correct the table, or leave the cells of '{lines[j]}' empty there";
    }

    private static string Place(Vec3 p, LengthUnit u) =>
        $"half-breadth {LengthText.ForPaper(p.Y, u)} and height {LengthText.ForPaper(p.Z, u)}";

    /// <summary>Up, or outboard and by less than half a right angle down, as a flat along a chine may be.</summary>
    private static bool IsUpward(Vec3 lower, Vec3 upper)
    {
        Vec3 rise = upper - lower;
        return rise.Z > 0 || rise.Y > -rise.Z;
    }
}
