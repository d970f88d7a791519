using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>
/// The keel's inner face in profile, z0(x), and the faces of what is laid on it: each the parallel curve at its distance, since timber is as thick square to the
/// keel as it was planed. Faces are level athwart.
/// </summary>
internal sealed class KeelProfile
{
    private readonly CubicSpline inner;

    /// <summary>Places nearer than this to the one before say nothing, mm.</summary>
    private const double LeastStepMm = 1e-3;

    private KeelProfile(CubicSpline inner) => this.inner = inner;

    /// <summary>The inner face lies where the inner face of the whole planking meets the keel's side.</summary>
    /// <param name="innerFace">The planking's inner face.</param>
    /// <param name="keelV">The trace of the keel's side on it.</param>
    public static KeelProfile At(LoftedSurface hull, ISurface innerFace, KeelTrace keelV)
    {
        const int aBay = 8;
        IReadOnlyList<double> stations = hull.StationU;
        var x = new List<double>();
        var z = new List<double>();
        for (int bay = 0; bay + 1 < stations.Count; bay++)
        {
            int last = bay + 2 == stations.Count ? aBay : aBay - 1;
            for (int i = 0; i <= last; i++)
            {
                double u = stations[bay] + ((stations[bay + 1] - stations[bay]) * i / aBay);
                Vec3 p = innerFace.At(u, keelV.At(u)).P;

                // Where keel and chine run together forward, the inner face may fold back by a trifle: the profile is taken from where it runs on.
                if (x.Count == 0 || p.X > x[^1] + LeastStepMm)
                {
                    x.Add(p.X);
                    z.Add(p.Z);
                }
            }
        }

        return x.Count >= 4
            ? new(CubicSpline.Through([.. x], [.. z]))
            : throw new JobFaultException(
                "keel",
                "the keel's inner face cannot be followed along the hull: the keel rises too steeply for its layers, or the stack is too thick for its bend; look at the offsets of the keel line"
            );
    }

    /// <summary>Height at x of the face that lies so far out from the inner face, square to it, mm. Past the ends the profile runs straight on.</summary>
    public double HeightAt(double x, double distanceMm)
    {
        double foot = Foot(x, distanceMm);
        return Z(foot) - (distanceMm / Math.Sqrt(1 + (Slope(foot) * Slope(foot))));
    }

    /// <summary>The slope dz/dx of that face at x: parallel curves are parallel, so it is the inner face's at the foot.</summary>
    public double SlopeAt(double x, double distanceMm) => Slope(Foot(x, distanceMm));

    /// <summary>The x of the inner face under a place of the parallel curve.</summary>
    private double Foot(double x, double distanceMm)
    {
        double at = x;
        for (int i = 0; i < 30; i++)
        {
            double s = Slope(at),
                root = Math.Sqrt(1 + (s * s));
            double miss = at + (distanceMm * s / root) - x;
            at -= miss / (1 + (distanceMm * Bend(at) / (root * root * root)));
            if (Math.Abs(miss) < 1e-11)
            {
                break;
            }
        }

        return at;
    }

    private double Z(double x)
    {
        double held = Math.Clamp(x, inner.From, inner.To);
        return inner.At(held) + (inner.Slope(held) * (x - held));
    }

    private double Slope(double x) => inner.Slope(Math.Clamp(x, inner.From, inner.To));

    private double Bend(double x) => x < inner.From || x > inner.To ? 0 : inner.Bend(x);
}
