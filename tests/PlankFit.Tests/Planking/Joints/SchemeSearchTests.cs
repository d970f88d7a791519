using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Joints;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>The search against brute force on small jobs by chance. The rules are written out once more here, apart from the planner's.</summary>
public sealed class SchemeSearchTests
{
    private sealed record SmallJob(
        ImmutableArray<ImmutableArray<JointScheme>> Ways,
        double? NextMm,
        double? OneBetweenMm,
        int Between,
        double? AbreastMm
    );

    private static readonly Gen<JointPlace> Place = Gen.Select(
            Gen.Int[0, 20],
            Gen.Int[0, 3],
            Gen.Int[0, 10]
        )
        .Select(
            (at, backing, x) =>
                new JointPlace(
                    100 * at,
                    90,
                    100 * at,
                    100 * at,
                    backing == 0 ? "block" : $"stringer {backing}",
                    backing > 0
                )
                {
                    XMm = 60 * x,
                }
        );

    private static readonly Gen<JointScheme> Way = Gen.Select(Place.Array[0, 2], Gen.Int[0, 40])
        .Select((joints, waste) => new JointScheme([.. joints], waste));

    private static readonly Gen<SmallJob> Job = Gen.Select(
            Way.Array[1, 4].Array[1, 6],
            Gen.Int[0, 9],
            Gen.Int[0, 9],
            Gen.Int[0, 4],
            Gen.Int[0, 2]
        )
        .Select(
            (ways, next, between, count, abreast) =>
                new SmallJob(
                    [.. ways.Select(w => w.ToImmutableArray())],
                    next == 0 ? null : 100 * next,
                    between == 0 ? null : 100 * between,
                    count,
                    abreast == 0 ? null : 70 * abreast
                )
        );

    [Fact]
    public void TheSearchFindsWhatBruteForceFinds() =>
        Job.Sample(
            job =>
            {
                ImmutableArray<JointRule> rules =
                [
                    new(JointRuleKind.NextPlank, job.NextMm, null, "test"),
                    new(JointRuleKind.OneBetween, job.OneBetweenMm, null, "test"),
                    new(JointRuleKind.SameBacking, job.AbreastMm, job.Between, "test"),
                ];
                SchemeChoice choice = SchemeSearch.Least(
                    job.Ways,
                    [.. rules.Where(r => !r.IsNone)],
                    TestContext.Current.CancellationToken
                );
                (int Pieces, double Waste)? best = Best(job, [], 0, 0);
                Assert.True(choice.Complete);
                Assert.Equal(best is not null, choice.Found);
                if (best is { } found)
                {
                    Assert.Equal(found.Pieces, choice.Pieces);
                    Assert.Equal(found.Waste, choice.WasteMm, 6);
                    Assert.True(Stands(job, choice.Ways));
                }
                else
                {
                    // The planks up to the one named have no way together, those before it have.
                    int stuck = choice.Stuck!.Value;
                    Assert.Null(Best(job with { Ways = job.Ways[..(stuck + 1)] }, [], 0, 0));
                    Assert.NotNull(Best(job with { Ways = job.Ways[..stuck] }, [], 0, 0));
                }
            },
            iter: 4000,
            seed: "0000KzqXv3Y5"
        );

    private static (int Pieces, double Waste)? Best(
        SmallJob job,
        ImmutableArray<JointScheme> taken,
        int pieces,
        double waste
    )
    {
        if (taken.Length == job.Ways.Length)
        {
            return Stands(job, taken) ? (pieces, waste) : null;
        }

        (int, double)? best = null;
        foreach (JointScheme way in job.Ways[taken.Length])
        {
            (int, double)? here = Best(
                job,
                taken.Add(way),
                pieces + way.Joints.Length + 1,
                waste + way.WasteMm
            );
            if (here is { } h && (best is not { } b || h.CompareTo(b) < 0))
            {
                best = h;
            }
        }

        return best;
    }

    private static bool Stands(SmallJob job, ImmutableArray<JointScheme> ways)
    {
        for (int i = 0; i < ways.Length; i++)
        {
            for (int j = i + 1; j < ways.Length; j++)
            {
                foreach (JointPlace p in ways[i].Joints)
                {
                    foreach (JointPlace q in ways[j].Joints)
                    {
                        double apart = Math.Abs(p.AtMm - q.AtMm);
                        bool same =
                            p.Backing!.StartsWith("str", StringComparison.Ordinal)
                            && q.Backing!.StartsWith("str", StringComparison.Ordinal)
                                ? p.Backing == q.Backing
                                : Math.Abs(p.XMm - q.XMm) < job.AbreastMm;
                        if (
                            (j == i + 1 && apart < job.NextMm)
                            || (j == i + 2 && apart < job.OneBetweenMm)
                            || (j - i - 1 < job.Between && same)
                        )
                        {
                            return false;
                        }
                    }
                }
            }
        }

        return true;
    }
}
