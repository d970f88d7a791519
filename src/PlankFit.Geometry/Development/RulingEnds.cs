namespace PlankFit.Geometry.Development;

/// <summary>
/// Where the rulings proper begin and end. The ruling from a corner seldom lands on the other corner: what is left
/// between it and the panel's end is a fan of rulings through that corner.
/// </summary>
internal static class RulingEnds
{
    public static (double P, double Q) Find(
        SurfacePatch patch,
        RulingCondition condition,
        StartLine line,
        bool atStart,
        double pointMm
    )
    {
        double u = atStart ? patch.UFrom : patch.UTo;
        if (patch.ClosesAt(u, pointMm))
        {
            // Where the edges meet the ruling has no length and no direction: begin a little inside; what is left is
            // reached by carrying the first strip on.
            double inside = u + (1e-3 * patch.URange * (atStart ? 1 : -1));
            return (inside, Rulings.Solve(patch, x => condition.At(inside, x), inside).X);
        }

        if (Math.Abs(condition.At(u, u)) < 1e-10)
        {
            return (u, u);
        }

        int onLower = atStart ? line.FirstRunOnLower : line.LastRunOnLower,
            onUpper = atStart ? line.FirstRunOnUpper : line.LastRunOnUpper;
        (double q, bool foundQ) = Rulings.Solve(patch, x => condition.At(u, x), u);
        (double p, bool foundP) = Rulings.Solve(patch, x => condition.At(x, u), u);
        bool fanOnUpperEdge = foundQ && (!foundP || onUpper >= onLower);
        if (fanOnUpperEdge)
        {
            return (u, q);
        }

        if (foundP)
        {
            return (p, u);
        }

        // No root near the corner: a long run of the start says that the whole stretch is a fan.
        double step = patch.URange / 72 * (atStart ? 1 : -1);
        return onUpper >= onLower && onUpper > 8 ? (u, u + (step * onUpper))
            : onLower > 8 ? (u + (step * onLower), u)
            : (u, u);
    }
}
