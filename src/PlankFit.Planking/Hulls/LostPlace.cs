using MathNet.Numerics;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Hulls;

/// <summary>Where the bottom could not be followed, told in stations and lines of the table, and what to do about it.</summary>
internal sealed class LostPlace(HullSurface hull, HullSpec spec)
{
    /// <summary>What a search for a line on the bottom may end in.</summary>
    public static bool Is(Exception e) => e is GeodesicException or NonConvergenceException;

    /// <summary>Place and reason, as the middle of a sentence.</summary>
    public string Told(Exception e) =>
        e is GeodesicException lost
            ? $"{Of(lost.At)}, {lost.Message}"
            : "a crossing of two lines of the bottom is not found";

    /// <summary>What to look at and what to change, as the end of a sentence.</summary>
    public string Remedy(Exception e) =>
        e is GeodesicException lost
            ? $"look at '{spec.Keel}' and '{spec.Chine}' {Between(lost.At.U)} with `plankfit check`{(IsInside(lost.At) ? "" : ", from which the bottom is carried on there past its own edge")}; if they are right, give narrower stock, another `angle` or `master`, or one more station there"
            : $"look at '{spec.Keel}' and '{spec.Chine}' with `plankfit check`; if they are right, give narrower stock, another `angle` or `master`";

    /// <summary>A place of the bottom or past its edges.</summary>
    public string Of(Uv at)
    {
        string across = Part(at) switch
        {
            < 0 => $"inboard of '{spec.Keel}'",
            <= 0.1 => $"close to '{spec.Keel}'",
            < 0.9 => $"between '{spec.Keel}' and '{spec.Chine}'",
            <= 1 => $"close to '{spec.Chine}'",
            _ => $"outboard of '{spec.Chine}'",
        };
        return $"{Along(at.U)}, {across}";
    }

    private string Along(double u)
    {
        LoftedSurface surface = hull.Surface;
        return u < surface.UFrom - 1 ? $"forward of station {hull.Stations[0].Name}"
            : u > surface.UTo + 1 ? $"abaft station {hull.Stations[^1].Name}"
            : Between(u);
    }

    private string Between(double u)
    {
        int bay = Math.Clamp(hull.Stations.Count(s => s.U <= u) - 1, 0, hull.Stations.Length - 2);
        return $"between stations {hull.Stations[bay].Name} and {hull.Stations[bay + 1].Name}";
    }

    private bool IsInside(Uv at) =>
        Part(at) is >= 0 and <= 1 && at.U >= hull.Surface.UFrom && at.U <= hull.Surface.UTo;

    /// <summary>0 at the keel line, 1 at the chine; forward of a stem where both meet, as at it.</summary>
    private double Part(Uv at)
    {
        double chine = hull.Surface.ChineV(at.U);
        return chine > 0 ? at.V / chine : Math.Sign(at.V);
    }
}
