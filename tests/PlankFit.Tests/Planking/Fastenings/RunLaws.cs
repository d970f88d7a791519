using NetTopologySuite.Geometries;
using NetTopologySuite.LinearReferencing;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// The spacing along a whole timber, whatever planks lie on it: its middle, plank by plank from the records of what lies behind, chained by its ends in space; places
/// along it by NetTopologySuite. No gap longer than the spacing holds a place that is clearly free, and every one is told with its true size.
/// </summary>
internal static class RunLaws
{
    private const double Clearly = 0.4;
    private const double StepMm = 3;

    /// <summary>Sizes told against sizes measured, mm.</summary>
    private const double Told = 0.3;

    private sealed record Stretch(Plank Plank, FramingCrossing Timber, LengthIndexedLine Line)
    {
        public double LengthMm => Line.EndIndex;

        public Vec3 End(bool last) =>
            Plank.Map.Under(last ? Timber.Centre[^1] : Timber.Centre[0]).P;
    }

    /// <summary>A stretch of a timber without a fastening, and the planks of the fastenings before and after it; null for an end of the timber.</summary>
    private sealed record Gap(PlankId? From, PlankId? To, double StartMm, double EndMm)
    {
        public double Mm => EndMm - StartMm;
    }

    private sealed record Placed(Stretch On, double FromMm, bool Turned)
    {
        public double Along(double t) => FromMm + (Turned ? On.LengthMm - t : t);
    }

    public static IEnumerable<string> Broken(BottomPlan plan)
    {
        FasteningPlan fastenings = plan.Fastenings!;
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            var lower = new List<(PlankLayerPlan Layer, SurfacePoint At)>();
            PlankLayerPlan? below = null;
            foreach (PlankLayerPlan layer in plan.PlankLayers)
            {
                FasteningRule rule = fastenings.Layers.Single(l => l.Layer == layer.Number).Rule;
                var under = FasteningLaws.UnderLayer.Of(plan, layer, below, side, lower);
                List<TimberGap> told =
                [
                    .. fastenings.Gaps.Where(g => g.Layer == layer.Number && g.Side == side),
                ];
                List<Placed>[] runs = Runs(plan, layer, side, rule).ToArray();
                foreach (
                    string fault in runs.SelectMany(r => Closable(plan, r, rule, under))
                        .Concat(NotAsTold(plan, runs, rule, told))
                )
                {
                    yield return $"layer {layer.Number} {side}: {fault}";
                }

                lower.AddRange(
                    layer
                        .On(side)
                        .SelectMany(p =>
                            fastenings.On(p.Id)!.Points.Select(f => (layer, p.Map.Under(f.At)))
                        )
                );
                below = layer;
            }
        }
    }

    /// <summary>The widest gap along any timber, by these measures.</summary>
    public static double Widest(BottomPlan plan, int layer, Side side, string timber)
    {
        PlankLayerPlan of = plan.PlankLayers.Single(l => l.Number == layer);
        FasteningRule rule = plan.Fastenings!.Layers.Single(l => l.Layer == layer).Rule;
        return Runs(plan, of, side, rule)
            .Where(r => r[0].On.Timber.Of.Name == timber)
            .SelectMany(r => Gaps(plan, r))
            .Max(g => g.Mm);
    }

    private static IEnumerable<List<Placed>> Runs(
        BottomPlan plan,
        PlankLayerPlan layer,
        Side side,
        FasteningRule rule
    )
    {
        if (rule.Kind == FasteningKind.None)
        {
            yield break;
        }

        foreach (FramingSpec timber in plan.Job.Framing.Where(b => b.Kind != FramingKind.Open))
        {
            Stretch[] all =
            [
                .. layer
                    .On(side)
                    .SelectMany(p =>
                        (plan.Framing.On(p.Id))
                            .Where(b => b.Of.Name == timber.Name && b.Centre.Length > 1)
                            .Select(b => new Stretch(p, b, new(FasteningLaws.Line(b.Centre))))
                    ),
            ];
            foreach (List<Placed> run in Chained(all, rule.SpacingMm))
            {
                yield return run;
            }
        }
    }

    /// <summary>Both ways round for the first; each further one by the end that is nearer. The shorter chain is the timber.</summary>
    private static IEnumerable<List<Placed>> Chained(Stretch[] all, double apart)
    {
        for (int i = 0; i < all.Length; )
        {
            List<Placed> best = [];
            foreach (bool turned in new[] { false, true })
            {
                List<Placed> run = [new(all[i], 0, turned)];
                for (int k = i + 1; k < all.Length; k++)
                {
                    Placed last = run[^1];
                    Vec3 end = last.On.End(!last.Turned);
                    double straight = end.ChordTo(all[k].End(false)),
                        back = end.ChordTo(all[k].End(true)),
                        gap = Math.Min(straight, back);
                    if (gap > apart)
                    {
                        break;
                    }

                    run.Add(new(all[k], last.FromMm + last.On.LengthMm + gap, back < straight));
                }

                if (
                    run.Count > best.Count
                    || (run.Count == best.Count && run[^1].FromMm < best[^1].FromMm - 1e-6)
                )
                {
                    best = run;
                }
            }

            yield return best;
            i += best.Count;
        }
    }

    private static IEnumerable<Gap> Gaps(BottomPlan plan, List<Placed> run)
    {
        (double Along, PlankId? Plank)[] stops =
        [
            (0, null),
            .. run.SelectMany(s =>
                    plan.Fastenings!.On(s.On.Plank.Id)!
                        .Points.Where(f => f.Backing == s.On.Timber.Of.Name)
                        .Select(f =>
                            (
                                s.Along(s.On.Line.Project(new Coordinate(f.At.X, f.At.Y))),
                                (PlankId?)s.On.Plank.Id
                            )
                        )
                )
                .OrderBy(s => s.Item1),
            (run[^1].FromMm + run[^1].On.LengthMm, null),
        ];
        return stops.Zip(stops.Skip(1), (a, b) => new Gap(a.Plank, b.Plank, a.Along, b.Along));
    }

    /// <summary>What is told against what is there, from plank to plank of every timber, the widest first: one a little within the spacing is not told, and takes nobody's place.</summary>
    private static IEnumerable<string> NotAsTold(
        BottomPlan plan,
        IEnumerable<List<Placed>> runs,
        FasteningRule rule,
        IEnumerable<TimberGap> all
    )
    {
        ILookup<(string Timber, PlankId? Least, PlankId? Greatest), double> there = runs.SelectMany(
                r =>
                    Gaps(plan, r)
                        .Select(g => (Key: Between(r[0].On.Timber.Of.Name, g.From, g.To), g.Mm))
            )
            .ToLookup(g => g.Key, g => g.Mm);
        ILookup<(string Timber, PlankId? Least, PlankId? Greatest), double> told = all.ToLookup(
            g => Between(g.Backing, g.From, g.To),
            g => g.GapMm
        );
        foreach (
            (string Timber, PlankId? Least, PlankId? Greatest) key in there
                .Concat(told)
                .Select(g => g.Key)
                .Distinct()
        )
        {
            var measured = new Stack<double>(there[key].Order());
            var said = new Stack<double>(told[key].Order());
            while (measured.Count + said.Count > 0)
            {
                double mm = measured.Count > 0 ? measured.Peek() : double.NegativeInfinity,
                    toldMm = said.Count > 0 ? said.Peek() : double.NegativeInfinity;
                if (Math.Abs(mm - toldMm) < Told)
                {
                    measured.Pop();
                    said.Pop();
                }
                else if (mm > toldMm)
                {
                    measured.Pop();
                    if (mm > rule.SpacingMm + Told)
                    {
                        yield return $"{mm} mm along {key.Timber} is not told";
                    }
                }
                else
                {
                    said.Pop();
                    yield return $"{toldMm} mm on {key.Timber} is told, and is not there";
                }
            }
        }
    }

    /// <summary>From either end of the timber alike.</summary>
    private static (string Timber, PlankId? Least, PlankId? Greatest) Between(
        string timber,
        PlankId? a,
        PlankId? b
    ) => Comparer<PlankId?>.Default.Compare(a, b) < 0 ? (timber, a, b) : (timber, b, a);

    private static IEnumerable<string> Closable(
        BottomPlan plan,
        List<Placed> run,
        FasteningRule rule,
        FasteningLaws.UnderLayer under
    )
    {
        foreach (Gap gap in Gaps(plan, run).Where(g => g.Mm > rule.SpacingMm + 0.5))
        {
            double apart = Math.Max(rule.NearestMm, rule.SpacingMm / 10) + Clearly,
                low = gap.StartMm + (gap.From is null ? 0 : apart),
                high = gap.EndMm - (gap.To is null ? 0 : apart);
            foreach (Placed s in run)
            {
                if (Free(plan, s, rule, under, low, high) is { } free)
                {
                    yield return $"{run[0].On.Timber.Of.Name}: {gap.Mm:0.0} mm from {gap.StartMm:0.0} to {gap.EndMm:0.0}, and {free}";
                    break;
                }
            }
        }
    }

    private static string? Free(
        BottomPlan plan,
        Placed s,
        FasteningRule rule,
        FasteningLaws.UnderLayer under,
        double low,
        double high
    )
    {
        if (s.FromMm > high || s.FromMm + s.On.LengthMm < low)
        {
            return null;
        }

        Plank plank = s.On.Plank;
        FramingCrossing[] behind = [.. plan.Framing.On(plank.Id)];
        var rules = new FasteningLaws.RulesOnPlank(plan, plank, rule, behind, under);
        Fastening[] points =
        [
            .. plan.Fastenings!.On(plank.Id)!.Points.Where(f => f.Use == FasteningUse.Backing),
        ];
        double half = Math.Max(0, (s.On.Timber.Of.WidthMm / 2) - rule.MarginMm);
        double[] rows = [.. new[] { 0, -0.5, 0.5, -0.95, 0.95 }.Select(part => part * half)];
        for (double t = 0; t <= s.On.LengthMm; t += StepMm)
        {
            double along = s.Along(t);
            if (along < low || along > high)
            {
                continue;
            }

            foreach (double row in half > 0 ? rows : rows[..1])
            {
                Coordinate c = s.On.Line.ExtractPoint(t, row);
                var p = new Vec2(c.X, c.Y);
                if (
                    points.All(f => f.At.ChordTo(p) > rule.NearestMm + Clearly)
                    && !rules.Faults(p, Clearly).Any()
                    && FasteningLaws.RulesOnPlank.OffTimber(s.On.Timber, p, rule.MarginMm + Clearly)
                        is null
                )
                {
                    return $"{plank.Id} is free at {along:0.0}, {row:0.0} beside the middle ({p.X:0.0}, {p.Y:0.0})";
                }
            }
        }

        return null;
    }
}
