using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>How finely the least-strain flat is worked out.</summary>
/// <param name="SpansAlong">Cubic spans along the panel; SpansAcross across it. Both even: the error is judged against half as many.</param>
/// <param name="Poisson">
/// Poisson's ratio of the sheet, 0.3 unless said. To first order the strain of a long strip does not depend on it
/// (the stress there runs one way only).
/// </param>
/// <param name="SettledMm">The search ends when no control point moves by more than this.</param>
public sealed record LeastStrainOptions(
    int SpansAlong = 40,
    int SpansAcross = 6,
    double Poisson = 0.3,
    double SettledMm = 1e-6
);

/// <summary>
/// The flat from which an elastic sheet can be pulled onto the panel with the least energy: Gauss and Newton's method on a
/// <see cref="MembraneSheet"/>, started from a strip of triangles, on half the spans first and then on all of them.
/// </summary>
internal static class LeastStrain
{
    private const int MostSteps = 40;

    internal sealed record Result(SplineMap Map, bool Settled, double AreaMm2, double GaussTurn);

    public static Result Coarse(SurfacePatch patch, LeastStrainOptions options, double pointMm)
    {
        CubicBasis along = new(options.SpansAlong / 2),
            across = new(Math.Max(1, options.SpansAcross / 2));
        double[] u =
        [
            .. Enumerable
                .Range(0, along.Count)
                .Select(i => patch.UFrom + (along.Greville(i) * patch.URange)),
        ];
        (Vec2[] low, Vec2[] high) = StartFlat.Lay(patch, u);
        return Solve(
            patch,
            options,
            pointMm,
            along,
            across,
            (i, t) => ((1 - t) * low[i]) + (t * high[i])
        );
    }

    public static Result Fine(
        SurfacePatch patch,
        LeastStrainOptions options,
        double pointMm,
        SplineMap start
    )
    {
        CubicBasis along = new(options.SpansAlong),
            across = new(options.SpansAcross);
        return Solve(
            patch,
            options,
            pointMm,
            along,
            across,
            (i, t) => start.Evaluate(along.Greville(i), t).P
        );
    }

    private static Result Solve(
        SurfacePatch patch,
        LeastStrainOptions options,
        double pointMm,
        CubicBasis along,
        CubicBasis across,
        Func<int, double, Vec2> start
    )
    {
        int columns = along.Count,
            rows = across.Count;
        var control = new Vec2[columns * rows];
        int[] unknown = new int[columns * rows];
        bool pointFirst = patch.ClosesAt(patch.UFrom, pointMm),
            pointLast = patch.ClosesAt(patch.UTo, pointMm);
        int next = 0;
        for (int i = 0; i < columns; i++)
        {
            bool point = (i == 0 && pointFirst) || (i == columns - 1 && pointLast);
            for (int j = 0; j < rows; j++)
            {
                control[(i * rows) + j] = start(i, point ? 0 : across.Greville(j));
                unknown[(i * rows) + j] = point && j > 0 ? next - 1 : next++;
            }
        }

        // A chord along x makes the three that are held (both of one corner, y of the other) hold no stress.
        FlatFrame frame = new(control[0], (control[^rows] - control[0]).Unit());
        control = [.. control.Select(frame.Place)];
        int heldY = (2 * unknown[(columns - 1) * rows]) + 1;
        MembraneSheet sheet = new(patch, along, across, options.Poisson);
        bool settled = Search(sheet, control, unknown, next, rows, heldY, options.SettledMm);
        return new(new(patch, along, across, control), settled, sheet.AreaMm2, sheet.GaussTurn);
    }

    private static bool Search(
        MembraneSheet sheet,
        Vec2[] control,
        int[] unknown,
        int count,
        int rows,
        int heldY,
        double settledMm
    )
    {
        BandedMatrix matrix = new(2 * count, (2 * ((3 * rows) + 4)) + 1);
        double[] gradient = new double[2 * count],
            spare = new double[2 * count];
        double energy = double.PositiveInfinity;
        for (int step = 0; step < MostSteps; step++)
        {
            matrix.Clear();
            Array.Clear(gradient);
            energy = sheet.Assemble(control, unknown, gradient, matrix);
            foreach (int held in (ReadOnlySpan<int>)[0, 1, heldY])
            {
                // A very stiff spring to where it stands; it carries nothing, so its stiffness does not matter.
                matrix[held, held] *= 1e6;
                gradient[held] = 0;
            }

            if (!matrix.Solve(gradient))
            {
                return false;
            }

            double greatest = 0;
            for (int i = 0; i < gradient.Length; i++)
            {
                greatest = Math.Max(greatest, Math.Abs(gradient[i]));
            }

            double part = 1;
            Vec2[] from = [.. control];
            for (int half = 0; half < 12; half++, part *= 0.5)
            {
                for (int k = 0; k < control.Length; k++)
                {
                    control[k] =
                        from[k]
                        - (
                            part
                            * new Vec2(gradient[2 * unknown[k]], gradient[(2 * unknown[k]) + 1])
                        );
                }

                if (greatest < 1e-3 || sheet.Assemble(control, unknown, spare, null) <= energy)
                {
                    break;
                }
            }

            if (greatest < settledMm)
            {
                return true;
            }
        }

        return false;
    }
}
