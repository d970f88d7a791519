using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>
/// A mix that is thinned and has the clocks of the mix unthinned: no batch of it is timed, and nothing that comes after it, since nobody knows when it has cured.
/// </summary>
internal static class ThinnedMix
{
    /// <summary>From a layer on that is still to be laid with it.</summary>
    /// <returns>Null where its clocks hold, or all of it is on.</returns>
    public static (Finding Why, ImmutableArray<string> Not)? Stops(
        AmountPlanner amounts,
        int at,
        Mix mix
    ) =>
        mix.IsTimed || StillToLay.IsDone(amounts, at)
            ? null
            : Told(
                amounts,
                mix,
                StillToLay.From(amounts, at),
                "are to be laid with it or come after it"
            );

    /// <summary>After a layer that is on with it.</summary>
    /// <returns>Null where its clocks hold, or nothing is left to do.</returns>
    public static (Finding Why, ImmutableArray<string> Not)? StopsAfter(
        AmountPlanner amounts,
        int at,
        Mix mix
    ) =>
        mix.IsTimed || StillToLay.From(amounts, at + 1) is not { IsEmpty: false } after
            ? null
            : Told(
                amounts,
                mix,
                after,
                $"come after {amounts.Planked.Job.Layers[at].Name}, which is on with it"
            );

    private static (Finding, ImmutableArray<string>) Told(
        AmountPlanner amounts,
        Mix mix,
        ImmutableArray<string> not,
        string why
    )
    {
        string table = mix == amounts.Spec.Resin ? "resin" : "glue";
        return (
            new(
                Severity.Warning,
                Subject.Of($"[{table}]") with
                {
                    Key = $"{table}.thinned-percent",
                },
                $"it is thinned, and pot, film and the rest are of the mix unthinned, which do not hold for it: {string.Join("; ", not)} {why} and have no batch and no hour. Take the clocks of the thinned mix from its data sheet, or try it in a cup at two temperatures, write them in place of these and say clocks-are-for = \"thinned\"; or leave thinned-percent out"
            )
            {
                Rank = Rank.Know,
            },
            not
        );
    }
}
