using System.Collections.Immutable;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Export.Sheathing;

/// <summary>A stretch of a roll between two cuts straight across.</summary>
internal sealed record RollStretch(
    RollPlan Plan,
    CutRoll Roll,
    double FromMm,
    double ToMm,
    ImmutableArray<PieceOnRoll> Pieces
)
{
    /// <summary>Pieces that reach over each other's ends stay together; stretches are put in one row while they are no longer than the longest.</summary>
    public static IEnumerable<RollStretch> Of(RollPlan plan, CutRoll roll)
    {
        const double apartMm = 1e-6;
        List<(double From, double To, List<PieceOnRoll> Has)> stretches = [];
        foreach (PieceOnRoll piece in roll.Pieces.OrderBy(p => p.FromMm))
        {
            if (stretches.Count > 0 && piece.FromMm < stretches[^1].To - apartMm)
            {
                (double f, double t, List<PieceOnRoll> has) = stretches[^1];
                has.Add(piece);
                stretches[^1] = (f, Math.Max(t, piece.ToMm), has);
            }
            else
            {
                stretches.Add((piece.FromMm, piece.ToMm, [piece]));
            }
        }

        double longest = stretches.Max(s => s.To - s.From);
        List<(double From, double To, List<PieceOnRoll> Has)> now = [];
        foreach ((double From, double To, List<PieceOnRoll> Has) s in stretches)
        {
            if (now.Count > 0 && s.To - now[0].From > longest + apartMm)
            {
                yield return Made();
                now.Clear();
            }

            now.Add(s);
        }

        if (now.Count > 0)
        {
            yield return Made();
        }

        RollStretch Made() =>
            new(plan, roll, now[0].From, now[^1].To, [.. now.SelectMany(s => s.Has)]);
    }
}
