using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Stock;

/// <summary>An end of a piece that is left long, to be trimmed in place: it may be sawn at another angle, so long as enough is left everywhere.</summary>
/// <param name="Net">The net end in the plank's own flat coordinates.</param>
/// <param name="Outward">Square to the net end's chord, away from the wood.</param>
/// <param name="LeastMm">What is to stand beyond the net end everywhere, square to its chord.</param>
public sealed record LongEnd(ImmutableArray<Vec2> Net, Vec2 Outward, double LeastMm)
{
    /// <summary>How long it is left as its plank is drawn: no less than <see cref="LeastMm"/>, which it may come down to at a corner where it is sawn at another angle.</summary>
    public double ByMm { get; init; } = LeastMm;

    /// <summary>The ends of a plank that are left long.</summary>
    public static IEnumerable<LongEnd> Of(Plank plank) =>
        from end in plank.Ends
        where end.Cut == EndCut.LeftLong && end.OverhangMm is not null && end.NetLine.Length > 1
        let way = (end.NetLine[^1] - end.NetLine[0]).Unit().Left()
        let middle = end.NetLine[end.NetLine.Length / 2]
        let centre = (1.0 / plank.FlatNet.Length)
            * plank.FlatNet.Aggregate(default(Vec2), (a, b) => a + b)
        select new LongEnd(
            end.NetLine,
            way.Dot(middle - centre) < 0 ? -1 * way : way,
            end.OverhangMm!.Value
        );

    /// <summary>What of an outline stands no further beyond the net end than it must; all of it where no more stands there.</summary>
    public ImmutableArray<Vec2> Least(ImmutableArray<Vec2> outline) =>
        LeastMm < ByMm ? HalfPlane.Of(outline, Outward, Net.Max(Outward.Dot) + LeastMm) : outline;

    /// <summary>How far beyond the net end a point lies, mm.</summary>
    public double Beyond(Vec2 p) => Outward.Dot(p) - Net.Max(Outward.Dot);
}

/// <summary>How an end that is left long comes to be sawn.</summary>
/// <param name="Far">Of its two ends as it lies, the one that looks along the board's grain; else the one that looks back.</param>
/// <param name="LeastMm">What stands beyond the net end, from this to <paramref name="MostMm"/> along it.</param>
public sealed record SawnLong(bool Far, double LeastMm, double MostMm);
