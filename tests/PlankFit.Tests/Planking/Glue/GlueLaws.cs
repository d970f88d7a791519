using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>What every plan of gluing must keep, told from the job and the planks alone: no clock, no order, no hand and no shift is broken.</summary>
internal static class GlueLaws
{
    private const double Hair = 1e-6;

    public static void Hold(BottomPlan plan)
    {
        GluePlan glue = plan.Glue!;
        double before = 0;
        GlueStage? under = null;
        foreach (GlueStage stage in glue.Stages)
        {
            if (stage.IsCloth && under is { IsCloth: true, OnAt: not null })
            {
                OnCloth(glue.Spec, under, stage);
            }

            under = stage;
            PlankLayerPlan? layer = plan.PlankLayers.FirstOrDefault(l =>
                l.Planks.Name == stage.Layer
            );
            Assert.All(stage.Batches, b => Batch(glue.Spec, stage.Mix, b));
            Hands(glue.Spec.Crew!, stage);
            if (layer is not null)
            {
                Order(glue.Spec.Done, layer, stage);
                Bound(glue.Spec.Crew!, stage);
            }

            foreach (GlueBatch batch in stage.Batches)
            {
                Assert.True(
                    batch.MixAt >= before - Hair,
                    $"{batch.Name} is mixed before its hold points"
                );
                Assert.All(
                    stage.Before.Where(h => h.NotBefore is not null),
                    h => Assert.True(batch.MixAt >= h.NotBefore - Hair, h.What)
                );
                Assert.All(
                    stage.Before.Where(h => h.NotAfter is not null),
                    h => Assert.True(batch.Clocks.DownAt <= h.NotAfter + Hair, h.What)
                );
            }

            Trims(glue.Spec, stage);
            before = stage
                .After.Select(h => h.NotBefore ?? 0)
                .Concat(stage.Trims.Select(t => t.DoneAt))
                .Concat(stage.Batches.Select(b => b.Clocks.DownAt))
                .Append(before)
                .Max();
        }

        Assert.Equal(
            glue.Batches.Select(b => b.Name).Order(),
            glue.Sessions.SelectMany(s => s.Batches).Select(b => b.Name).Order()
        );
        Assert.Equal(glue.Batches.Count(), glue.Batches.Select(b => b.Name).Distinct().Count());
    }

    /// <summary>Cloth or a coat on cloth: while what is under it bonds, from its last course to its first, or keyed an hour and more after it has cured; and which of the two is said.</summary>
    private static void OnCloth(GlueSpec spec, GlueStage under, GlueStage stage)
    {
        if (stage.Batches.IsEmpty)
        {
            return;
        }

        (double first, double last) = under.OnAt!.Value;
        double mixed = stage.Batches.Min(b => b.MixAt),
            on = stage.Batches.Max(b => b.Clocks.OutAt);
        if (stage.Before.Any(h => h.What.StartsWith("keyed", StringComparison.Ordinal)))
        {
            Assert.True(Used(spec, under.Mix.Clocks.Sandable!, null, last, mixed - 60) >= 1 - 1e-6);
            Assert.Contains(
                stage.Before,
                h => h.What.StartsWith("washed", StringComparison.Ordinal)
            );
            return;
        }

        ClockWindow recoat = under.Mix.Clocks.Recoat!;
        Assert.False(under.IsTaken);
        Assert.True(Used(spec, recoat.From, null, last, mixed) >= 1 - 1e-6);
        Assert.True(Used(spec, recoat.To, null, first, on) <= 1 + 1e-6);
    }

    private static void Batch(GlueSpec spec, Mix mix, GlueBatch batch)
    {
        CrewSpec crew = spec.Crew!;
        Assert.Equal(batch.Grams, 1000 * batch.Parts.Kg, 1e-6 * batch.Grams);
        Assert.Equal(
            mix.Ratio.ResinPerHardener,
            batch.Parts.ResinLitres / batch.Parts.HardenerLitres,
            1e-9
        );
        Assert.True(batch.Grams <= (crew.MostGrams ?? double.MaxValue) + Hair);
        Assert.True(batch.Grams <= mix.Clocks.Pot.MostGrams + Hair);
        if (spec.Cup is { } cup)
        {
            Assert.True(cup.HeightMm(batch.Parts.Litres) <= 0.8 * cup.RimMm + Hair);
        }

        Assert.Contains(
            spec.Clock!.Shifts,
            s =>
                Within(batch.MixAt % 1440, s)
                && Within(batch.Clocks.DownAt - (1440 * Math.Floor(batch.MixAt / 1440)), s)
        );
        // Its own clocks, by small steps.
        Assert.True(
            Used(spec, mix.Clocks.Pot, batch.Grams, batch.MixAt, batch.Clocks.OutAt)
                <= mix.UsePart + 1e-6,
            $"{batch.Name} is longer in the pot than it may be"
        );
        Assert.True(
            Used(spec, mix.Clocks.Film, null, batch.MixAt, batch.Clocks.DownAt)
                <= mix.UsePart + 1e-6,
            $"{batch.Name} is down later than it may be"
        );
        Assert.True(batch.Clocks.OutAt <= batch.Clocks.OutBy + Hair);
        Assert.True(batch.Clocks.DownAt <= batch.Clocks.DownBy + Hair);
        // In a shop three degrees warmer each clock is used up by the time on the card to a minute, and not beyond.
        GlueSpec warmer = spec with
        {
            Clock = spec.Clock! with { Temperature = spec.Clock.Temperature.Warmer(3) },
        };
        foreach (
            (ClockLaw law, double? grams, double by) in new[]
            {
                (mix.Clocks.Pot, (double?)batch.Grams, batch.Clocks.Warmer.OutBy),
                (mix.Clocks.Film, null, batch.Clocks.Warmer.DownBy),
            }
        )
        {
            Assert.True(Used(warmer, law, grams, batch.MixAt, by) <= mix.UsePart + 1e-6);
            Assert.True(Used(warmer, law, grams, batch.MixAt, by + 1.05) > mix.UsePart);
        }

        // By the time on its card the clock has not run beyond its part.
        Assert.True(
            Used(spec, mix.Clocks.Film, null, batch.MixAt, batch.Clocks.DownBy)
                <= mix.UsePart + 1e-6
        );
        if (batch.Planks.IsEmpty)
        {
            return;
        }

        Assert.Equal(batch.Grams, Math.Max(crew.LeastGrams, batch.Planks.Sum(p => p.Grams)), 1e-6);
        Assert.Single(batch.Planks.Select(p => p.Id.Side).Distinct());
        Assert.Equal(batch.Clocks.DownAt, batch.Planks.Max(p => p.DoneAt), Hair);
        double spreadTo = batch.MixAt + crew.MixMinutes;
        foreach (PlankTimes plank in batch.Planks)
        {
            Assert.True(plank.SpreadAt >= spreadTo - Hair);
            spreadTo = plank.SpreadAt + crew.SpreadMinutes;
            Assert.InRange(plank.SetAt - spreadTo, -Hair, crew.WaitMinutes + Hair);
            Assert.Equal(crew.FastenMinutes, plank.DoneAt - plank.SetAt, Hair);
        }

        Assert.Equal(spreadTo, batch.Clocks.OutAt, Hair);
        // The planks of a batch follow each other.
        int[] numbers = [.. batch.Planks.Select(p => p.Id.Number).Order()];
        Assert.Equal(numbers.Length - 1, numbers[^1] - numbers[0]);
    }

    /// <summary>Of the clock's life, by the midpoints of tenths of minutes.</summary>
    private static double Used(GlueSpec spec, ClockLaw law, double? grams, double from, double to)
    {
        const double Step = 0.5;
        int steps = (int)Math.Ceiling((to - from) / Step);
        double step = (to - from) / Math.Max(1, steps);
        return Enumerable
            .Range(0, steps)
            .Sum(i =>
                step
                / law.Minutes(Celsius(spec.Clock!.Temperature, from + ((i + 0.5) * step)), grams)
            );
    }

    private static double Celsius(DayTemperature day, double minute)
    {
        (double Minute, double Celsius)[] three =
        [
            .. new[] { -1440, 0, 1440 }.SelectMany(d =>
                day.At.Select(p => (p.Minute + d, p.Celsius))
            ),
        ];
        double m = minute % 1440;
        int next = Array.FindIndex(three, p => p.Minute > m);
        (double from, double cold) = three[next - 1];
        (double to, double warm) = three[next];
        return cold + ((warm - cold) * (m - from) / (to - from));
    }

    private static void Hands(CrewSpec crew, GlueStage stage)
    {
        (double From, double To, int Hands)[] spans =
        [
            .. stage.Batches.SelectMany(b =>
                b.Planks.SelectMany(p =>
                        new[]
                        {
                            (p.SpreadAt, p.SpreadAt + crew.SpreadMinutes, 1),
                            (p.SetAt, p.DoneAt, 2),
                        }
                    )
                    .Append((b.MixAt, b.MixAt + crew.MixMinutes, b.Planks.IsEmpty ? 0 : 1))
            ),
        ];
        foreach ((double from, _, _) in spans)
        {
            int busy = spans
                .Where(s => s.From <= from + Hair && s.To > from + Hair)
                .Sum(s => s.Hands);
            Assert.True(busy <= crew.Hands, $"{stage.Layer}: {busy} hands of {crew.Hands}");
        }
    }

    /// <summary>No order does it in less: all work is in it, one batch's mixing at least, and the plan itself keeps it.</summary>
    private static void Bound(CrewSpec crew, GlueStage stage)
    {
        if (stage.Batches.IsEmpty)
        {
            return;
        }

        double work =
            crew.MixMinutes
            + stage
                .Batches.SelectMany(b => b.Planks)
                .Sum(p => crew.SpreadMinutes + (CrewSpec.FastenHands * (p.DoneAt - p.SetAt)));
        Assert.InRange(stage.BoundMinutes, (work / crew.Hands) - Hair, stage.WorkMinutes + Hair);
    }

    private static void Order(GlueProgress done, PlankLayerPlan layer, GlueStage stage)
    {
        PlankTimes[] all = [.. stage.Batches.SelectMany(b => b.Planks)];
        Assert.Equal(
            layer
                .Starboard.Concat(layer.Port)
                .Where(p => !p.IsFitted && done.Rows.All(r => r.Plank != p.Id))
                .Select(p => p.Id)
                .Order(),
            all.Select(p => p.Id).Order()
        );
        Dictionary<PlankId, PlankTimes> byId = all.ToDictionary(p => p.Id);
        foreach (PlankTimes plank in all)
        {
            int master = layer.Of(plank.Id.Side).MasterNumber;
            if (plank.Id.Number == master)
            {
                continue;
            }

            PlankId nearer = plank.Id with
            {
                Number = plank.Id.Number + Math.Sign(master - plank.Id.Number),
            };
            if (byId.TryGetValue(nearer, out PlankTimes neighbour))
            {
                Assert.True(plank.SetAt >= neighbour.DoneAt - Hair, $"{plank.Id} before {nearer}");
            }
        }
    }

    private static void Trims(GlueSpec spec, GlueStage stage)
    {
        foreach (TrimSpan trim in stage.Trims)
        {
            GlueBatch[] batches = [.. stage.Batches.Where(b => b.Side == trim.Side)];
            ClockWindow tacky = stage.Mix.Clocks.Tacky!;
            double first = batches.Min(b => b.Clocks.OutAt),
                last = batches.Max(b => b.Clocks.OutAt);
            Assert.True(Used(spec, tacky.From, null, last, trim.At) >= 1 - 1e-6);
            Assert.True(Used(spec, tacky.To, null, first, trim.DoneAt) <= 1 + 1e-6);
            Assert.Contains(
                spec.Clock!.Shifts,
                s =>
                    Within(trim.At % 1440, s)
                    && Within(trim.DoneAt - (1440 * Math.Floor(trim.At / 1440)), s)
            );
        }
    }

    private static bool Within(double minute, (double From, double To) shift) =>
        minute >= shift.From - Hair && minute <= shift.To + Hair;
}
