using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>How far the developable through the rulings lies from the surface that the panel was cut from.</summary>
internal static class RulingDeparture
{
    public static (double Mm, Uv At) Greatest(SurfacePatch patch, IReadOnlyList<Ruling> rulings)
    {
        (double Mm, Uv At) greatest = (0, new(patch.UFrom, patch.Lower(patch.UFrom)));
        foreach (Ruling ruling in rulings)
        {
            Vec3 a = patch.OnLower(ruling.P).P,
                b = patch.OnUpper(ruling.Q).P;
            if (a.ChordTo(b) < 1)
            {
                continue;
            }

            for (int k = 1; k <= 3; k++)
            {
                double t = k / 4.0,
                    u = ruling.P + (t * (ruling.Q - ruling.P));
                (double mm, Uv at) = Distance(patch, a + (t * (b - a)), new(u, patch.V(u, t)));
                greatest = mm > greatest.Mm ? (mm, at) : greatest;
            }
        }

        return greatest;
    }

    private static (double Mm, Uv At) Distance(SurfacePatch patch, Vec3 x, Uv guess)
    {
        SurfacePoint s = patch.Surface.At(guess.U, guess.V);
        for (int k = 0; k < 8; k++)
        {
            Uv step = s.Rates(x - s.P);
            guess += step;
            s = patch.Surface.At(guess.U, guess.V);
            if ((step.U * s.Du).Norm + (step.V * s.Dv).Norm < 1e-6)
            {
                break;
            }
        }

        return (s.P.ChordTo(x), guess);
    }
}
