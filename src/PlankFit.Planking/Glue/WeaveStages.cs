using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>
/// The coats that fill the weave of the outermost cloth, a stage each: on what is under it while it still bonds, if all of the coat can be on in that time, or else once
/// it has cured, is washed, keyed and dry.
/// </summary>
internal sealed record WeaveStages(AmountPlanner Amounts, BatchPlacing Placing, WorkDays Days)
{
    /// <summary>Null where nothing is to be filled.</summary>
    private (string Cloth, Estimate Gsm, int Coats)? Asked =>
        Amounts.Planked.Layers[^1] is ClothLayerPlan outer && Amounts.Spec.WeaveGsm is { } gsm
            ? (outer.Cloth.Name, gsm, Amounts.Spec.WeaveCoats)
            : null;

    public bool AreAsked => Asked is not null;

    /// <param name="cloth">The stage of the cloth itself.</param>
    /// <returns>As many as were found a time for; what was not in words of the stages that are wanting.</returns>
    public (ImmutableArray<GlueStage> Stages, ImmutableArray<string> Not) After(
        GlueStage cloth,
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        if (Asked is not var (on, gsm, coats) || cloth.OnAt is null)
        {
            return ([], []);
        }

        ImmutableArray<GlueStage>.Builder stages = ImmutableArray.CreateBuilder<GlueStage>();
        GlueStage under = cloth;
        for (int coat = 1; coat <= coats; coat++)
        {
            double grams = 1000 * Placing.Mix.WithWaste(gsm.Usual / 1000 / coats);
            if (Of(on, under, (coat, coats), grams, ready, findings) is not { } stage)
            {
                return (
                    stages.ToImmutable(),
                    [.. Enumerable.Range(coat, coats - coat + 1).Select(n => Name(on, n, coats))]
                );
            }

            stages.Add(stage);
            ready = Math.Max(ready, stage.ReadyAt);
            under = stage;
        }

        return (stages.ToImmutable(), []);
    }

    private GlueStage? Of(
        string cloth,
        GlueStage under,
        (int Number, int Of) coat,
        double grams,
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        // As cloth is wetted out, at the roller's pace, and nothing to trim.
        var rolling = new ClothWetting(
            Name(cloth, coat.Number, coat.Of),
            Placing with
            {
                Crew = Placing.Crew with { WetMinutesPerM2 = Placing.Crew.CoatMinutesPerM2 },
            },
            Days
        );
        (Side Side, double At)[] done =
        [
            .. AmountPlanner
                .BothSides.Select(s => (s, Amounts.Spec.Done.CoatedAt(cloth, coat.Number, s)))
                .Where(d => d.Item2 is not null)
                .Select(d => (d.s, d.Item2!.Value)),
        ];
        Side[] wanting = [.. AmountPlanner.BothSides.Where(s => done.All(d => d.Side != s))];
        SheathedLayer? laid = Amounts.ClothOf(cloth);
        if (laid is null && wanting.Length > 0)
        {
            findings.Add(UnknownCloth.NoArea(cloth, coat.Number, wanting));
            return null;
        }

        ClothShare[] shares = laid is null
            ? []
            :
            [
                .. wanting
                    .OrderBy(s => s == laid.Spec.SideFirst ? 0 : 1)
                    .Select(s => new ClothShare(s, laid.Of(s).LaidMm2, grams, 0)),
            ];
        if (shares.Length == 0)
        {
            return Stage(rolling, coat, [], done, []);
        }

        var on = LaidOnCloth.Of(rolling, shares, under, ready, Amounts.Planked.Job.Units);
        if (on.Why is { } why)
        {
            findings.Add(why);
            return null;
        }

        return Stage(rolling, coat, on.Sides, done, on.Before);
    }

    private GlueStage Stage(
        ClothWetting rolling,
        (int Number, int Of) coat,
        ImmutableArray<ClothWetting.WettedSide> sides,
        (Side Side, double At)[] done,
        ImmutableArray<HoldPoint> before
    )
    {
        double[] on =
        [
            .. sides.SelectMany(s => new[] { s.FirstAt, s.LastAt }),
            .. done.Select(d => d.At),
        ];
        return new(
            rolling.Layer,
            Placing.Mix,
            [.. sides.SelectMany(s => s.Batches)],
            before,
            [
                new("no runs, no dry places; what is found is marked"),
                .. coat.Number < coat.Of
                    ? []
                    : new HoldPoint[] { new("the weave shows nowhere: else one coat more") },
                // Before it is faired that is said with what else must be so.
                .. coat.Number < coat.Of || Amounts.Spec.Fairing is not null
                    ? []
                    : new HoldPoint[]
                    {
                        new(
                            "cured",
                            Placing.Mix.Clocks.Sandable is { } sandable
                                ? on.Max()
                                    + Math.Ceiling(
                                        ClockRun.Minutes(sandable, null, Placing.Day, on.Max())
                                    )
                                : null
                        ),
                    },
            ]
        )
        {
            Use = GlueUse.Weave,
            Coat = coat.Number,
            OnAt = (on.Min(), on.Max()),
            IsTaken = Amounts.Spec.Done.IsTaken(Amounts.Planked.Layers[^1].Spec.Name, coat.Number),
            WorkMinutes = sides.IsEmpty
                ? 0
                : Days.Between(sides[0].Batches[0].MixAt, sides[^1].LastAt),
        };
    }

    public static string Name(string cloth, int coat, int of) =>
        // What tells it from the others first: charts have room for a beginning.
        $"weave coat {NumberText.Trimmed(coat, 0)} of {NumberText.Trimmed(of, 0)}, {cloth}";
}
