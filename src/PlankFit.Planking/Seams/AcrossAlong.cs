using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Splines;

namespace PlankFit.Planking.Seams;

/// <summary>Distance across as a function of distance along a line.</summary>
internal static class AcrossAlong
{
    /// <exception cref="GeodesicException">Where the curve turns back on the line: the surface folds there.</exception>
    public static CubicSpline Through(Geodesic line, double[] s, double[] t)
    {
        for (int i = 1; i < s.Length; i++)
        {
            if (!(s[i] > s[i - 1]))
            {
                throw new GeodesicException(
                    "two neighbouring seams do not run alike: the surface folds or bends too sharply",
                    line.UvAt(Math.Clamp(s[i], line.From, line.To))
                );
            }
        }

        return CubicSpline.Through(s, t);
    }
}
