using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>What a person should know of a plan of cutting.</summary>
internal static class NestFindings
{
    public static ImmutableArray<Finding> Of(
        NestSpec spec,
        ImmutableArray<UnplacedPiece> unplaced
    ) =>
        [
            .. unplaced
                .GroupBy(u => u.Why)
                .Select(g => new Finding(
                    Severity.Warning,
                    string.Join(", ", g.Select(u => u.Piece.Id)),
                    $"{(g.Count() == 1 ? "is" : "are")} not in the plan of cutting: {g.Key}"
                )),
        ];
}
