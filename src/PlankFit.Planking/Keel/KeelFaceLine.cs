using MathNet.Numerics.Integration;

namespace PlankFit.Planking.Keel;

/// <summary>The outer face of a keel layer in profile: how far it lies from the keel's inner face at x, and so its height, slope and length.</summary>
internal sealed class KeelFaceLine(KeelProfile profile, Func<double, double> distanceMm)
{
    /// <summary>Half the step of the difference that gives the slope of the cloth's ramp at a lap's end, mm.</summary>
    private const double StepMm = 0.5;

    public double HeightAt(double x) => profile.HeightAt(x, distanceMm(x));

    public double SlopeAt(double x)
    {
        double d = distanceMm(x),
            rate = (distanceMm(x + StepMm) - distanceMm(x - StepMm)) / (2 * StepMm);
        double slope = profile.SlopeAt(x, d);
        return rate == 0 ? slope : slope - (rate * Math.Sqrt(1 + (slope * slope)));
    }

    /// <summary>Length of the profile between two places, mm, by Gauss-Legendre; better than 0.001 mm on keels of boats. Negative where it runs forward.</summary>
    public double AlongMm(double from, double to)
    {
        int bays = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / 400));
        double sum = 0;
        for (int i = 0; i < bays; i++)
        {
            double a = from + ((to - from) * i / bays),
                b = from + ((to - from) * (i + 1) / bays);
            sum += GaussLegendreRule.Integrate(
                t => Math.Sqrt(1 + (SlopeAt(t) * SlopeAt(t))),
                a,
                b,
                8
            );
        }

        return sum;
    }
}
