using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>What a person should know of a plan of cutting.</summary>
internal static class NestFindings
{
    public static ImmutableArray<Finding> Of(
        ImmutableArray<UnplacedPiece> unplaced,
        ImmutableArray<SawPiece> apart
    ) =>
        [
            .. unplaced
                .GroupBy(u => u.Why)
                .Select(g => new Finding(
                    Severity.Warning,
                    string.Join(", ", g.Select(u => u.Piece.Id)),
                    $"{(g.Count() == 1 ? "is" : "are")} not in the plan of cutting: {g.Key}"
                )
                {
                    Rank = Rank.BuyFirst,
                }),
            .. apart.IsEmpty
                ? (Finding[])[]
                :
                [
                    new(
                        Severity.Warning,
                        string.Join(", ", apart.Select(p => p.Id)),
                        "no board is clear for both of a pair, port and starboard, one behind the other: these come from whatever boards suit them"
                    )
                    {
                        Rank = Rank.Know,
                    },
                ],
        ];
}
