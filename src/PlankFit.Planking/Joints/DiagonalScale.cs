using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// A measure along the planks common to a layer: each place on a plank's own line has the value of its square foot on the line of the plank before it. It is
/// followed at three places of every plank; between them a parabola serves, since neighbouring lines run nearly alike.
/// </summary>
internal sealed class DiagonalScale
{
    private const int FootSteps = 6;
    private const double FootMm = 1e-7;

    private readonly ImmutableArray<(double S, double Along)[]> nodes;

    private DiagonalScale(ImmutableArray<(double S, double Along)[]> nodes) => this.nodes = nodes;

    public static DiagonalScale Of(ImmutableArray<Plank> planks)
    {
        var all = ImmutableArray.CreateBuilder<(double S, double Along)[]>(planks.Length);
        for (int i = 0; i < planks.Length; i++)
        {
            (double low, double high) = Range(planks[i]);
            double[] at = [low, (low + high) / 2, high];
            all.Add([
                .. at.Select(s =>
                    (
                        s,
                        i == 0
                            ? s
                            : At(
                                all[i - 1],
                                Foot(planks[i - 1], planks[i].Map.Under(new(s, 0)).P, s)
                            )
                    )
                ),
            ]);
        }

        return new(all.ToImmutable());
    }

    /// <summary>The common measure of s on a plank, given by its place in the layer.</summary>
    public double Along(int plank, double s) => At(nodes[plank], s);

    /// <summary>s of the square foot of a point (starboard frame) on a plank's own line; past the plank's ends the line goes on straight.</summary>
    public static double Foot(Plank plank, Vec3 point, double guess)
    {
        (double low, double high) = Range(plank);
        double s = Math.Clamp(guess, low, high);
        for (int i = 0; i < FootSteps; i++)
        {
            Vec2 on = new(s, 0);
            double step = (point - plank.Map.Under(on).P).Dot(plank.Map.Grain(on));
            double next = Math.Clamp(s + step, low, high);
            if (next != s + step && (next == s || i == FootSteps - 1))
            {
                return s + step;
            }

            s = next;
            if (Math.Abs(step) < FootMm)
            {
                break;
            }
        }

        return s;
    }

    private static (double Low, double High) Range(Plank plank) =>
        (plank.FlatNet.Min(p => p.X), plank.FlatNet.Max(p => p.X));

    /// <summary>Lagrange through the three nodes, of the difference from s, which is nearly constant.</summary>
    private static double At((double S, double Along)[] n, double s)
    {
        double a = (s - n[1].S) * (s - n[2].S) / ((n[0].S - n[1].S) * (n[0].S - n[2].S)),
            b = (s - n[0].S) * (s - n[2].S) / ((n[1].S - n[0].S) * (n[1].S - n[2].S)),
            c = (s - n[0].S) * (s - n[1].S) / ((n[2].S - n[0].S) * (n[2].S - n[1].S));
        return s
            + (a * (n[0].Along - n[0].S))
            + (b * (n[1].Along - n[1].S))
            + (c * (n[2].Along - n[2].S));
    }
}
