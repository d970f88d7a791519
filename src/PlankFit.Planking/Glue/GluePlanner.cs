using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Planking.Glue;

/// <summary>Amounts, batches, sessions and hold points of a bottom.</summary>
internal static class GluePlanner
{
    /// <param name="holds">What planks are held with.</param>
    /// <param name="cloth">As it lies; null where the job does not say.</param>
    public static GluePlan Of(
        GlueSpec spec,
        Planked planked,
        FramingPlan framing,
        PlankHolds holds,
        SheathingPlan? cloth,
        CancellationToken stop
    )
    {
        GlueSpec asked = spec;
        (GlueProgress known, ImmutableArray<Finding> ofProgress) = ProgressFindings.Of(
            spec.Done,
            planked,
            spec.WeaveGsm is null ? null : (planked.Layers[^1] as ClothLayerPlan)?.Cloth.Name,
            spec.WeaveCoats,
            spec.Finishes
        );
        (GlueProgress all, ImmutableArray<Finding> taken) = ClothUnder.Of(
            known,
            planked.Job.Layers,
            spec.WeaveGsm is null ? 0 : spec.WeaveCoats
        );
        spec = spec with { Done = all, Resin = spec.Resin?.Held, Glue = spec.Glue?.Held };
        var amounts = new AmountPlanner(spec, planked, framing, cloth);
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(GlueFindings.Of(amounts));
        findings.AddRange(ofProgress);
        findings.AddRange(taken);
        findings.AddRange(ProgressFindings.PlanksUnder(all, planked));
        int before = findings.Count;
        (ImmutableArray<GlueStage> stages, ImmutableArray<string> not) = spec
            is { Crew: { } crew, Clock: { } clock }
            ? Stages(amounts, (crew, clock), holds, findings, stop)
            : ([], []);
        // What nothing is planned after is found last.
        Finding? stoppedBy = not.IsEmpty || findings.Count == before ? null : findings[^1];
        var plan = new GluePlan(
            spec,
            [.. amounts.Lines(), .. LeftOvers.Of(stages, spec, planked.Job.Units)],
            stages,
            findings.ToImmutable()
        )
        {
            Sessions = SessionsOf(stages, spec.Clock),
            NotPlanned = not,
            StoppedBy = stoppedBy,
            ClampsBefore =
            [
                .. spec.Crew is { } by
                    ? planked.PlankLayers.SelectMany(l =>
                        ClampCounts.Before(l, known, holds.By(by))
                    )
                    : [],
            ],
        };
        return plan with
        {
            Findings = [.. plan.Findings, .. ClampCounts.TooFew(plan)],
            OtherDays = new(
                asked.Clock is { } day && !stages.IsEmpty
                    ? degrees =>
                        Of(
                            asked with
                            {
                                Clock = day with { Temperature = day.Temperature.Warmer(degrees) },
                            },
                            planked,
                            framing,
                            holds,
                            cloth,
                            CancellationToken.None
                        )
                    : null
            ),
        };
    }

    /// <summary>Batches of one layer that are mixed in one shift.</summary>
    internal static ImmutableArray<GlueSession> SessionsOf(
        ImmutableArray<GlueStage> stages,
        ClockSpec? clock
    )
    {
        if (clock is null)
        {
            return [];
        }

        var days = new WorkDays(clock.Shifts);
        return
        [
            .. stages
                .SelectMany(s =>
                    s.Batches.GroupBy(b => days.ShiftAt(b.MixAt)).Select(g => (s.Layer, s.Use, g))
                )
                .OrderBy(s => s.g.Min(b => b.MixAt))
                .Select(
                    (s, i) =>
                        new GlueSession(
                            i + 1,
                            s.Layer,
                            s.g.Min(b => b.MixAt),
                            s.g.Max(b => b.Clocks.DownAt),
                            s.g.Key.To,
                            [.. s.g]
                        )
                        {
                            Use = s.Use,
                        }
                ),
        ];
    }

    private static (ImmutableArray<GlueStage> Stages, ImmutableArray<string> Not) Stages(
        AmountPlanner amounts,
        (CrewSpec Crew, ClockSpec Clock) work,
        PlankHolds holds,
        ImmutableArray<Finding>.Builder findings,
        CancellationToken stop
    )
    {
        var days = new WorkDays(work.Clock.Shifts);
        ImmutableArray<GlueStage>.Builder stages = ImmutableArray.CreateBuilder<GlueStage>();
        GlueProgress done = amounts.Spec.Done;
        double ready = days.Working(done.Latest ?? 0);
        Planked planked = amounts.Planked;
        for (int i = 0; i < planked.Layers.Length; i++)
        {
            Mix? mix =
                planked.Layers[i] is PlankLayerPlan
                    ? amounts.Spec.BetweenLayers
                    : amounts.Spec.Resin;
            if (mix is null)
            {
                continue;
            }

            if ((RefusedPlanks.Stop(amounts, i) ?? ThinnedMix.Stops(amounts, i, mix)) is { } held)
            {
                findings.Add(held.Why);
                return (stages.ToImmutable(), held.Not);
            }

            var placing = new BatchPlacing(
                mix,
                InCup(work.Crew, amounts.Spec.Cup, mix),
                work.Clock.Temperature
            );
            GlueStage? stage = planked.Layers[i] switch
            {
                PlankLayerPlan planks => SkinStage.Of(
                    new(amounts, placing, days, holds),
                    planks,
                    i,
                    stages.LastOrDefault(),
                    ready,
                    findings,
                    stop
                ),
                _ => ClothStage.Of(
                    amounts,
                    placing,
                    days,
                    i,
                    (stages.LastOrDefault(), ready),
                    findings
                ),
            };
            if (stage is null)
            {
                // What comes after it has no time before it has one.
                return (
                    stages.ToImmutable(),
                    [.. planked.Job.Layers.Skip(i).Select(l => l.Name), .. amounts.Spec.Finishes]
                );
            }

            if (planked.Layers[i] is PlankLayerPlan skin)
            {
                stage = ClampCounts.On(stage, holds.By(work.Crew), skin);
            }

            stages.Add(Named(stage, done.LastBatch + stages.Sum(s => s.Batches.Length)));
            ready = Math.Max(ready, stage.ReadyAt);
            if (ThinnedMix.StopsAfter(amounts, i, mix) is { } after)
            {
                findings.Add(after.Why);
                return (stages.ToImmutable(), after.Not);
            }
        }

        ImmutableArray<string> not = Last(amounts, work, days, stages, findings);
        return (stages.ToImmutable(), not);
    }

    /// <summary>Coats over the outermost cloth, fairing and fillets; the names of those for which no time was found.</summary>
    private static ImmutableArray<string> Last(
        AmountPlanner amounts,
        (CrewSpec Crew, ClockSpec Clock) work,
        WorkDays days,
        ImmutableArray<GlueStage>.Builder stages,
        ImmutableArray<Finding>.Builder findings
    )
    {
        GlueProgress done = amounts.Spec.Done;
        BatchPlacing Placing(Mix mix) =>
            new(mix, InCup(work.Crew, amounts.Spec.Cup, mix), work.Clock.Temperature);
        double Ready() =>
            stages.Select(s => s.ReadyAt).Append(days.Working(done.Latest ?? 0)).Max();
        void Add(ImmutableArray<GlueStage> more)
        {
            foreach (GlueStage stage in more)
            {
                stages.Add(Named(stage, done.LastBatch + stages.Sum(s => s.Batches.Length)));
            }
        }

        if (
            amounts.Planked.Layers[^1] is ClothLayerPlan { Cloth.Name: var outside }
            && !amounts.Spec.Finishes.IsEmpty
            && !stages.Any(s => s.Layer == outside && s.OnAt is not null)
        )
        {
            findings.Add(UnknownCloth.Of(amounts.Spec, outside, amounts.Spec.Finishes));
            return amounts.Spec.Finishes;
        }

        if (
            amounts.Spec.Resin is { } resin
            && stages.LastOrDefault() is { Use: GlueUse.WettingOut } cloth
            && cloth.Layer == amounts.Planked.Layers[^1].Spec.Name
        )
        {
            (ImmutableArray<GlueStage> coats, ImmutableArray<string> wanting) = new WeaveStages(
                amounts,
                Placing(resin),
                days
            ).After(cloth, Ready(), findings);
            Add(coats);
            if (!wanting.IsEmpty)
            {
                return [.. wanting, .. amounts.Spec.Finishes];
            }
        }

        if (amounts.Spec.BetweenLayers is not { } mix)
        {
            return [];
        }

        (ImmutableArray<GlueStage> finish, ImmutableArray<string> not) = new FinishStages(
            amounts,
            Placing(mix),
            days
        ).After(stages.LastOrDefault(), Ready(), findings);
        Add(finish);
        return not;
    }

    /// <summary>No batch is larger than the cup can be stirred with.</summary>
    private static CrewSpec InCup(CrewSpec crew, Cup? cup, Mix mix) =>
        cup is { RimMm: < double.PositiveInfinity }
            ? crew with
            {
                MostGrams = Math.Min(
                    crew.MostGrams ?? double.PositiveInfinity,
                    1000 * mix.Ratio.KgPerLitre * cup.Litres(Cup.FilledTo * cup.RimMm)
                ),
            }
            : crew;

    private static GlueStage Named(GlueStage stage, int before) =>
        stage with
        {
            Batches =
            [
                .. stage
                    .Batches.OrderBy(b => b.MixAt)
                    .Select(
                        (b, i) =>
                            b with
                            {
                                Name = FormattableString.Invariant($"B{before + i + 1:00}"),
                            }
                    ),
            ],
        };
}
