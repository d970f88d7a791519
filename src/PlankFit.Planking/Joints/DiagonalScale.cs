using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>
/// A measure along the planks common to a layer: that of each plank's own line, its zero set so that the middle of the line and its square foot on the line of
/// the plank before have the same value. Neighbouring lines run so nearly alike that one place is enough: away from the middle the measures part by K w²/2 of
/// the distance (2 in 10 000 where the bottom is as warped as the demo launch), and nothing adds up from plank to plank.
/// </summary>
internal sealed class DiagonalScale
{
    private const int FootSteps = 6;
    private const double FootMm = 1e-7;

    private readonly ImmutableArray<double> zeros;

    private DiagonalScale(ImmutableArray<double> zeros) => this.zeros = zeros;

    public static DiagonalScale Of(ImmutableArray<Plank> planks)
    {
        ImmutableArray<double>.Builder zeros = ImmutableArray.CreateBuilder<double>(planks.Length);
        for (int i = 0; i < planks.Length; i++)
        {
            if (i == 0)
            {
                zeros.Add(0);
                continue;
            }

            (double low, double high) = Range(planks[i]);
            double middle = (low + high) / 2,
                foot = Foot(planks[i - 1], planks[i].Map.Under(new(middle, 0)).P, middle);
            zeros.Add(zeros[i - 1] + foot - middle);
        }

        return new(zeros.ToImmutable());
    }

    /// <summary>The common measure of s on a plank, given by its place in the layer.</summary>
    public double Along(int plank, double s) => zeros[plank] + s;

    /// <summary>s of the square foot of a point (starboard frame) on a plank's own line; past the plank's ends the line goes on straight.</summary>
    private static double Foot(Plank plank, Vec3 point, double guess)
    {
        (double low, double high) = Range(plank);
        double s = Math.Clamp(guess, low, high);
        for (int i = 0; i < FootSteps; i++)
        {
            Vec2 on = new(s, 0);
            double step = (point - plank.Map.Under(on).P).Dot(plank.Map.Grain(on)),
                next = Math.Clamp(s + step, low, high);
            if (next == s && Math.Abs(step) > FootMm)
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
}
