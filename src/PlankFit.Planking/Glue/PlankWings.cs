using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>What gluing one plank down takes.</summary>
internal readonly record struct PlankShare(
    PlankId Id,
    double Grams,
    double SpreadMinutes,
    double FastenMinutes,
    int Fastenings
);

/// <summary>Planks that go down one after the other, outwards from the master.</summary>
/// <param name="Planks">The first is the master, or its neighbour where another wing has the master.</param>
/// <param name="HasMaster">It begins with the master, and the other wing of its side waits for that.</param>
internal sealed record PlankWing(Side Side, ImmutableArray<PlankShare> Planks, bool HasMaster)
{
    /// <summary>Both wings of a layer's both sides, of the planks that are still to be glued; the longer of a side has the master.</summary>
    public static ImmutableArray<PlankWing> Of(
        PlankLayerPlan layer,
        Func<Plank, PlankShare> share,
        Func<PlankId, bool> isDown
    ) =>
        [
            .. new[] { Side.Starboard, Side.Port }.SelectMany(side =>
                OfSide(layer, side, share, isDown)
            ),
        ];

    private static IEnumerable<PlankWing> OfSide(
        PlankLayerPlan layer,
        Side side,
        Func<Plank, PlankShare> share,
        Func<PlankId, bool> isDown
    )
    {
        int master = layer.Of(side).MasterNumber;
        Plank[] left = [.. layer.On(side).Where(p => !isDown(p.Id))];
        Plank[] before = [.. left.Where(p => p.Number < master).OrderByDescending(p => p.Number)],
            after = [.. left.Where(p => p.Number > master).OrderBy(p => p.Number)],
            first = [.. left.Where(p => p.Number == master)];
        (Plank[] longer, Plank[] shorter) =
            before.Length > after.Length ? (before, after) : (after, before);
        if (first.Length + longer.Length > 0)
        {
            yield return new(side, [.. first.Concat(longer).Select(share)], first.Length > 0);
        }

        if (shorter.Length > 0)
        {
            yield return new(side, [.. shorter.Select(share)], false);
        }
    }
}
