using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>One ordinate for drawing an edge that is not straight: so far along the straight line between its ends, so far out from it.</summary>
/// <param name="AlongMm">From the edge's inboard end.</param>
/// <param name="OutMm">Positive where the wood stands out beyond the line (round), negative where it falls inside (hollow).</param>
public readonly record struct EdgeOffset(double AlongMm, double OutMm)
{
    /// <summary>Metric ordinates every 250 mm, others every 10 in.</summary>
    public static double SpacingMm(LengthUnit unit) => LengthUnits.IsMetric(unit) ? 250 : 254;

    /// <param name="left">True where the wood lies to the right of the edge going outboard, so that out is to the left.</param>
    public static ImmutableArray<EdgeOffset> Of(
        ImmutableArray<Vec2> edge,
        bool left,
        double spacingMm
    )
    {
        Vec2 chord = edge[^1] - edge[0],
            along = chord.Unit();
        ImmutableArray<Vec2> turned =
        [
            .. edge.Select(p => new Vec2(
                along.Dot(p - edge[0]),
                (left ? 1 : -1) * along.Cross(p - edge[0])
            )),
        ];
        ImmutableArray<EdgeOffset>.Builder found = ImmutableArray.CreateBuilder<EdgeOffset>();
        for (double at = spacingMm; at < chord.Norm - (spacingMm / 5); at += spacingMm)
        {
            if (Segments.YAt(turned, at) is { } off)
            {
                found.Add(new(at, off));
            }
        }

        return found.ToImmutable();
    }

    /// <summary>The ordinates of one of a plank's edges; the wood of the edge with the greater n lies to its right.</summary>
    public static ImmutableArray<EdgeOffset> Of(Plank plank, PlankEdge edge, LengthUnit unit)
    {
        bool upper = ReferenceEquals(edge, plank.AfterEdge) == (plank.Side == Side.Starboard);
        return Of(edge.Flat, upper, SpacingMm(unit));
    }
}
