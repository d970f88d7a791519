using MathNet.Numerics;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Hulls;

/// <summary>Where a panel could not be followed, told in stations and lines of the table, and what to do about it.</summary>
internal sealed class LostPlace(HullSurface hull, Panel panel)
{
    /// <summary>What a search for a line on the bottom may end in.</summary>
    public static bool Is(Exception e) => e is GeodesicException or NonConvergenceException;

    /// <summary>Place and reason, as the middle of a sentence.</summary>
    public string Told(Exception e) =>
        e is GeodesicException lost
            ? $"{Of(lost.At)}, {lost.Message}"
            : $"a crossing of two lines of the {panel.Name} is not found";

    /// <summary>What to look at and what to change, as the end of a sentence.</summary>
    public string Remedy(Exception e) =>
        e is GeodesicException lost
            ? $"look at '{panel.Lower}' and '{panel.Upper}' {Between(lost.At.U)} with `plankfit check`{(IsInside(lost.At) ? "" : $", from which the {panel.Name} is carried on there past its own edge")}; if they are right, give narrower stock, another `angle` or `master`, or one more station there"
            : $"look at '{panel.Lower}' and '{panel.Upper}' with `plankfit check`; if they are right, give narrower stock, another `angle` or `master`";

    /// <summary>A place of the panel or past its edges.</summary>
    public string Of(Uv at)
    {
        string across = Part(at) switch
        {
            < 0 => $"{(panel.HasKeel ? "inboard of" : "below")} '{panel.Lower}'",
            <= 0.1 => $"close to '{panel.Lower}'",
            < 0.9 => $"between '{panel.Lower}' and '{panel.Upper}'",
            <= 1 => $"close to '{panel.Upper}'",
            _ => $"{(panel.HasKeel ? "outboard of" : "above")} '{panel.Upper}'",
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

    /// <summary>0 at the lower edge, 1 at the upper one; forward of a stem where both meet, as at it.</summary>
    private double Part(Uv at)
    {
        double upper = hull.Surface.UpperV(at.U);
        return upper > 0 ? at.V / upper : Math.Sign(at.V);
    }
}
