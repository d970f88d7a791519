using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Stock;

/// <summary>The ring with a cut's number.</summary>
/// <param name="Foot">The place on the cut that it belongs to, where it stands beside it; null where it stands on it.</param>
internal sealed record StripRing(Vec2 At, double RadiusMm, Vec2? Foot)
{
    /// <summary>Where the line to the cut leaves the ring.</summary>
    public Vec2 Edge => Foot is { } foot ? At + (RadiusMm * (foot - At).Unit()) : At;
}

/// <summary>Places to try around a point, the near ones close together.</summary>
internal static class StripPlaces
{
    private const int Ways = 36;

    /// <summary>So much longer may a line to a cut's middle be than one to its very end, where other cuts have their places too.</summary>
    private const double EndMm = 4;
    private static readonly Vec2[] Directions =
    [
        .. Enumerable
            .Range(0, Ways)
            .Select(i => Math.SinCos(2 * Math.PI * i / Ways))
            .Select(a => new Vec2(a.Cos, a.Sin)),
    ];

    public static IEnumerable<Vec2> Around(Vec2 middle, double leastMm, double furthestMm) =>
        Distances(leastMm, furthestMm).SelectMany(d => OnCircle(middle, d));

    /// <summary>Rings beside a cut, the cheapest first, so that the first that finds room is the best and no more are tried.</summary>
    /// <param name="feet">Places on the cut, as parts of its length.</param>
    public static IEnumerable<StripRing> Beside(
        Vec2 from,
        Vec2 to,
        double radiusMm,
        IReadOnlyList<double> feet,
        double furthestMm
    )
    {
        double[] distances = [.. Distances(radiusMm + 0.8, furthestMm)];
        return feet.SelectMany(
                t => distances,
                (t, d) => (Foot: t, Off: d, Cost: d + (2 * EndMm * Math.Abs(t - 0.5)))
            )
            .OrderBy(c => c.Cost)
            .SelectMany(c =>
            {
                Vec2 foot = from + (c.Foot * (to - from));
                return OnCircle(foot, c.Off).Select(at => new StripRing(at, radiusMm, foot));
            });
    }

    private static IEnumerable<double> Distances(double leastMm, double furthestMm)
    {
        for (double d = leastMm; d < furthestMm; d += Math.Max(0.5, 0.1 * d))
        {
            yield return d;
        }
    }

    private static IEnumerable<Vec2> OnCircle(Vec2 middle, double radiusMm) =>
        Directions.Select(u => middle + (radiusMm * u));
}
