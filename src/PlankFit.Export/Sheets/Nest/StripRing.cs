using PlankFit.Geometry;

namespace PlankFit.Export.Sheets;

/// <summary>The ring with a cut's number.</summary>
/// <param name="Foot">The place on the cut that it belongs to, where it stands beside it; null where it stands on it.</param>
internal sealed record StripRing(Vec2 At, double RadiusMm, Vec2? Foot)
{
    /// <summary>So much longer may a line to a cut's middle be than one to its very end, where other cuts have their places too.</summary>
    private const double EndMm = 4;

    /// <summary>How far along the cut its foot lies from the middle, as a part of its length.</summary>
    public double OffMiddle { get; init; }

    /// <summary>It found no place, and stands on its cut whatever is there.</summary>
    public bool IsForced { get; init; }

    /// <summary>The less, the better the place.</summary>
    public double CostMm => LeaderMm + (2 * EndMm * OffMiddle);

    /// <summary>Where the line to the cut leaves the ring.</summary>
    public Vec2 Edge => Foot is { } foot ? At + (RadiusMm * (foot - At).Unit()) : At;

    private double LeaderMm => Foot is { } foot ? At.ChordTo(foot) : 0;
}

/// <summary>Places to try around a point, the near ones close together.</summary>
internal static class StripPlaces
{
    private const int Ways = 36;
    private const double FurthestMm = 45;

    public static IEnumerable<Vec2> Around(Vec2 middle, double leastMm)
    {
        for (double d = leastMm; d < FurthestMm; d += Math.Max(0.5, 0.1 * d))
        {
            for (int i = 0; i < Ways; i++)
            {
                (double sin, double cos) = Math.SinCos(2 * Math.PI * i / Ways);
                yield return middle + (d * new Vec2(cos, sin));
            }
        }
    }
}
