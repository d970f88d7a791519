using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>Planks that are down, it is said, and that the bottom does not have, and coats that nobody asked for: another hull's, a slip of the pen, or of before the planks were laid anew.</summary>
internal static class ProgressFindings
{
    /// <param name="coated">The outermost cloth where its weave is filled; null where none is.</param>
    /// <param name="most">In so many coats.</param>
    /// <param name="finishes">Names of the stages of fairing and fillets.</param>
    /// <returns>What is done of this job, the hours of which are gone by, and what is told of the rest.</returns>
    public static (GlueProgress Known, ImmutableArray<Finding> Findings) Of(
        GlueProgress done,
        Planked planked,
        string? coated,
        int most,
        ImmutableArray<string> finishes
    )
    {
        var planks = planked
            .Layers.OfType<PlankLayerPlan>()
            .SelectMany(l => l.Starboard.Concat(l.Port))
            .Select(p => p.Id)
            .ToHashSet();
        bool IsStrange(GlueDone row) => row.Plank is { } plank && !planks.Contains(plank);
        bool IsNoFinish(GlueDone row) =>
            row.Finish is { } finish
            && !finishes.Contains(finish, StringComparer.OrdinalIgnoreCase);
        bool IsNoCoat(GlueDone row) => row.Coat > 0 && (row.Cloth != coated || row.Coat > most);
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        PlankId[] strange = [.. done.Rows.Where(IsStrange).Select(r => r.Plank!.Value)];
        if (strange.Length > 0)
        {
            findings.Add(
                Told(
                    done,
                    $"{PlankRuns.Of(strange)}: down by it, and the bottom has no {(strange.Length == 1 ? "such plank" : "such planks")}"
                )
            );
        }

        string[] coats =
        [
            .. done
                .Rows.Where(IsNoCoat)
                .Select(c => FormattableString.Invariant($"{c.Cloth} coat {c.Coat}"))
                .Distinct(),
        ];
        if (coats.Length > 0)
        {
            findings.Add(
                Told(
                    done,
                    $"{string.Join(", ", coats)}: on by it, and {(coated is null ? "the job asks for no coats" : FormattableString.Invariant($"{coated} has {most}"))}"
                )
            );
        }

        string[] strangers = [.. done.Rows.Where(IsNoFinish).Select(r => r.Finish!).Distinct()];
        if (strangers.Length > 0)
        {
            findings.Add(
                Told(
                    done,
                    $"{string.Join(", ", strangers)}: laid by it, and the job {(finishes.IsEmpty ? "asks for neither fairing nor fillets" : $"has {string.Join(", ", finishes)}")}"
                )
            );
        }

        return (
            done with
            {
                Rows = [.. done.Rows.Where(r => !IsStrange(r) && !IsNoCoat(r) && !IsNoFinish(r))],
            },
            findings.ToImmutable()
        );
    }

    /// <summary>Planks that are not down by it, and cloth, a coat or fairing over them is on their side: they are planned, since nobody can tell which of the two is the slip.</summary>
    /// <param name="all">With what lies under what is on.</param>
    public static IEnumerable<Finding> PlanksUnder(GlueProgress all, Planked planked)
    {
        for (int i = 0; i < planked.Layers.Length; i++)
        {
            if (planked.Layers[i] is not PlankLayerPlan skin)
            {
                continue;
            }

            string[] over = [.. planked.Layers.Skip(i).Select(l => l.Spec.Name)];
            PlankId[] under =
            [
                .. AmountPlanner
                    .BothSides.Where(s =>
                        all.FinishedAt(FairingSpec.Stage, s) is not null
                        || all.Rows.Any(r => r.Side == s && r.Cloth is { } c && over.Contains(c))
                    )
                    .SelectMany(s => skin.On(s))
                    .Where(p => !p.IsFitted && all.DownAt(p.Id) is null)
                    .Select(p => p.Id),
            ];
            if (under.Length > 0)
            {
                yield return new(
                    Severity.Warning,
                    all.Source,
                    $"{PlankRuns.Of(under)}: not down by it, and what lies over {(under.Length == 1 ? "it" : "them")} is on. {(under.Length == 1 ? "It is" : "They are")} planned to be glued all the same: write {(under.Length == 1 ? "its row" : "their rows")} into {GlueProgress.UsualSource} before you go by this plan"
                )
                {
                    Rank = Rank.SawAfter,
                };
            }
        }
    }

    private static Finding Told(GlueProgress done, string what) =>
        new(
            Severity.Warning,
            done.Source,
            $"{what}. What is planned again takes no heed of it, nor of its hour: look whether another is meant"
        )
        {
            Rank = Rank.SawAfter,
        };
}
