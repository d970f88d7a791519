using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Planking.Glue;

/// <summary>
/// A skin glued down: outwards from the master on both sides, batch by batch. Whenever hands come free the wing with the longest work left is served first, with as many
/// planks as its clocks, its hands and its shift hold, shared out evenly over what is left of it.
/// </summary>
internal sealed record SkinGluing(string Layer, BatchPlacing Placing, WorkDays Days)
{
    /// <summary>Null where no plank waits for clamps.</summary>
    public ClampLimit? Clamps { get; init; }

    /// <summary>Shifts that may pass without a batch before it is given up.</summary>
    private const int MostIdleShifts = 8;

    /// <summary>All batches, by the time at which they are mixed, without names; and the planks for which there is no time.</summary>
    public (ImmutableArray<GlueBatch> Batches, ImmutableArray<PlankShare> Left) Of(
        ImmutableArray<PlankWing> wings,
        double from,
        CancellationToken stop
    )
    {
        var rows = wings.Select(w => new Row(w)).ToList();
        List<GlueBatch> batches = [];
        ClampsInUse? clamps = Clamps?.Begin();
        double now = Days.Working(from);
        int idle = 0;
        while (rows.Any(r => !r.IsDone) && idle < MostIdleShifts)
        {
            stop.ThrowIfCancellationRequested();
            (_, double shiftTo) = Days.ShiftAt(now);
            int before = batches.Count;
            OneShift(rows, (now, shiftTo), batches, clamps);
            // While clamps are still to come free nothing is given up.
            idle = batches.Count > before || clamps?.FreeAfter(now).Any() == true ? 0 : idle + 1;
            now = Days.Working(shiftTo);
        }

        return (
            [.. batches.OrderBy(b => b.MixAt).ThenBy(b => b.Side)],
            [.. rows.SelectMany(r => r.Wing.Planks.Skip(r.Down))]
        );
    }

    private void OneShift(
        List<Row> rows,
        (double From, double To) shift,
        List<GlueBatch> batches,
        ClampsInUse? clamps
    )
    {
        (double from, double to) = shift;
        var hands = new HandsInUse(Placing.Crew.Hands);
        SortedSet<double> times = [from, .. WhenFree(from)];
        while (times.Count > 0)
        {
            double now = times.Min;
            times.Remove(now);
            if (now >= to)
            {
                return;
            }

            // The longer the work that is left, the sooner; of two alike the side that is not being worked on.
            foreach (
                Row row in rows.Where(r => !r.IsDone)
                    .OrderByDescending(r => r.LeftMinutes)
                    .ThenBy(r => r.LastAt)
                    .ThenBy(r => r.Wing.Side)
            )
            {
                if (
                    After(rows, row) is not { } after
                    || Batch(row, hands, now, (after, to), clamps) is not { } batch
                )
                {
                    continue;
                }

                batches.Add(batch);
                times.UnionWith(
                    batch
                        .Planks.SelectMany(p =>
                            new[] { p.SpreadAt + Placing.Crew.SpreadMinutes, p.DoneAt }
                        )
                        .Append(now + Placing.Crew.MixMinutes)
                        .Append(batch.Clocks.DownAt - Lead)
                        .Concat(WhenFree(now))
                        .Where(t => t > now)
                );
            }

            times.RemoveWhere(t => t <= now);
        }

        // What is mixed so long before clamps come free goes down as they do.
        IEnumerable<double> WhenFree(double after) =>
            clamps is null
                ? []
                : clamps
                    .FreeAfter(after)
                    .Where(t => t < to)
                    .SelectMany(t => new[] { t - Lead, t })
                    .Where(t => t > after);
    }

    /// <summary>So long before a plank can go down its batch is mixed.</summary>
    private double Lead => Placing.Crew.MixMinutes + Placing.Crew.SpreadMinutes;

    private GlueBatch? Batch(
        Row row,
        HandsInUse hands,
        double now,
        (double After, double To) bounds,
        ClampsInUse? clamps
    )
    {
        (double after, double to) = bounds;
        // No earlier than the neighbour will be down by the time that the first is spread.
        if (after > now + Lead)
        {
            return null;
        }

        ReadOnlySpan<PlankShare> left = row.Wing.Planks.AsSpan()[row.Down..];
        BatchPlacing.Placed? largest = Placing.Largest(left, hands, now, after, to);
        int free = largest?.Planks.Length ?? 0;
        while (largest is { } held && clamps?.Hold(left[..held.Planks.Length], held) == false)
        {
            largest =
                held.Planks.Length > 1
                    ? Placing.Of(left[..(held.Planks.Length - 1)], hands, now, after, to)
                    : null;
        }

        // Nobody mixes for each plank by itself as the clamps of another come off, while a batch worth mixing only has to wait.
        if (
            largest is not { } most
            || clamps?.IsWorthWaiting(left[..free], most.Planks.Length, now) == true
        )
        {
            return null;
        }

        int batches = ((left.Length - 1) / most.Planks.Length) + 1,
            even = ((left.Length - 1) / batches) + 1;
        BatchPlacing.Placed placed =
            even < most.Planks.Length
            && Placing.Of(left[..even], hands, now, after, to) is { } shared
            && clamps?.Hold(left[..even], shared) != false
                ? shared
                : most;
        ReadOnlySpan<PlankShare> planks = left[..placed.Planks.Length];
        clamps?.Take(planks, placed);
        Placing.Take(placed, planks, hands, now);
        row.Goes(placed);
        return new(
            "",
            Layer,
            row.Wing.Side,
            now,
            placed.Grams,
            Placing.Mix.Ratio.Parts(placed.Grams / 1000),
            placed.Clocks
        )
        {
            Planks = placed.Planks,
            LeftGrams = placed.Grams - placed.Planks.Sum(p => p.Grams),
            Celsius = Placing.Day.Celsius(now),
        };
    }

    /// <summary>When the plank is down that the row's next one lies against; null while the master is not even on its way.</summary>
    private static double? After(List<Row> rows, Row row)
    {
        if (row.LastAt is { } last)
        {
            return last;
        }

        Row? master = rows.Find(r => r.Wing.Side == row.Wing.Side && r.Wing.HasMaster && r != row);
        return master is null ? 0 : master.MasterAt;
    }

    /// <summary>How far a wing is. Lives as long as the plan is made.</summary>
    private sealed class Row(PlankWing wing)
    {
        public PlankWing Wing => wing;

        public int Down { get; private set; }

        public bool IsDone => Down == wing.Planks.Length;

        public double? LastAt { get; private set; }

        public double? MasterAt { get; private set; }

        public double LeftMinutes => wing.Planks.Skip(Down).Sum(p => p.FastenMinutes);

        public void Goes(BatchPlacing.Placed placed)
        {
            MasterAt ??= placed.Planks[0].DoneAt;
            Down += placed.Planks.Length;
            LastAt = placed.Planks[^1].DoneAt;
        }
    }

    /// <summary>No order with these hands ends before it, minutes of work, in batches no larger than the clocks of the coldest hour hold.</summary>
    public static double BoundMinutes(ImmutableArray<PlankWing> wings, BatchPlacing placing)
    {
        CrewSpec crew = placing.Crew;
        int most = placing.MostEver([.. wings.SelectMany(w => w.Planks)]);
        List<GangTask> tasks =
        [
            .. wings.SelectMany(w =>
                Enumerable
                    .Range(0, ((w.Planks.Length - 1) / most) + 1)
                    .Select(_ => new GangTask("mix", crew.MixMinutes, 1, []))
            ),
        ];
        int mixed = tasks.Count;
        foreach (IGrouping<Side, PlankWing> side in wings.GroupBy(w => w.Side))
        {
            int? master = null;
            foreach (PlankWing wing in side.OrderByDescending(w => w.HasMaster))
            {
                int? last = wing.HasMaster ? null : master;
                foreach (PlankShare plank in wing.Planks)
                {
                    // Nothing is spread before some batch is mixed.
                    tasks.Add(new($"spread {plank.Id}", plank.SpreadMinutes, 1, [new(0)]));
                    tasks.Add(
                        new(
                            $"set {plank.Id}",
                            plank.FastenMinutes,
                            CrewSpec.FastenHands,
                            last is { } l ? [new(tasks.Count - 1), new(l)] : [new(tasks.Count - 1)]
                        )
                    );
                    last = tasks.Count - 1;
                    if (wing.HasMaster && master is null)
                    {
                        master = last;
                    }
                }
            }
        }

        return tasks.Count == mixed ? 0 : Chains.BoundMinutes(tasks, crew.Hands);
    }
}
