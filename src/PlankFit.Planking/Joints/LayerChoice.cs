using System.Collections.Immutable;

namespace PlankFit.Planking.Joints;

/// <summary>The joints chosen for a layer.</summary>
/// <param name="LeastPieces">Proved, of all planks: on the places tried, and with what lies below as it is, there is no way with fewer.</param>
internal sealed record LayerChoice(SchemeChoice Choice, int LeastPieces)
{
    /// <summary>So many ways of a plank are compared for their waste at the most, evenly spread over all that there are.</summary>
    private const int MostWays = 48;

    /// <summary>
    /// The fewest pieces, then the least waste. Where every plank can have the fewest that it could have by itself no more is to be proved; else the fewest are
    /// searched for, with proof.
    /// </summary>
    public static LayerChoice Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        long effort,
        CancellationToken stop
    )
    {
        ImmutableArray<PlankRoom> planks = [.. layer.Planks.Select(p => p.Room(rules))];
        int?[] least =
        [
            .. planks.Select(p => p.IsDivided ? PlankSchemes.LeastJoints(p, layer.Stock) : 0),
        ];
        SchemeChoice LeastWaste(int extra, ImmutableArray<JointScheme> known) =>
            Compared(planks, least, layer.Stock, rules, extra, known, stop);
        int leasts = least.Sum(l => (l ?? 0) + 1);
        SchemeChoice quick = LeastWaste(0, []);
        if (quick.Found)
        {
            return new(quick, leasts);
        }

        FewestChoice fewest = FewestJoints.Of(planks, layer.Stock, rules, effort, stop);
        int pieces = fewest.LeastJoints + planks.Length;
        if (fewest.Stuck is { } stuck)
        {
            return new(new([], stuck, true), pieces);
        }

        if (fewest.Ways.IsEmpty)
        {
            return new(LeastWaste(1, []) with { Complete = false }, pieces);
        }

        var known = new SchemeChoice(fewest.Ways, null, false);
        int extra = fewest.Ways.Select((w, i) => w.Joints.Length - (least[i] ?? 0)).Max();
        SchemeChoice less = LeastWaste(extra, fewest.Ways);
        bool better =
            less.Found && (less.Pieces, less.WasteMm).CompareTo((known.Pieces, known.WasteMm)) <= 0;
        // Ways with more joints, for the sake of less waste, were not compared.
        return new((better ? less : known) with { Complete = false }, pieces);
    }

    /// <summary>By dynamic programming over some of the ways of each plank, those known among them.</summary>
    private static SchemeChoice Compared(
        ImmutableArray<PlankRoom> planks,
        int?[] least,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        int extra,
        ImmutableArray<JointScheme> known,
        CancellationToken stop
    )
    {
        PlankOptions[] options =
        [
            .. planks.Select(
                (p, i) =>
                    least[i] is { } joints
                        ? PlankOptions.Of(
                            p,
                            stock,
                            joints,
                            extra,
                            MostWays,
                            known.IsEmpty ? null : known[i]
                        )
                        : new([], true)
            ),
        ];
        SchemeChoice choice = SchemeSearch.Least([.. options.Select(o => o.Ways)], rules, stop);
        return choice with { Complete = choice.Complete && options.All(o => o.IsAll) };
    }
}
