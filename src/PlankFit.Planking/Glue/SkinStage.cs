using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>A skin's stage: on a cloth that still bonds if all of it goes down in time, else on one that is cured, washed, dry and keyed.</summary>
internal static class SkinStage
{
    /// <summary>Nothing is glued down with less.</summary>
    private const double LeastGrams = 0.1;

    public static GlueStage? Of(
        StageGround ground,
        PlankLayerPlan layer,
        int at,
        GlueStage? under,
        double ready,
        ImmutableArray<Finding>.Builder findings,
        CancellationToken stop
    )
    {
        GlueProgress done = ground.Amounts.Spec.Done;
        ImmutableArray<PlankWing> wings = PlankWing.Of(layer, Share, IsDown);
        double? downAt = layer.Starboard.Concat(layer.Port).Max(p => done.DownAt(p.Id));
        if (wings.IsEmpty)
        {
            return new(
                layer.Planks.Name,
                ground.Placing.Mix,
                [],
                [],
                HoldPoints.AfterSkin(ground, layer, downAt ?? ready)
            )
            {
                Use = GlueUse.BetweenLayers,
            };
        }

        if (UnknownCloth.Under(ground.Amounts, at, under) is { } unknown)
        {
            findings.Add(unknown);
            return null;
        }

        var limit = ClampLimit.Of(ground, layer);
        var gluing = new SkinGluing(layer.Planks.Name, ground.Placing, ground.Days)
        {
            Clamps = limit,
        };
        ImmutableArray<GlueBatch> batches = [];
        ImmutableArray<HoldPoint> onCloth = [];
        if (under is { IsCloth: true, OnAt: not null } cloth)
        {
            (batches, onCloth) = OnCloth(ground, layer, cloth, gluing, (wings, ready), stop);
        }
        else
        {
            (batches, ImmutableArray<PlankShare> left) = gluing.Of(wings, ready, stop);
            batches = left.IsEmpty ? batches : [];
        }

        if (batches.IsEmpty)
        {
            PlankShare worst = wings
                .SelectMany(w => w.Planks)
                .MaxBy(p => p.FastenMinutes + p.SpreadMinutes + (p.Grams / 1e6));
            findings.Add(
                under is { IsCloth: true, OnAt: not null, Mix.Clocks.Sandable: null }
                    ? WhyNoBatch.OfKeying(layer.Planks.Name)
                : WhyNoBatch.OfClamps(limit, wings) is { } few ? few
                : WhyNoBatch.OfPlank(
                    ground.Placing,
                    ground.Days,
                    layer.Planks.Name,
                    worst,
                    ground.Amounts.Planked.Job.Units
                )
            );
            return null;
        }

        double from = batches.Min(b => b.MixAt),
            to = batches.Max(b => b.Clocks.DownAt);
        return new(
            layer.Planks.Name,
            ground.Placing.Mix,
            batches,
            [
                .. downAt is null
                    ? HoldPoints.BeforeSkin(layer.Planks, at, ground.Amounts.Planked.Job.Units)
                    : HoldPoints.GoingOn(at),
                .. onCloth,
            ],
            HoldPoints.AfterSkin(ground, layer, to)
        )
        {
            Use = GlueUse.BetweenLayers,
            BoundMinutes = SkinGluing.BoundMinutes(wings, ground.Placing),
            WorkMinutes = ground.Days.Between(from, to),
        };

        PlankShare Share(Plank plank) =>
            new(
                plank.Id,
                Math.Max(
                    LeastGrams,
                    Math.Round(
                        1000 * ground.Amounts.PlankKg(ground.Placing.Mix, plank, layer, at),
                        1
                    )
                ),
                ground.Placing.Crew.SpreadMinutes,
                ground.Placing.Crew.FastenMinutes,
                ground.Holds.Fastenings(plank.Id)
            );

        bool IsDown(PlankId id) =>
            done.DownAt(id) is not null || layer.On(id.Side).First(p => p.Id == id).IsFitted;
    }

    private static (ImmutableArray<GlueBatch>, ImmutableArray<HoldPoint>) OnCloth(
        StageGround ground,
        PlankLayerPlan layer,
        GlueStage cloth,
        SkinGluing gluing,
        (ImmutableArray<PlankWing> Wings, double Ready) work,
        CancellationToken stop
    )
    {
        MixClocks clocks = cloth.Mix.Clocks;
        DayTemperature day = ground.Placing.Day;
        (double first, double last) = cloth.OnAt!.Value;
        if (!cloth.IsTaken && clocks.Recoat is { } recoat)
        {
            // Counted from the last course for its beginning, and from the first for its end.
            double from = Math.Ceiling(last + ClockRun.Minutes(recoat.From, null, day, last)),
                to = Math.Floor(first + ClockRun.Minutes(recoat.To, null, day, first)),
                trimmed = cloth.Trims.Select(t => t.DoneAt).DefaultIfEmpty(last).Max();
            (ImmutableArray<GlueBatch> soon, ImmutableArray<PlankShare> late) = gluing.Of(
                work.Wings,
                Math.Max(work.Ready, Math.Max(from, trimmed)),
                stop
            );
            if (late.IsEmpty && soon.Max(b => b.Clocks.DownAt) <= to)
            {
                return (
                    soon,
                    [
                        new(
                            "the cloth is firm and still bonds: nothing washed, nothing keyed, nothing touched with bare hands",
                            from,
                            to
                        ),
                    ]
                );
            }
        }

        if (
            KeyedCloth.Of(clocks, ground.Placing, ground.Days, last, work.Ready, 2 * layer.AreaMm2)
            is not { } keyed
        )
        {
            return ([], []);
        }

        (ImmutableArray<GlueBatch> batches, ImmutableArray<PlankShare> left) = gluing.Of(
            work.Wings,
            keyed.Dry,
            stop
        );
        return left.IsEmpty ? (batches, keyed.Points) : ([], []);
    }
}
