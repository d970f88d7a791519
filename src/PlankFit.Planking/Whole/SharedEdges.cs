using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Whole;

/// <summary>
/// A line of the table that two panels share is one curve on both where they have the same stations. Where one has stations more, the splines differ between the last
/// ones, and the seam gapes or the panels overlap by as much.
/// </summary>
internal static class SharedEdges
{
    /// <summary>A gap that no batten shows, mm: our own bound, no source.</summary>
    private const double NoneMm = 0.3;

    private const int LooksABay = 8;

    /// <summary>A wedge at a corner that thinner glue lines have, mm: our own bound, no source.</summary>
    private const double WedgeMm = 1;

    public static IEnumerable<Finding> Of(IReadOnlyList<BottomPlan> panels)
    {
        foreach (BottomPlan upper in panels)
        {
            string line = upper.Job.Hull.Panel.Lower;
            if (panels.FirstOrDefault(p => p.Job.Hull.Panel.Upper == line) is not { } lower)
            {
                continue;
            }

            (double mm, double x) = Widest(lower.Hull, upper.Hull);
            if (mm > NoneMm)
            {
                yield return new(
                    Severity.Warning,
                    $"{lower.Job.Hull.Panel.Name} and {upper.Job.Hull.Panel.Name}",
                    $"'{line}' is drawn through other stations for the one than for the other, and the two lie up to {LengthText.ForPaper(mm, upper.Job.Units)} apart at x = {LengthText.ForPaper(x, upper.Job.Units)}: give both panels' lines values at the same stations"
                );
            }

            if (Corner(lower, upper) is { } open)
            {
                yield return open;
            }
        }
    }

    /// <summary>Planks that are fit at the shared line are cut square there; where the panels meet neither squarely nor flat one skin does not close upon the other.</summary>
    private static Finding? Corner(BottomPlan lower, BottomPlan upper)
    {
        EndRules ends = upper.Job.Ends;
        if (ends.Zones.Select(z => z.Lower).Append(ends.Lower).All(r => r?.Cut != EndCut.Fit))
        {
            return null;
        }

        (double off, double x) = Places(lower.Hull, upper.Hull)
            .Select(p =>
            {
                double between = Math.Acos(Math.Clamp(p.Lower.Normal.Dot(p.Upper.Normal), -1, 1));
                // Two panels that meet nearly flat are butted and not lapped: each end then wants half of what lies between them.
                double off = Math.Min(Math.Abs((Math.PI / 2) - between), between / 2);
                return (off, p.Upper.P.X);
            })
            .DefaultIfEmpty()
            .MaxBy(p => p.Item1);
        double mm = Stack.Of(upper.Planked.Job).ThicknessMm * Math.Tan(off);
        Panel panel = upper.Job.Hull.Panel;
        return mm > WedgeMm
            ? new(
                Severity.Warning,
                panel.Name,
                $"its planks are fit at the {panel.Lower}, cut square there, and the panels meet neither squarely nor flat: up to {LengthText.ForPaper(mm, upper.Job.Units)} through the thickness is wanting or too much for a lap or a butt, most at x = {LengthText.ForPaper(x, upper.Job.Units)}; leave them long there and plane them in place"
            )
            : null;
    }

    /// <summary>Places of the shared line on both panels, abreast of each other.</summary>
    private static IEnumerable<(SurfacePoint Lower, SurfacePoint Upper)> Places(
        HullSurface lower,
        HullSurface upper
    )
    {
        (LoftedSurface a, LoftedSurface b) = (lower.Surface, upper.Surface);
        StationOnHull[] shared =
        [
            .. upper.Stations.Where(s => lower.Stations.Any(t => t.Name == s.Name)),
        ];
        for (int i = 0; i + 1 < shared.Length; i++)
        {
            for (int k = 0; k <= LooksABay; k++)
            {
                double u = shared[i].U + ((shared[i + 1].U - shared[i].U) * k / LooksABay),
                    v = lower.Stations.First(s => s.Name == shared[i].Name).U + u - shared[i].U;
                yield return (a.At(v, a.UpperV(v)), b.At(u, 0));
            }
        }
    }

    /// <summary>The furthest apart that the upper edge of the one and the lower edge of the other lie, where both have stations, and the x of it.</summary>
    public static (double Mm, double X) Widest(HullSurface lower, HullSurface upper)
    {
        (double Mm, double X) widest = (0, 0);
        foreach ((SurfacePoint a, SurfacePoint b) in Places(lower, upper))
        {
            double mm = a.P.ChordTo(b.P);
            widest = mm > widest.Mm ? (mm, a.P.X) : widest;
        }

        return widest;
    }
}
