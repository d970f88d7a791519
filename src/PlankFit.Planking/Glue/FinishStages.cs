using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>
/// What is laid with thickened glue when all layers are on: filler over the outside, and fillets, a stage each. What a side takes may be laid in parts on several days, since
/// it is keyed where it goes on.
/// </summary>
internal sealed record FinishStages(AmountPlanner Amounts, BatchPlacing Placing, WorkDays Days)
{
    /// <summary>In more parts nobody lays a side.</summary>
    private const int MostParts = 24;

    /// <param name="under">The outermost layer's stage, or its last coat's; null where none is planned.</param>
    /// <returns>As many as were found a time for, and the names of those that were not.</returns>
    public (ImmutableArray<GlueStage> Stages, ImmutableArray<string> Not) After(
        GlueStage? under,
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        ImmutableArray<GlueStage>.Builder stages = ImmutableArray.CreateBuilder<GlueStage>();
        ImmutableArray<string> names = Amounts.Spec.Finishes;
        AmountLine[] lines =
        [
            .. Amounts
                .Lines()
                .Where(l => l.Use is GlueUse.Fairing or GlueUse.Fillet)
                .OrderBy(l => l.Use == GlueUse.Fairing ? 0 : 1),
        ];
        for (int i = 0; i < lines.Length; i++)
        {
            GlueStage? stage =
                lines[i].Use == GlueUse.Fairing
                    ? Fairing(names[i], lines[i], under, ready, findings)
                    : Fillet(
                        names[i],
                        lines[i],
                        Amounts.Spec.Fillets[i - (names.Length - Amounts.Spec.Fillets.Length)],
                        ready,
                        findings
                    );
            if (stage is null)
            {
                return (stages.ToImmutable(), [.. names.Skip(i)]);
            }

            stages.Add(stage);
            ready = Math.Max(ready, stage.ReadyAt);
        }

        return (stages.ToImmutable(), []);
    }

    private GlueStage? Fairing(
        string name,
        AmountLine line,
        GlueStage? under,
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        PlankLayerPlan outer = Amounts.Planked.PlankLayers.Last();
        double part = Amounts.Spec.Fairing!.Part,
            perM2 = 1000 * line.Kg.Usual / (line.AreaMm2 / 1e6);
        ImmutableArray<HoldPoint> before =
        [
            new("dust off; low places found with a batten and ringed in pencil"),
        ];
        bool isLaid = AmountPlanner.BothSides.All(s =>
            Amounts.Spec.Done.FinishedAt(name, s) is not null
        );
        if (!isLaid && under is { IsCloth: true, OnAt: { } on })
        {
            if (
                KeyedCloth.Of(under.Mix.Clocks, Placing, Days, on.Last, ready, outer.AreaMm2 * 2)
                is not { } keyed
            )
            {
                findings.Add(WhyNoBatch.OfKeying(name));
                return null;
            }

            ready = keyed.Dry;
            before = [.. keyed.Points, .. before];
        }

        return Stage(
            (name, GlueUse.Fairing, Placing.Crew.FairMinutesPerM2),
            side => new(side, part * outer.Of(side).AreaMm2, perM2, 0),
            before,
            ready,
            last =>
            {
                double? cured = Cured(last);
                return
                [
                    new("the filler has cured", cured),
                    new("washed of blush before it is sanded, and dry"),
                    new(
                        "sanded fair with a long board, mask on; low places filled again",
                        Math.Ceiling(
                            Days.Done(
                                cured ?? last,
                                line.AreaMm2
                                    / 1e6
                                    * Placing.Crew.BoardMinutesPerM2
                                    / Placing.Crew.Hands
                            )
                        )
                    ),
                    new("dust off, washed, inspected"),
                ];
            },
            findings
        );
    }

    private GlueStage? Fillet(
        string name,
        AmountLine line,
        FilletSpec fillet,
        double ready,
        ImmutableArray<Finding>.Builder findings
    )
    {
        double perMetre = 1000 * line.Kg.Usual / (fillet.LengthMm / 1000);
        return Stage(
            (name, GlueUse.Fillet, Placing.Crew.FilletMinutesPerM),
            side => new(side, 0, perMetre, 0) { LengthMm = fillet.LengthMm / 2 },
            [
                new("the corner can be reached and lies so that nothing runs out of it"),
                new("its wood is clean, keyed and dry; cured glue is scraped out, washed of blush"),
                new(
                    "both faces wetted with resin without filler first (common practice, no source)"
                ),
            ],
            ready,
            last =>
                [
                    new("drawn smooth in one pull, what lies beside it scraped off while soft"),
                    new("it has cured", Cured(last)),
                    new("washed of blush, then sanded, mask on; dust off, inspected"),
                ],
            findings
        );
    }

    private GlueStage? Stage(
        (string Name, GlueUse Use, double Minutes) of,
        Func<Side, ClothShare> share,
        ImmutableArray<HoldPoint> before,
        double ready,
        Func<double, ImmutableArray<HoldPoint>> after,
        ImmutableArray<Finding>.Builder findings
    )
    {
        var laying = new ClothWetting(
            of.Name,
            Placing with
            {
                Crew = Placing.Crew with { WetMinutesPerM2 = of.Minutes },
            },
            Days
        );
        List<GlueBatch> batches = [];
        List<double> on = [];
        foreach (Side side in AmountPlanner.BothSides)
        {
            if (Amounts.Spec.Done.FinishedAt(of.Name, side) is { } at)
            {
                on.Add(at);
                continue;
            }

            double from = batches.Count == 0 ? ready : batches[^1].Clocks.OutAt;
            if (InParts(laying, share(side), from) is not { } laid)
            {
                findings.Add(WhyNoBatch.OfFinish(laying, share(side), Amounts.Planked.Job.Units));
                return null;
            }

            batches.AddRange(laid);
            on.AddRange(laid.Select(b => b.Clocks.OutAt));
        }

        return new(
            of.Name,
            Placing.Mix,
            [.. batches],
            batches.Count == 0 ? [] : before,
            after(on.Max())
        )
        {
            Use = of.Use,
            OnAt = (on.Min(), on.Max()),
            WorkMinutes =
                batches.Count == 0 ? 0 : Days.Between(batches[0].MixAt, batches[^1].Clocks.OutAt),
        };
    }

    /// <summary>A side in as few parts as there are shifts for; null where there are none for even small ones.</summary>
    private static ImmutableArray<GlueBatch>? InParts(
        ClothWetting laying,
        ClothShare share,
        double from
    )
    {
        for (int parts = 1; parts <= MostParts; parts++)
        {
            List<GlueBatch> batches = [];
            double at = from;
            for (int i = 0; i < parts; i++)
            {
                if (laying.Of(share.Part(parts), at, []) is not { } laid)
                {
                    break;
                }

                batches.AddRange(laid.Batches);
                at = laid.LastAt;
                if (i + 1 == parts)
                {
                    return [.. batches.Select((b, n) => b with { Course = n + 1 })];
                }
            }
        }

        return null;
    }

    private double? Cured(double last) =>
        Placing.Mix.Clocks.Sandable is { } sandable
            ? last + Math.Ceiling(ClockRun.Minutes(sandable, null, Placing.Day, last))
            : null;
}
