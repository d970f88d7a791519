using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>Decides whether a panel is developable.</summary>
public static class DevelopmentTest
{
    private const int Sections = 80;

    public static DevelopmentVerdict Judge(
        SurfacePatch patch,
        RulingSet rulings,
        DevelopmentTolerances tolerances,
        double gaussTurn
    )
    {
        (double turn, double at) = SectionWarp(patch);
        bool developable =
            rulings.AllFound
            && rulings.Worst.WarpDegrees <= tolerances.WarpDegrees
            && rulings.DepartureMm <= tolerances.DepartureMm;
        return new(
            developable,
            new(rulings.FoundShare, rulings.Worst.WarpDegrees),
            new(rulings.DepartureMm, rulings.DepartureAt),
            new(turn * 180 / Math.PI, at),
            gaussTurn * 180 / Math.PI,
            tolerances
        );
    }

    /// <summary>The greatest turn of the surface's normal between the two ends of a section, rad, and its u.</summary>
    public static (double Turn, double AtU) SectionWarp(SurfacePatch patch)
    {
        (double Turn, double AtU) worst = (0, patch.UFrom);
        for (int i = 0; i <= Sections; i++)
        {
            double u = patch.UFrom + (patch.URange * i / Sections);
            Vec3 a = patch.OnLower(u).Normal,
                b = patch.OnUpper(u).Normal;
            double turn = Math.Atan2(a.Cross(b).Norm, a.Dot(b));
            worst = turn > worst.Turn ? (turn, u) : worst;
        }

        return worst;
    }
}
