using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>Chooses the joints of a layer: the fewest that any plank can have first; one more for those that need it only where that leaves no way.</summary>
internal static class LayerChoice
{
    /// <summary>So many ways of a plank are tried at the most, evenly spread over all that there are.</summary>
    private const int MostWays = 48;

    public static (WayChoice Choice, bool Thinned) Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        CancellationToken stop
    )
    {
        (WayChoice fewest, bool thinned) = With(layer, rules, 0, stop);
        if (fewest.Found)
        {
            return (fewest, thinned);
        }

        (WayChoice more, bool thinnedMore) = With(layer, rules, 1, stop);
        // Which plank has no place is said of the search with the most freedom.
        return (more, thinned || thinnedMore);
    }

    private static (WayChoice Choice, bool Thinned) With(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        int extra,
        CancellationToken stop
    )
    {
        bool thinned = false;
        var ways = ImmutableArray.CreateBuilder<ImmutableArray<JointWay>>(layer.Planks.Length);
        foreach (PlankCase plank in layer.Planks)
        {
            if (plank.LeastJoints is not { } least || least == 0)
            {
                // A plank that no place divides stays whole and is told of by itself.
                ways.Add([JointWay.Whole]);
                continue;
            }

            ImmutableArray<JointPlace> places =
            [
                .. plank.Places.Where(p => p.Keeps(rules)).Select(p => p.Place),
            ];
            ImmutableArray<JointWay> all =
            [
                .. Enumerable
                    .Range(least, extra + 1)
                    .Where(k => k <= PlankWays.MostJoints)
                    .SelectMany(k =>
                        PlankWays.Of(places, plank.Shape.From, plank.Shape.To, layer.Stock, k)
                    ),
            ];
            thinned |= all.Length > MostWays;
            ways.Add(PlankWays.Thinned(all, MostWays));
        }

        return (WaySearch.Least(ways.ToImmutable(), rules, stop), thinned);
    }
}
